// SPDX-License-Identifier: GPL-3.0-or-later
// What hands do is set aside, and one of anything decides nothing: the design, points 1, 2 and 10.
#include "tests/support/trace_maker.hpp"

#include <algorithm>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

int asides(const Findings& f, Likely likely) {
    return static_cast<int>(
        std::count_if(f.aside.begin(), f.aside.end(), [&](const Aside& a) { return a.likely == likely; }));
}

TraceMaker begun() {
    TraceMaker trace(MakerMeter{}, 3);
    trace.set(0.82);
    trace.guidedStart();
    return trace;
}

void pressedAndReleased(TraceMaker& trace, double third_V = 4.1) {
    trace.mark("step:full-press");
    for (const double pressed_V : {4.1, 4.1, third_V, 4.1}) {
        trace.press("pressed", pressed_V);
        trace.press("released", 0.82);
    }
    trace.mark("step:end");
}

TEST(Aside, APressNobodyAskedForIsATap) {
    TraceMaker trace = begun();
    trace.mark("step:wiggle-shaft");
    trace.mark("pose:left");
    trace.hold(4);
    trace.move(4.1, 0.5);
    trace.hold(1.5);
    trace.move(0.82, 0.5);
    trace.hold(4);
    pressedAndReleased(trace);
    const Findings f = examine(trace, risingSheet());
    EXPECT_EQ(asides(f, Likely::tap), 1);
    EXPECT_EQ(dropoutCount(f), 0);
}

// A track whose dropouts end at another position's level, push after push: no foot taps so often.
TEST(Aside, WhatComesInManyPushesIsNoTap) {
    TraceMaker trace = begun();
    trace.wiggle("wiggle-shaft", "", 32, 4, 4.1 - 0.82, 1.2);
    pressedAndReleased(trace);
    const Findings f = examine(trace, risingSheet());
    EXPECT_EQ(asides(f, Likely::tap), 0);
    EXPECT_GE(dropoutCount(f), 6);
}

TEST(Aside, AnArmThatLeansWithEachPushIsNoDropout) {
    TraceMaker trace = begun();
    trace.wiggle("wiggle-shaft", "", 34, 0, 0, 0.5, 0.12);
    pressedAndReleased(trace);
    const Findings f = examine(trace, risingSheet());
    EXPECT_GE(asides(f, Likely::lean), 5);
    EXPECT_EQ(dropoutCount(f), 0);
    EXPECT_NE(f.verdict.decision, Decision::replace);
}

// The same depth, for half a second of each push: the track.
TEST(Aside, WhatIsOverBeforeThePushIsNoLean) {
    TraceMaker trace = begun();
    trace.wiggle("wiggle-shaft", "", 34, 5, -0.18, 0.6);
    pressedAndReleased(trace);
    const Findings f = examine(trace, risingSheet());
    EXPECT_EQ(asides(f, Likely::lean), 0);
    EXPECT_GE(dropoutCount(f), 5);
}

// A lead check asks about the tip: there its loss is the answer, and not set aside.
TEST(Aside, ATipThatLosesContactForLongFailsTheLeadCheck) {
    TraceMaker trace(MakerMeter{}, 3);
    trace.set(0.82);
    trace.guidedStart();
    trace.mark("step:lead-check");
    for (int i = 0; i < 10; ++i) {
        trace.mark(i < 5 ? "pose:red-lead/left" : "pose:black-lead/left");
        if (i == 3) trace.dropout(1, 2, -0.82);
        trace.hold(4);
    }
    trace.mark("step:end");
    const Findings f = examine(trace, risingSheet());
    EXPECT_EQ(asides(f, Likely::lead), 0);
    EXPECT_TRUE(f.leadsFailed);
}

Findings referenceFallsTo(double share, int times) {
    TraceMaker trace(MakerMeter{}, 3);
    trace.set(5.0);
    trace.mark("step:reference");
    trace.hold(6);
    for (int i = 0; i < times; ++i) {
        trace.dropout(3, 1.2, (share - 1) * 5.0);
        trace.hold(8);
    }
    trace.mark("step:end");
    return examine(trace, risingSheet());
}

TEST(Aside, AReferenceThatFallsOnceByAShareIsTheStarter) {
    EXPECT_EQ(asides(referenceFallsTo(0.8, 1), Likely::crank), 1);
    EXPECT_EQ(asides(referenceFallsTo(0.8, 2), Likely::crank), 0); // twice is a supply that drops
    EXPECT_EQ(asides(referenceFallsTo(0.02, 1), Likely::crank), 0);
}

TEST(Aside, AFootThatComesLateIsSaidToBeLate) {
    TraceMaker trace = begun();
    pressedAndReleased(trace);
    trace.mark("step:full-press");
    trace.mark("position:pressed");
    trace.hold(4);
    trace.move(4.1, 0.4);
    trace.hold(4);
    trace.press("released", 0.82);
    trace.mark("step:end");
    const Findings f = examine(trace, risingSheet());
    EXPECT_EQ(asides(f, Likely::late), 1);
    EXPECT_EQ(dropoutCount(f), 0);
}

// What was set aside takes its push with it: no evidence either way.
TEST(Aside, APushInWhichSomethingWasSetAsideIsNotCounted) {
    const auto pushed = [](bool tapped) {
        TraceMaker trace = begun();
        trace.mark("step:wiggle-shaft");
        for (int i = 0; i < 8; ++i) {
            trace.mark(i % 2 == 0 ? "pose:left" : "pose:right");
            trace.hold(3);
            if (tapped && i == 4) {
                trace.move(4.1, 0.4);
                trace.hold(1.5);
                trace.move(0.82, 0.4);
                trace.hold(3);
            }
        }
        pressedAndReleased(trace);
        return examine(trace, risingSheet()).steps.front();
    };
    EXPECT_EQ(pushed(false).poses, 8);
    EXPECT_EQ(pushed(true).poses, 7);
    EXPECT_EQ(pushed(true).asidePoses, 1);
    EXPECT_EQ(pushed(true).blindPoses, 0);
}

// The arm leans with the push; held by the other hand it does so still, or no longer.
Findings leansAndIsHeld(double heldLean_V) {
    TraceMaker trace = begun();
    for (const bool held : {false, true}) {
        trace.mark("step:wiggle-shaft");
        if (held) trace.mark("arm:held");
        for (int i = 0; i < 12; ++i) {
            trace.mark(i % 2 == 0 ? "pose:left" : "pose:right");
            const double lean_V = held ? heldLean_V : 0.12;
            if (i % 2 == 0 && lean_V != 0) trace.dropout(0.5, 2, lean_V);
            trace.hold(3);
        }
        if (held) trace.mark("arm:free");
    }
    pressedAndReleased(trace);
    return examine(trace, risingSheet());
}

TEST(Aside, AnArmThatLeansThoughItIsHeldIsLoose) {
    const Findings loose = leansAndIsHeld(0.12), hand = leansAndIsHeld(0);
    EXPECT_EQ(loose.verdict.decision, Decision::checkLinkage) << loose.verdict.reasons.front().says.english();
    EXPECT_NE(hand.verdict.decision, Decision::checkLinkage);
    EXPECT_GE(asides(hand, Likely::lean), 5);
    EXPECT_FALSE(loose.holdTheArm);
    EXPECT_FALSE(hand.holdTheArm);
}

TEST(Aside, ALeaningArmIsToBeHeldAndUntilThenSaidToBeUntested) {
    TraceMaker trace = begun();
    trace.wiggle("wiggle-shaft", "", 34, 0, 0, 0.5, 0.12);
    pressedAndReleased(trace);
    const Findings f = examine(trace, risingSheet());
    EXPECT_TRUE(f.holdTheArm);
    EXPECT_TRUE(std::any_of(f.verdict.notTested.begin(), f.verdict.notTested.end(), [](const auto& one) {
        return one.says.english().find("with the arm held") != std::string::npos;
    }));
}

TEST(Aside, OneDropoutOfWhateverLengthDecidesNothing) {
    for (const double length_s : {0.5, 1.2}) {
        TraceMaker trace = begun();
        trace.wiggle("wiggle-shaft", "", 34, 34, -0.6, length_s); // in the last pose alone
        pressedAndReleased(trace);
        EXPECT_EQ(examine(trace, risingSheet()).verdict.decision, Decision::cannotTell) << length_s;
    }
    TraceMaker trace = begun();
    trace.wiggle("wiggle-shaft", "", 34, 17, -0.6, 0.5);
    pressedAndReleased(trace);
    EXPECT_GE(dropoutCount(examine(trace, risingSheet())), 2);
}

TEST(Aside, APressThatStoppedShortStandsApartFromThoseThatAgree) {
    TraceMaker trace = begun();
    pressedAndReleased(trace, 3.4);
    const Findings f = examine(trace, risingSheet());
    EXPECT_EQ(asides(f, Likely::unfinished), 1);
    ASSERT_TRUE(f.positions[1].level_V);
    EXPECT_NEAR(*f.positions[1].level_V, 4.1, 0.03);
    EXPECT_NE(f.verdict.decision, Decision::adjust);
    // Two that agree with each other do speak.
    TraceMaker twice = begun();
    pressedAndReleased(twice, 3.4);
    pressedAndReleased(twice, 3.4);
    EXPECT_EQ(asides(examine(twice, risingSheet()), Likely::unfinished), 0);
}

} // namespace
} // namespace stillwire::test
