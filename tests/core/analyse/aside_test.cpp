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
