// SPDX-License-Identifier: GPL-3.0-or-later
// What the marks in force make of the costs: whether the wire may move, who holds it, what is judged.
#pragma once

#include "core/base/time.hpp"
#include "core/explain/tuning.hpp"

namespace stillwire {

struct Context;

struct Expectation {
    bool judged = true;   // else nothing that moves is told: connecting, turning, lifting
    bool unmarked = true; // no step was named
    bool asked = false;   // a mark asked for a movement at `from`
    bool rails = true;    // a level at a rail is unlikely here
    bool sweep = false;   // it is to move all the time
    bool held = false;    // by a foot or hand, at a working position
    bool stirred = false; // in a pose: a shift within reach is a lean
    double grace_s = 0;   // so long after it a movement may be corrected
    Time from{0};         // the mark
    Time stepFrom{0};     // the mark of the step
    double beginMove = 0; // what a movement costs that no mark asked for just now
    bool holds = false;   // the step asked to hold: a movement that settles elsewhere is a jump
    double flat_s = 0;    // away and flat for longer than this, and
    int flatReadings = 0; // for so many readings: it is elsewhere
};

// Nothing moves that wire.
[[nodiscard]] Expectation stillExpectation(const Tuning& tuning);
[[nodiscard]] Expectation expectationAt(const Context& place, Time stepFrom, const Tuning& tuning, double interval_s);

} // namespace stillwire
