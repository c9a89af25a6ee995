// SPDX-License-Identifier: GPL-3.0-or-later
// The steps of a led run but for the wiggles.
#include "tests/hands/led_hand.hpp"

namespace stillwire::hands {

void LedHand::run() {
    if (comes(Kind::sag)) {
        // Some tenths of a percent in minutes: a regulator nearly holds. Common practice, no source.
        scene.sagPerSecond = chance_.between(0.002, 0.012) / 500;
        scene.groundPerSecond_V = chance_.between(-0.004, 0.004) / 500;
        did(Kind::sag, 0, 500);
    }
    now_s_ = 0.3;
    mark("key:on");
    otherWires();
    coldStart();
    if (!subject_.oldSteps) leadCheck();
    shaft();
    harness();
    fullPress();
    sweep();
    release();
    lift();
    warmRepeat();
    repeating_ = true;
    for (const Step step : subject_.again) repeat(step);
    mark("step:end");
    now_s_ += 1;
    scene.end_s = now_s_;
    scene.sort();
}

void LedHand::otherWires() {
    const bool neverMoved = subject_.fault == Fault::leadOnSignal;
    const Wire first = neverMoved ? Wire::signal : Wire::reference;
    open("hook-up", first);
    wait(hand_.between(2, 4));
    close();
    wire("reference", first, 12, 16);
    wire("ground", neverMoved ? Wire::signal : Wire::ground, 10, 15);
}

void LedHand::wire(const char* step, Wire wire, double atLeast_s, double atMost_s) {
    open(step, wire);
    const double from_s = now_s_;
    wait(hand_.between(atLeast_s, atMost_s));
    if (wire == Wire::reference && subject_.fault == Fault::referenceDrops) dropReference(from_s);
    close();
}

// What was asked for again. A lead on the wrong wire stays there: whoever clipped it does not see it.
void LedHand::repeat(Step step) {
    const bool neverMoved = subject_.fault == Fault::leadOnSignal;
    switch (step) {
    case Step::reference: return wire("reference", neverMoved ? Wire::signal : Wire::reference, 12, 16);
    case Step::ground: return wire("ground", neverMoved ? Wire::signal : Wire::ground, 10, 15);
    case Step::coldStart: return coldStart();
    case Step::leadCheck: return leadCheck();
    case Step::wiggleShaft: return shaft();
    case Step::wiggleHarness: return harness();
    case Step::fullPress: return fullPress();
    case Step::sweep: return sweep();
    case Step::release: return release();
    case Step::lift: return lift();
    case Step::warmRepeat: return warmRepeat();
    case Step::connectorHeld: return connectorHeld();
    case Step::wiggleReference: return wirePoses("wiggle-reference", Wire::reference);
    case Step::wiggleGround: return wirePoses("wiggle-ground", Wire::ground);
    case Step::hookUp:
    case Step::adjust:
    case Step::confirm:
    case Step::putBack: return;
    }
}

void LedHand::coldStart() {
    open("cold-start", Wire::signal);
    wait(hand_.between(30, 45));
    close();
}

void LedHand::fullPress() {
    open("full-press", Wire::signal);
    if (hand_.chance(0.5)) wait(hand_.between(1, 4));
    const std::vector<std::size_t> working = subject_.machine.working();
    const int rounds = working.size() > 1 ? 3 : 5;
    for (int i = 0; i < rounds; ++i) {
        // A lever is let go between; on its way further it may also go from one to the next.
        for (const std::size_t place : working) {
            visit(place, hand_.between(4, 6));
            if (place == working.back() || hand_.chance(0.7)) visit(subject_.machine.rest(), hand_.between(3, 4.5));
        }
    }
    close();
}

void LedHand::sweep() {
    open("sweep", Wire::signal);
    const std::size_t rest = subject_.machine.rest();
    // To each end of the travel and back; a lever that rests in the middle has two.
    for (const std::size_t end : {std::size_t{0}, subject_.machine.places.size() - 1}) {
        if (end == rest) continue;
        move(subject_.levels_V[end], hand_.between(10, 16));
        place_ = end;
        const double from_s = now_s_;
        now_s_ += hand_.between(1.5, 2.5);
        anyTime(from_s);
        whileHolding(from_s);
        move(home_V(), hand_.between(10, 16));
        place_ = rest;
        wait(hand_.between(2, 3));
    }
    close();
}

void LedHand::release() {
    open("release", Wire::signal);
    const std::vector<std::size_t> working = subject_.machine.working();
    const int releases = subject_.spare ? 7 : 6;
    for (int i = 0; i < releases; ++i) {
        const bool one = subject_.fault == Fault::hangOnStop || subject_.fault == Fault::hangOffStop;
        // A hang is towards the end that was pressed, so all of its presses go there.
        const std::size_t to = one ? 0 : static_cast<std::size_t>(i) % working.size();
        visit(working[to], hand_.between(2.5, 3.5));
        visit(subject_.machine.rest(), hand_.between(3, 4.5));
    }
    close();
}

void LedHand::lift() {
    open("lift", Wire::signal);
    wait(hand_.between(3, 4));
    mark(subject_.fault == Fault::hangOffStop ? "arm:off-stop" : "arm:on-stop");
    wait(hand_.between(2, 3));
    close();
}

} // namespace stillwire::hands
