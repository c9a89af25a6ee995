// SPDX-License-Identifier: GPL-3.0-or-later
// Acts that move the lever: slips, taps, wandering feet, somebody who leans on the machine.
#include "tests/hands/led_hand.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::hands {

void LedHand::whileHolding(double from_s) {
    const double back_V = home_V() - hand_V_;
    if (comes(Kind::slip)) {
        const double lasts_s = chance_.logBetween(0.3, 2.0), edge_s = std::min(0.3 * lasts_s, 0.2);
        const double share = chance_.chance(0.5) ? 1 : chance_.between(0.2, 0.95);
        const double at_s = within(from_s, lasts_s, 1.5);
        scene.bumps.push_back({at_s, edge_s, at_s + lasts_s - edge_s, edge_s, share * back_V});
        did(Kind::slip, at_s, at_s + lasts_s, share * back_V);
    }
    if (comes(Kind::creep)) {
        const double lasts_s = chance_.between(6, 20), at_s = from_s + 0.2;
        const double depth_V = chance_.between(0.02, 0.12) * back_V;
        now_s_ = std::max(now_s_, at_s + lasts_s);
        scene.bumps.push_back({at_s, lasts_s, now_s_, 0.2, depth_V});
        did(Kind::creep, at_s, now_s_, depth_V);
    }
    if (comes(Kind::phone)) onThePhone(back_V);
}

// The foot wanders, some of the way and back, for as long as the call lasts.
void LedHand::onThePhone(double way_V) {
    const double until_s = now_s_ + chance_.between(8, 20);
    for (double at_s = now_s_; at_s < until_s; at_s += chance_.between(1, 4)) {
        const double stays_s = chance_.between(0.3, 2);
        scene.bumps.push_back({at_s, 0.3, at_s + stays_s, 0.4, chance_.between(0.03, 0.4) * way_V});
    }
    did(Kind::phone, now_s_, until_s, way_V);
    now_s_ = until_s + 5;
}

void LedHand::whileResting(double from_s) {
    if (comes(Kind::tap)) {
        const double way_V = subject_.levels_V[awayFrom(place_)] - home_V();
        const double lasts_s = chance_.logBetween(0.2, 1.0), edge_s = 0.3 * lasts_s;
        const double depth_V = chance_.between(0.06, 0.8) * way_V, at_s = within(from_s, lasts_s);
        scene.bumps.push_back({at_s, edge_s, at_s + lasts_s - edge_s, edge_s, depth_V});
        did(Kind::tap, at_s, at_s + lasts_s, depth_V);
    }
    if (comes(Kind::secondPress)) {
        const double way_V = subject_.levels_V[awayFrom(place_)] - home_V();
        const double lasts_s = chance_.between(0.8, 3.5), edge_s = chance_.between(0.15, 0.35);
        const double at_s = within(from_s, lasts_s, 1.5), depth_V = way_V + chance_.between(-0.003, 0.003);
        scene.bumps.push_back({at_s, edge_s, at_s + lasts_s - edge_s, edge_s, depth_V});
        did(Kind::secondPress, at_s, at_s + lasts_s, depth_V);
    }
    if (comes(Kind::dropIn)) {
        const double depth_V = chance_.between(0.05, 0.5) * chance_.pick({-1, 1});
        const double at_s = within(from_s, 1.0);
        for (int i = 0; i < 3; ++i)
            scene.bumps.push_back({at_s + 0.3 * i, 0.03, at_s + 0.3 * i + 0.06, 0.05, depth_V * (1 - 0.3 * i)});
        did(Kind::dropIn, at_s, at_s + 0.75, depth_V);
    }
    if (comes(Kind::neighbour)) {
        const double lasts_s = chance_.between(3, 10), at_s = within(from_s, lasts_s);
        const double depth_V = chance_.between(-0.03, 0.03);
        scene.bumps.push_back(
            {at_s, 0.4, at_s + lasts_s, 0.5, depth_V, chance_.between(0.005, 0.03), chance_.between(0.7, 2)});
        did(Kind::neighbour, at_s, at_s + lasts_s, depth_V);
    }
    if (comes(Kind::phone)) onThePhone(subject_.levels_V[awayFrom(place_)] - home_V());
}

void LedHand::beginStepActs() {
    const bool wiggled = step_ == "wiggle-shaft" || step_ == "connector-held" || step_ == "warm-repeat";
    const bool only = wiggled && step_ != "warm-repeat"; // nothing but wiggles
    leanTo_V_ = 0;
    if (wiggled && comes(Kind::lean)) {
        // A degree or three of ninety or so: invented.
        leanTo_V_ = chance_.between(0.06, 0.18) * chance_.pick({-1, 1});
        leanSide_ = chance_.pick({"left", "right"});
        leanAct_ = static_cast<int>(acts.size());
        did(Kind::lean, now_s_, now_s_, leanTo_V_);
    }
    const bool still = only || step_ == "cold-start" || step_ == "lead-check" || step_ == "wiggle-harness";
    creepAct_ = -1;
    if (still && comes(Kind::creep)) {
        const double way_V = subject_.levels_V[awayFrom(place_)] - home_V();
        const double depth_V = chance_.between(0.02, 0.15) * way_V;
        scene.bumps.push_back({now_s_ + 2, 1, 0, 0.3, depth_V});
        creepAct_ = static_cast<int>(acts.size());
        did(Kind::creep, now_s_ + 2, now_s_ + 2, depth_V);
    }
}

void LedHand::endStepActs() {
    leanTo_V_ = 0;
    if (creepAct_ >= 0) {
        // Through the whole step; off again when the next one is asked for.
        acts[static_cast<std::size_t>(creepAct_)].to_s = now_s_;
        for (Bump& b : scene.bumps) {
            if (b.to_s != 0) continue;
            b.to_s = now_s_;
            b.rise_s = std::max(1.0, now_s_ - b.from_s);
        }
        now_s_ += 2;
    }
    creepAct_ = -1;
    if (std::abs(hand_V_ - home_V()) < 0.02) return;
    now_s_ += 0.5;
    move(home_V(), 0.5);
    now_s_ += 1.5;
}

} // namespace stillwire::hands
