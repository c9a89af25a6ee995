// SPDX-License-Identifier: GPL-3.0-or-later
// The trade's table of findings (common practice, no source) and what answers each of them here.
#pragma once

#include <array>

namespace stillwire::test {

struct TradeFinding {
    const char* finding;
    const char* likely;                // what the trade takes it for
    std::array<const char*, 4> rows{}; // of the judgement table, by name; null: no more
    const char* outOfReach = nullptr;  // what a trace of one signal cannot tell, and what is said instead
};

inline constexpr TradeFinding kTradeFindings[] = {
    {"spike at one shaft position", "track worn or dirty", {"shaft", "moving shaft"}},
    {"jumps on connector touch", "pins, fretting, seal", {"harness", "shaft and harness"}},
    {"jumps on one harness span", "broken strand, chafe", {"harness"}},
    {"low end up, high end nearly the same",
     "ground resistance",
     {"ground drop", "ends as under a ground resistance"}},
    {"both ends by the same percentage",
     "reference or its feed; signal resistance under a pull-down",
     {"reference outside", "low alike", "ends as under a feed resistance"}},
    {"whole trace shifted, same span", "mount slipped, linkage", {"wants adjustment"}},
    {"rest level scattered, no spikes", "spring, binding, slack", {"scattered", "hangs off its stop"}},
    {"up and down gap, repeatable",
     "backlash, bushing",
     {"other from the other side"},
     "with two positions: the signal is the only measure of where the pedal is, so the same place cannot be told "
     "going "
     "up from going down; only a position between two others is come to from both sides"},
    {"span short, ends smooth", "stop, lever, wrong part", {"span"}},
    {"stuck near 0", "open reference, open signal, short to ground", {"reference outside", "stuck low"}},
    {"stuck near 5", "open ground, short to reference, pull-up and open signal", {"ground drop", "stuck high"}},
    {"over 5.5 V", "short to battery", {"over-voltage"}},
    {"several sensors low", "shared reference", {"reference outside"}},
    {"good at sensor, bad at controller",
     "wire or pin between",
     {"harness"},
     "from the sensor's side: not_tested says that a break beyond it would not show; probed at the controller it "
     "does"},
    {"all good, code stays",
     "calibration, controller pin, short event",
     {"keep"},
     "no controller is read: not_tested says how short a dropout could have hidden"},
    {"bad cold, good warm", "moisture, oxide, grease", {"shaft", "cold level"}},
};

} // namespace stillwire::test
