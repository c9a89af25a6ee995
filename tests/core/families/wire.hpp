// SPDX-License-Identifier: GPL-3.0-or-later
// What the wire does, before any meter looks: a level that is held, moves and drifts, and dropouts that leave it. The
// maker of a trace says it in order of time and the wire remembers it as truth.
#pragma once

#include "core/domain/reading.hpp"
#include "tests/core/families/curve.hpp"
#include "tests/core/families/dice.hpp"

#include <utility>
#include <vector>

namespace stillwire::families {

struct Span {
    double from_s = 0, to_s = 0;
    [[nodiscard]] double length_s() const { return to_s - from_s; }
    [[nodiscard]] bool meets(double from, double to) const { return from_s < to && from < to_s; }
};

struct Hold {
    double from_s = 0, to_s = 0;
    double level_V = 0;  // without drift and tremor
    double tremor_V = 0; // sd
    double tremor_s = 0; // how long a tremor keeps its way
};

struct Move {
    double from_s = 0, to_s = 0;
    double from_V = 0, to_V = 0;
    bool sweep = false; // slow enough that it has to be covered, not only found
};

// Either an offset from the level (a curve that begins and ends with it), or a pull to a fixed voltage.
struct Dropout {
    double from_s = 0, to_s = 0;
    Curve offset; // volts beside the level; empty: a pull
    double pulledTo_V = 0;
    double rough_V = 0; // noise while it lasts, sd of a reading wholly inside
};

struct Tremor {
    double sd_V = 0, memory_s = 0.5;
};

class Wire {
public:
    explicit Wire(double level_V) : level_V_(level_V) { level.add(0, level_V); }

    Span hold(double duration_s);
    Span hold(double duration_s, Tremor tremor, Dice& dice);
    // A straight movement; `over_s` 0 is a leap. A sweep keeps the dropouts that are put into it.
    Span move(double level_V, double over_s, bool sweep = false);
    // A change that is neither a hold nor a movement in anybody's words: nothing is asked about it but silence.
    Span creep(double level_V, double over_s);

    // Anywhere in what was said so far. `depth_V` is signed: down is negative.
    void dropout(double from_s, double duration_s, double depth_V, double edge_s = 0);
    // The wire has let go and comes down like a capacitor, then back at once or in the same way.
    void fading(double from_s, double duration_s, double depth_V, double memory_s, bool slowBack);
    void pull(double from_s, double duration_s, double to_V, double rough_V = 0);
    void rough(double from_s, double duration_s, double depth_V, double rough_V);
    void gap(double from_s, double duration_s) { gaps.push_back({from_s, from_s + duration_s}); }
    void warmUp(double rise_V, double memory_s) {
        warm_V_ = rise_V;
        warm_s_ = memory_s;
    }

    [[nodiscard]] double now_s() const { return now_s_; }
    [[nodiscard]] double level_V() const { return level_V_; }
    [[nodiscard]] double drift_V(double at_s) const;

    Curve level; // drift apart
    std::vector<Hold> holds;
    std::vector<Move> moves;
    std::vector<Dropout> dropouts;              // ordered by their beginning once `settle` has run
    std::vector<Span> gaps;                     // the meter says nothing
    std::vector<std::pair<Span, Flag>> flagged; // the meter sends this instead of a number
    std::vector<Span> unasked;                  // creeps
    void settle();

private:
    double now_s_ = 0, level_V_ = 0;
    double warm_V_ = 0, warm_s_ = 100;
};

} // namespace stillwire::families
