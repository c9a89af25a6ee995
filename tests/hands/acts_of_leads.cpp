// SPDX-License-Identifier: GPL-3.0-or-later
// Acts that no foot has part in: leads, supply, ground, key, the log, and time itself.
#include "tests/hands/led_hand.hpp"

#include <algorithm>

namespace stillwire::hands {

void LedHand::did(Kind kind, double from_s, double to_s, double depth_V) {
    acts.push_back({kind, step_, from_s, to_s, depth_V});
}

// A moment in the hold at hand, which is made longer if what comes does not fit into it.
double LedHand::within(double from_s, double lasts_s, double after_s) {
    const double least_s = from_s + 0.3, most_s = now_s_ - lasts_s - after_s;
    const double at_s = most_s > least_s ? chance_.between(least_s, most_s) : least_s;
    now_s_ = std::max(now_s_, at_s + lasts_s + after_s);
    return at_s;
}

void LedHand::loose(Kind kind, double from_s) {
    const double lasts_s = chance_.logBetween(0.3, 3.0);
    const double at_s = within(from_s, lasts_s);
    const Air air = chance_.pick({Air::pulledToZero, Air::wanders, Air::hums});
    const double size_V = air == Air::hums ? chance_.between(0.05, 0.4) : chance_.between(0.01, 0.08);
    scene.loose.push_back({at_s, at_s + lasts_s, air, size_V, chance_.between(0, 6.28)});
    did(kind, at_s, at_s + lasts_s);
}

void LedHand::anyTime(double from_s) {
    if (comes(Kind::leadLost)) loose(Kind::leadLost, from_s);
    if (comes(Kind::blackOff)) loose(Kind::blackOff, from_s);
    if (wire_ != Wire::ground && comes(Kind::crank)) {
        const double lasts_s = chance_.between(0.6, 1.6), at_s = within(from_s, lasts_s);
        scene.sags.push_back(
            {at_s, at_s + lasts_s, chance_.between(0.6, 0.9), chance_.between(0.01, 0.06), chance_.between(6, 12)});
        did(Kind::crank, at_s, at_s + lasts_s);
    }
    if (comes(Kind::lights)) {
        const double lasts_s = chance_.between(5, 60), at_s = within(from_s, 0.5);
        scene.shifts.push_back({at_s, at_s + lasts_s, chance_.between(0.015, 0.022)});
        did(Kind::lights, at_s, at_s + lasts_s, 0.02);
    }
    timeOut(from_s);
}

void LedHand::timeOut(double from_s) {
    if (comes(Kind::pause)) {
        now_s_ += chance_.between(45, 90);
        did(Kind::pause, from_s, now_s_);
    }
    if (comes(Kind::silence)) {
        const double lasts_s = chance_.between(1.5, 12), at_s = within(from_s, lasts_s);
        scene.silent.push_back({at_s, at_s + lasts_s});
        did(Kind::silence, at_s, at_s + lasts_s);
    }
    if (comes(Kind::keyCycle)) {
        const double lasts_s = chance_.between(2, 6), at_s = within(from_s, lasts_s, 2.5);
        scene.keyOff.push_back({at_s, at_s + lasts_s});
        if (chance_.chance(0.5)) {
            scene.marks.push_back({at_s - 0.1, "key:off"});
            scene.marks.push_back({at_s + lasts_s + 0.1, "key:on"});
        }
        did(Kind::keyCycle, at_s, at_s + lasts_s);
    }
}

} // namespace stillwire::hands
