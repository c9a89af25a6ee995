// SPDX-License-Identifier: GPL-3.0-or-later
// A made trace with all that is true of it.
#pragma once

#include "core/domain/mark.hpp"
#include "core/domain/reading.hpp"
#include "tests/core/families/wire.hpp"

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace stillwire::families {

enum class Stamps { exact, wholeSecond, bunched };

// A slow meter as its readings show it. No brand, no circuit: what it averages, rounds, loses and when it speaks.
struct Meter {
    double interval_s = 0.33, aperture_s = 0.2;
    double resolution_V = 0.001;
    double noise_counts = 0.8; // sd of what is shown, before it is rounded
    bool heavyTails = false;
    int meanOf = 1;        // a display filter: the running mean of so many conversions
    double firstOrder = 0; // a display filter: share of the newest conversion; 0: none
    Stamps stamps = Stamps::exact;
    int bunch = 1;            // rows that arrive together
    int refresh = 1;          // rows that repeat one conversion
    double rangesMeet_V = 0;  // two ranges meet here, the lower ten times finer; 0: one range
    int lostMost = 3;         // readings that a change of range costs, one to this many
    bool lostAreRows = false; // they come as rows flagged autorange, or not at all
    double lostShare = 0;     // rows that never arrive, one here and there
    double hum_V = 0;         // a ripple that beats with the interval
    double humPeriod_s = 3;
    double louderFrom_s = 0, louder = 1; // noise grows by this factor from here on

    [[nodiscard]] double stampSlack_s() const {
        return stamps == Stamps::wholeSecond ? 1.0 : (bunch - 1) * interval_s;
    }
};

// Beside each reading of the trace.
struct TrueReading {
    double at_s = 0;    // end of its aperture on the wire's clock
    double level_V = 0; // what the meter would show without noise and without dropouts
    double off_V = 0;   // how far dropouts take it from there
    double noise_V = 0, count_V = 0;
    int dropout = -1;      // index of the newest one that touches it; -1: none touches it
    bool clear = false;    // further off than max(0.02 V, 9 noise, 3.5 counts)
    bool required = false; // clear, and every return around it holds a whole aperture
    [[nodiscard]] bool touched() const { return dropout >= 0; }
    [[nodiscard]] double border_V() const;
};

struct TrueMove {
    Move move;
    // Between which times its beginning and its end may be told, before the two intervals of grace.
    Span begins, ends;
    Span shown;             // first and last reading that stand clear of the level before and after
    bool scored = true;     // false: the meter was blind all through it
    bool joinsNext = false; // the stay before the next one is too short to have to be told as one
    bool partlyBlind = false;
    bool cutOff = false; // the capture ends in it: nobody can know yet what it will be
};

struct Plateau {
    Span when;
    std::size_t first = 0, last = 0; // readings, both included
    double tremor_V = 0, tremor_s = 0;
};

struct TrueWiggle {
    Span sure;     // by the dropouts that are clear
    Span possible; // with every faint one that may belong to it
    int dropouts = 0;
};

struct Truth {
    std::vector<TrueReading> readings;
    std::vector<TrueMove> moves;
    std::vector<Hold> holds;
    std::vector<Plateau> plateaus;
    std::vector<TrueWiggle> wiggles;
    std::vector<Span> wigglesPossible; // outside these a wiggle is false
    std::vector<Span> calm;            // stretches of holds that no dropout can have coloured
    std::vector<Span> blind, blindPossible;
    std::vector<Span> unasked;
    double duration_s = 0;
};

struct Trace {
    std::string family;
    std::uint64_t seed = 0;
    bool windowsOn = false;
    Meter meter;
    std::vector<Reading> readings;
    std::vector<std::pair<std::size_t, Mark>> marks; // each before the reading with this index
    Truth truth;
    std::string sheetToml, meterToml;
};

// The readings a meter makes of a wire, and the truth beside them.
[[nodiscard]] Trace record(Wire wire, const Meter& meter, Dice& dice);

// Parts of it.
void takeReadings(const Wire& wire, const Meter& meter, Dice& dice, Trace& trace);
void tellTruth(const Wire& wire, Trace& trace);
// Sheet and meter as TOML. Windows on: every held level lies in one; off: none does.
[[nodiscard]] std::string sheetFor(const Wire& wire, bool windowsOn);
[[nodiscard]] std::string meterFor(const Meter& meter);

} // namespace stillwire::families
