// SPDX-License-Identifier: GPL-3.0-or-later
// What a led hand does: steps opened and closed, leads moved, poses held, positions visited.
#include "tests/hands/led_hand.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::hands {

LedHand::LedHand(const Subject& subject, Orders& orders, Dice hand, Dice chance)
    : subject_(subject), orders_(orders), hand_(hand), chance_(chance), place_(subject.machine.rest()) {
    scene.nominal_V = subject.machine.nominal_V;
    scene.reference_V = hand_.between(4.93, 5.07);
    scene.ground_V = hand_.between(0.004, 0.03);
    scene.tremor_V = hand_.between(0.0005, 0.002);
    scene.lead.push_back({-10, Wire::none});
    beginFault();
    hand_V_ = home_V();
    scene.way.push_back({-10, hand_V_});
}

void LedHand::clip(Wire wire, double before_s) {
    const double off_s = now_s_ + before_s;
    const double on_s = off_s + (subject_.quickLead ? 0.1 : hand_.between(0.8, 2.5));
    scene.lead.push_back({off_s, Wire::none});
    scene.lead.push_back({on_s, wire});
    wire_ = wire;
    now_s_ = std::max(now_s_, on_s) + 0.5 + subject_.meter.settles_s();
    // Whoever leads waits until a meter that changes its range is back.
    if (subject_.meter.ranges.size() > 1) now_s_ += subject_.meter.deadTime_s;
}

void LedHand::open(const std::string& step, Wire wire) {
    step_ = step;
    const bool moves = wire != wire_;
    double before_s = subject_.quickLead ? 0.1 : hand_.between(0.5, 1.5);
    if (moves && comes(Kind::clipBeforeMark)) {
        before_s = -chance_.between(4, 6);
        did(Kind::clipBeforeMark, now_s_ + before_s, now_s_);
    } else if (moves && comes(Kind::clipAfterMark)) {
        before_s = chance_.between(4, 12);
        did(Kind::clipAfterMark, now_s_, now_s_ + before_s);
    }
    mark("step:" + step);
    if (moves) clip(wire, before_s);
    if (comes(Kind::markTwice)) {
        did(Kind::markTwice, now_s_, now_s_);
        now_s_ += chance_.between(0.3, 1.5);
        mark("step:" + step);
    }
    if (comes(Kind::undone)) {
        const double from_s = now_s_;
        now_s_ += chance_.between(2, 8);
        mark("undo:" + step);
        now_s_ += chance_.between(0.5, 2);
        mark("step:" + step);
        did(Kind::undone, from_s, now_s_);
    }
    beginStepActs();
    now_s_ += hand_.between(0.8, 1.5);
}

void LedHand::close() {
    endStepActs();
    now_s_ += hand_.between(0.3, 1.0);
}

void LedHand::wait(double for_s) {
    const double from_s = now_s_;
    now_s_ += for_s;
    anyTime(from_s);
    if (wire_ == Wire::signal) whileResting(from_s);
}

void LedHand::move(double level_V, double over_s) {
    scene.way.push_back({now_s_, hand_V_});
    now_s_ += over_s;
    scene.way.push_back({now_s_, level_V});
    hand_V_ = level_V;
}

void LedHand::visit(std::size_t place, double hold_s) {
    const Place& to = subject_.machine.places[place];
    const bool home = to.rest;
    mark("position:" + to.name);
    const double asked_s = now_s_;
    if (comes(Kind::markTwice)) {
        const double again_s = chance_.between(0.2, 1.0);
        scene.marks.push_back({now_s_ + again_s, "position:" + to.name});
        did(Kind::markTwice, now_s_, now_s_ + again_s);
    }
    double begins_s = hand_.between(0.25, 0.7), over_s = hand_.between(0.3, 1.0);
    double level_V = subject_.levels_V[place] + hand_.between(-0.003, 0.003);
    const double way_V = level_V - hand_V_;
    if (comes(Kind::early)) {
        begins_s = -chance_.between(0.3, 1.5);
        did(Kind::early, asked_s + begins_s, asked_s, way_V);
    }
    if (comes(Kind::late)) {
        begins_s = chance_.between(1.2, 3.0);
        did(Kind::late, asked_s, asked_s + begins_s, way_V);
    }
    if (comes(Kind::slowPress)) {
        over_s = chance_.between(2, 8);
        did(Kind::slowPress, asked_s + begins_s, asked_s + begins_s + over_s, way_V);
    }
    if (!home && comes(Kind::unfinished)) {
        level_V = hand_V_ + chance_.between(0.5, 0.95) * way_V;
        did(Kind::unfinished, asked_s, asked_s + begins_s + over_s + hold_s, level_V - hand_V_);
    }
    if (home && comes(Kind::resting)) {
        level_V = home_V() + chance_.between(0.04, 0.3) * (hand_V_ - home_V());
        did(Kind::resting, asked_s, asked_s + begins_s + over_s + hold_s, level_V - home_V());
    }
    if (home && step_ == "release" && hangs()) {
        const double stands_V = subject_.levels_V[subject_.machine.working()[0]] - home_V();
        level_V = home_V() + hand_.between(0.12, 0.3) * stands_V;
        faultTimes.push_back({asked_s, asked_s + hold_s});
    }
    // Whatever begins before its mark begins after the movement before it has ended.
    now_s_ = std::max(asked_s + begins_s, scene.way.back().at_s + 0.2);
    move(level_V, over_s);
    now_s_ = std::max(now_s_, asked_s);
    place_ = place;
    const double from_s = now_s_;
    if (home && comes(Kind::bounce)) {
        const double depth_V = chance_.between(0.05, 0.4) * (subject_.levels_V[awayFrom(place)] - home_V());
        const double at_s = from_s + chance_.between(0.02, 0.1), lasts_s = chance_.between(0.1, 0.25);
        scene.bumps.push_back({at_s, 0.5 * lasts_s, at_s + 0.5 * lasts_s, 0.5 * lasts_s, depth_V});
        did(Kind::bounce, at_s, at_s + lasts_s, depth_V);
    }
    now_s_ += hold_s + subject_.meter.settles_s(); // nobody is told to go on before the figure stands
    anyTime(from_s);
    if (home) {
        whileResting(from_s);
    } else {
        whileHolding(from_s);
        scene.held.push_back({from_s, now_s_});
    }
}

void LedHand::pose(const std::string& where, bool dropsOut) {
    if (!dropsOut && comes(Kind::skipPose)) {
        did(Kind::skipPose, now_s_, now_s_ + 2);
        now_s_ += 2;
        return;
    }
    const double from_s = now_s_;
    mark("pose:" + where);
    if (comes(Kind::markTwice)) {
        const double again_s = chance_.between(0.2, 1.0);
        scene.marks.push_back({now_s_ + again_s, "pose:" + where});
        did(Kind::markTwice, now_s_, now_s_ + again_s);
    }
    const double push_s = from_s + hand_.between(0.1, 0.3);
    const double hold_s = std::max(1.0, (3 + hand_.uniform()) * subject_.meter.interval_s) + 0.3;
    now_s_ += hold_s;
    if (dropsOut) {
        const double lasts_s = dropoutLasts_s(), begins_s = push_s + hand_.between(0.1, 0.4);
        now_s_ = std::max(now_s_, begins_s + lasts_s + 2.5 * subject_.meter.interval_s + subject_.meter.aperture_s);
        dropOut(begins_s, begins_s + lasts_s);
    }
    // A bushing gives a little, far within the sheet's play.
    const double play_V = hand_.between(-0.004, 0.004);
    scene.bumps.push_back({push_s, 0.1, now_s_ - 0.2, 0.1, play_V});
    anyTime(from_s);
    if (wire_ == Wire::signal) whileResting(from_s);
    if (comes(Kind::wiggleTwice)) {
        const double again_s = now_s_ - from_s;
        scene.bumps.push_back({now_s_ + 0.1, 0.1, now_s_ + again_s - 0.2, 0.1, play_V});
        did(Kind::wiggleTwice, now_s_, now_s_ + again_s);
        now_s_ += again_s;
    }
    if (leanTo_V_ != 0 && where == leanSide_) {
        const double depth_V = leanTo_V_ * chance_.between(0.96, 1.04);
        const double rise_s = chance_.between(0.08, 0.2);
        scene.bumps.push_back({push_s, rise_s, now_s_ - rise_s - 0.05, rise_s, depth_V});
        acts[static_cast<std::size_t>(leanAct_)].to_s = now_s_;
    }
    now_s_ += hand_.between(0.05, 0.2);
}

std::size_t LedHand::awayFrom(std::size_t place) {
    const std::vector<std::size_t> working = subject_.machine.working();
    for (;;) {
        const std::size_t to =
            working[static_cast<std::size_t>(chance_.whole(0, static_cast<int>(working.size()) - 1))];
        if (to != place) return to;
    }
}

} // namespace stillwire::hands
