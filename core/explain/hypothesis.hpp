// SPDX-License-Identifier: GPL-3.0-or-later
// One explanation of the wire: what it is doing now, what that has cost, and what it takes the past for.
//
//                 off by more than a reach                 leaves its line, comes back to it
//        held ------------------------------> away    moving <----------------------> off line
//         ^ ^ <------------------------------   |      ^ |
//         | |        comes back                 |      | |
//         | +-----------------------------------+      | |
//         |          settles elsewhere                 | |
//         +--------------------------------------------+ |
//         |          begins to move                      |
//         +<---------------------------------------------+
//                    comes to rest
#pragma once

#include "core/explain/trend.hpp"

#include <cstdint>

namespace stillwire {

enum class Doing { held, away, moving, offLine };

// Readings away that lie where the one before was.
struct Flat {
    Time from{0};
    double sum_V = 0;
    int readings = 0;
    [[nodiscard]] double level_V() const { return sum_V / readings; }
    void begin(Time time, double volts_V) { *this = {time, volts_V, 1}; }
    void add(double volts_V) {
        sum_V += volts_V;
        ++readings;
    }
};

struct Hypothesis {
    Doing doing = Doing::moving;
    double cost = 0;
    int past = -1;       // its newest segment
    LevelEstimate level; // held, or left and to come back to; id -1: none was left
    Trend line;          // moving, or the line left
    Flat flat;           // away; and from when on that is elsewhere, by the marks as it began
    double flat_s = 0;
    int flatReadings = 0;
    Time from{0};              // of the first reading away, moving or off the line
    double surcharge = 0;      // paid for a movement that nobody had asked for
    Time movedFrom{0};         // when that began
    std::int64_t answered = 0; // the newest request to move that it has followed
};

} // namespace stillwire
