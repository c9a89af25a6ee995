// SPDX-License-Identifier: GPL-3.0-or-later
// A fault that comes and goes: where it pulls the wire to, how long, and in which poses.
#include "tests/hands/led_hand.hpp"
#include "tests/hands/visible.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::hands {
void LedHand::beginFault() {
    const Fault fault = subject_.fault;
    if (fault == Fault::referenceLow) scene.reference_V = hand_.between(4.1, 4.5);
    if (fault == Fault::ground) scene.ground_V = hand_.between(0.2, 0.45);
    if (fault == Fault::stuckAtZero) scene.stuck_V = 0;
    if (fault == Fault::stuckAtReference) scene.stuck_V = 10;
    hangFirst_ = hand_.whole(0, 2);
    hangSecond_ = hangFirst_ + hand_.whole(1, 3);
    // To a rail, an open contact, or part of the way; never where another position would be.
    for (bool clear = false; !clear;) {
        fallTo_V_ = hand_.chance(0.4) ? scene.reference_V : 0;
        const double room_V = std::abs(fallTo_V_ - home_V());
        fallShare_ = hand_.chance(0.5) ? 0.98 : std::min(0.98, hand_.between(0.45, 1.6) / room_V);
        const double lands_V = home_V() + fallShare_ * (fallTo_V_ - home_V());
        clear = std::none_of(subject_.levels_V.begin(), subject_.levels_V.end(),
                             [&](double level_V) { return std::abs(level_V - lands_V) < 0.3; });
    }
}

bool LedHand::hangs() {
    const bool now = releases_ == hangFirst_ || releases_ == hangSecond_;
    ++releases_;
    return now && (subject_.fault == Fault::hangOnStop || subject_.fault == Fault::hangOffStop);
}

void LedHand::dropReference(double from_s) {
    const double every_s = (now_s_ - from_s) / 3;
    for (int i = 0; i < 3; ++i) {
        // Where ranges meet at 4 V it stays above them.
        const double factor = subject_.meter.ranges.size() > 1 ? hand_.between(0.83, 0.88) : hand_.between(0.6, 0.85);
        const double depth_V = (1 - factor) * scene.reference_V;
        const double at_s = from_s + every_s * i + hand_.between(0.3, 0.8);
        const double lasts_s = surelySeen_s(subject_.meter, scene.reference_V, depth_V) + hand_.between(0.05, 0.5);
        scene.sags.push_back({at_s, at_s + lasts_s, factor, 0, 9});
        faultTimes.push_back({at_s, at_s + lasts_s});
    }
}

double LedHand::dropoutLasts_s() {
    const double level_V = home_V();
    const double depth_V = std::abs(fallShare_ * (fallTo_V_ - level_V));
    return std::max(0.05, surelySeen_s(subject_.meter, level_V, depth_V)) + hand_.between(0, 0.6);
}

void LedHand::dropOut(double from_s, double until_s) {
    scene.drops.push_back({from_s, until_s, fallTo_V_, fallShare_});
    faultTimes.push_back({from_s, until_s});
}

std::vector<bool> LedHand::whichPoses(std::size_t poses, double share, bool here) {
    std::vector<bool> which(poses, false);
    if (!here) return which;
    for (std::size_t i = 0; i < poses; ++i) which[i] = hand_.chance(share);
    // Two at least, or one alone would decide nothing.
    while (std::count(which.begin(), which.end(), true) < 2)
        which[static_cast<std::size_t>(hand_.whole(0, static_cast<int>(poses) - 1))] = true;
    return which;
}

} // namespace stillwire::hands
