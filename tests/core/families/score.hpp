// SPDX-License-Identifier: GPL-3.0-or-later
// What was told against what is true: counts for a table, and each miss in words for whoever mends the analyser.
#pragma once

#include "tests/core/families/told.hpp"

#include <string>
#include <vector>

namespace stillwire::families {

struct Share {
    double got = 0, of = 0;
    void add(bool right) {
        got += right;
        of += 1;
    }
    void add(const Share& other) {
        got += other.got;
        of += other.of;
    }
    [[nodiscard]] double percent() const { return of > 0 ? 100 * got / of : 100; }
};

struct Score {
    int traces = 0;
    double hours = 0, readings = 0, examine_s = 0;
    Share seen;    // readings that have to be flagged
    Share bunched; // clear too, but with a return that holds no whole aperture: nobody has to see each
    Share moves, sweeps, wiggles, calm, plateaus, blind;
    int falseFlags = 0, falseTravel = 0, falseJumps = 0, falseWiggles = 0, falseBlind = 0;
    int lawsBroken = 0;

    void add(const Score& other);
    [[nodiscard]] double per50h(int count) const { return hours > 0 ? count / hours * 50 : 0; }
    // Single things that can go wrong.
    [[nodiscard]] double events() const;
};

struct Miss {
    std::string kind; // unseen, false-flag, move, sweep, wiggle, calm, plateau, blind, false-…, law
    double at_s = 0;
    std::string expected, told;
};

// Misses are put in words only where somebody asks for them.
using Misses = std::vector<Miss>*;

[[nodiscard]] Score score(const Trace& trace, const Told& told, Misses misses = nullptr);

// Its parts.
void scoreDropouts(const Trace& trace, const Told& told, Score& into, Misses misses);
void scoreMoves(const Trace& trace, const Told& told, Score& into, Misses misses);
void scoreStays(const Trace& trace, const Told& told, Score& into, Misses misses);
void scoreBlind(const Trace& trace, const Told& told, Score& into, Misses misses);
void scoreLaws(const Trace& trace, const Told& told, Score& into, Misses misses);

// Words.
[[nodiscard]] std::string text(const char* pattern, ...) __attribute__((format(printf, 1, 2)));
[[nodiscard]] const char* word(PhaseKind kind);
[[nodiscard]] std::string phasesAround(const Told& told, double from_s, double to_s);
[[nodiscard]] double overlap_s(const Told& told, PhaseKind kind, Span with);

} // namespace stillwire::families
