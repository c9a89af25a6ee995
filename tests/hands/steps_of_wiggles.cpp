// SPDX-License-Identifier: GPL-3.0-or-later
// The steps in which something is pushed and held.
#include "tests/hands/led_hand.hpp"

#include <algorithm>

namespace stillwire::hands {
namespace {

const char* side(std::size_t i) { return i % 2 == 0 ? "left" : "right"; }

} // namespace

void LedHand::leadCheck() {
    open("lead-check", Wire::signal);
    for (std::size_t i = 0; i < 10; ++i) pose(std::string(i < 5 ? "red-lead/" : "black-lead/") + side(i));
    close();
}

void LedHand::shaft() {
    const std::size_t poses = 29 + static_cast<std::size_t>(subject_.spare ? hand_.whole(2, 4) : 0);
    const std::vector<bool> drops = whichPoses(poses, hand_.between(0.12, 0.4), showsUnderPushes());
    const auto first = std::find(drops.begin(), drops.end(), true) - drops.begin();
    open("wiggle-shaft", Wire::signal);
    for (std::size_t i = 0; i < poses; ++i) {
        // In and out and a tap on the body are among the pushes.
        const bool other = i % 6 == 5;
        pose(other ? (i % 12 == 5 ? "in" : "out") : side(i), drops[i]);
        const bool asksMore = drops[i] && static_cast<std::ptrdiff_t>(i) == first;
        if (repeating_ || (!asksMore && !(subject_.extraSteps && i == 12))) continue;
        close();
        afterFirstDropout();
        open("wiggle-shaft", Wire::signal);
    }
    close();
}

void LedHand::afterFirstDropout() {
    if (!subject_.oldSteps) {
        connectorHeld();
        leadCheck();
    }
    wirePoses("wiggle-reference", Wire::reference);
    wirePoses("wiggle-ground", Wire::ground);
}

void LedHand::connectorHeld() {
    const std::size_t poses = 16;
    const std::vector<bool> drops = whichPoses(poses, 0.4, subject_.fault == Fault::shaft);
    open("connector-held", Wire::signal);
    for (std::size_t i = 0; i < poses; ++i) pose(side(i), drops[i]);
    close();
}

void LedHand::wirePoses(const char* step, Wire wire) {
    open(step, wire);
    wait(hand_.between(2, 3));
    const double from_s = now_s_;
    for (std::size_t i = 0; i < 10; ++i) pose(side(i));
    if (wire == Wire::reference && subject_.fault == Fault::referenceDrops) dropReference(from_s);
    close();
}

void LedHand::harness() {
    open("wiggle-harness", Wire::signal);
    const std::vector<std::string>& sections = subject_.machine.sections;
    const auto bad = static_cast<std::size_t>(hand_.whole(1, static_cast<int>(sections.size()) - 1));
    for (std::size_t s = 0; s < sections.size(); ++s) {
        // The older shape asks for as many of the whole harness as of the shaft.
        const std::size_t least = subject_.oldSteps ? 29 / sections.size() + 1 : 8;
        const std::size_t poses = least + static_cast<std::size_t>(subject_.spare ? hand_.whole(1, 2) : 0);
        const bool here =
            (subject_.fault == Fault::harness && s == bad) || (subject_.fault == Fault::connector && s == 0);
        const std::vector<bool> drops = whichPoses(poses, 0.4, here);
        for (std::size_t i = 0; i < poses; ++i) pose(sections[s] + "/" + side(i), drops[i]);
        now_s_ += hand_.between(0.5, 1.5);
    }
    close();
    // After something was seen outside the shaft, the leads are suspects again.
    const bool seen = subject_.fault == Fault::harness || subject_.extraSteps;
    if (seen && !repeating_ && !subject_.oldSteps) leadCheck();
}

void LedHand::warmRepeat() {
    open("warm-repeat", Wire::signal);
    wait(hand_.between(4, 8));
    const std::vector<bool> drops = whichPoses(12, 0.15, subject_.fault == Fault::shaft);
    for (std::size_t i = 0; i < 12; ++i) pose(side(i), drops[i]);
    for (const std::string& section : subject_.machine.sections)
        for (std::size_t i = 0; i < 2; ++i) pose(section + "/" + side(i));
    for (int round = 0; round < 2; ++round)
        for (const std::size_t place : subject_.machine.working()) {
            visit(place, hand_.between(3, 4));
            visit(subject_.machine.rest(), hand_.between(3, 4));
        }
    close();
}

} // namespace stillwire::hands
