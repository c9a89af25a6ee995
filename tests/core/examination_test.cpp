// SPDX-License-Identifier: GPL-3.0-or-later
// Whole runs against facts of the trade (common practice, no source) for a sensor with windows 4.2 to 4.8 V released
// and 0.9 ± 0.1 V pressed, and against the judgement table.
#include "core/examination.hpp"
#include "tests/support/trace_maker.hpp"

#include <limits>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

struct GuidedRun {
    double rest_V = 4.4, pressed_V = 0.9;
    double reference_V = 5.0, ground_V = 0.0;
    int shaftEvery = 0, harnessEvery = 0;
    double depth_V = -2.0, duration_s = 0.6, play_V = 0;
    int poses = 32, releases = 3;
};

TraceMaker guided(const GuidedRun& run, std::uint64_t seed = 1, MakerMeter meter = {}) {
    TraceMaker trace(meter, seed);
    trace.set(run.rest_V);
    trace.guidedStart(run.reference_V, run.ground_V);
    trace.wiggle("wiggle-shaft", "", run.poses, run.shaftEvery, run.depth_V, run.duration_s, run.play_V);
    trace.wiggle("wiggle-harness", "section-1/", run.poses, run.harnessEvery, run.depth_V, run.duration_s);
    trace.mark("step:full-press");
    trace.hold(1);
    trace.press("pressed", run.pressed_V, 5);
    trace.press("released", run.rest_V);
    trace.mark("step:release");
    for (int i = 0; i < run.releases; ++i) {
        trace.press("pressed", run.pressed_V);
        trace.press("released", run.rest_V);
    }
    trace.mark("step:end");
    return trace;
}

std::string whatItSaid(const Findings& f) {
    std::string text = decisionName(f.verdict.decision);
    for (const Sentence& s : f.verdict.reasons) text += "\n  " + s.english();
    for (const Excursion& e : f.excursions)
        text += "\n  excursion " + plain(toSeconds(e.from), 2) + " " + volts(e.held_V, 3) + " to " +
                volts(e.extreme_V, 3) + (e.kind == ExcursionKind::play ? " play" : "") + " " +
                std::string(e.step ? stepName(*e.step) : "none");
    return text;
}

TEST(Verdict, GoodSensorIsKept) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const Findings f = examine(guided({}, seed), fallingSheet());
        EXPECT_EQ(f.verdict.decision, Decision::keep) << seed << whatItSaid(f);
        EXPECT_EQ(dropoutCount(f), 0) << seed << whatItSaid(f);
        EXPECT_EQ(f.positions[0].conformance, Conformance::inside);
        EXPECT_EQ(f.positions[1].conformance, Conformance::inside);
        EXPECT_EQ(f.positions[0].visits.size(), 5U);
        EXPECT_EQ(f.wiggle.poses, 32);
        EXPECT_EQ(*f.wiggle.posesFor95, 0);
    }
}

TEST(Verdict, GoodSensorWithPlayIsKept) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        GuidedRun run;
        run.play_V = 0.04;
        const Findings f = examine(guided(run, seed), fallingSheet());
        EXPECT_EQ(f.verdict.decision, Decision::keep) << seed << whatItSaid(f);
        EXPECT_EQ(dropoutCount(f), 0) << seed << whatItSaid(f);
    }
}

TEST(Verdict, SteadyAt407IsTurned) {
    GuidedRun run;
    run.rest_V = 4.07;
    run.pressed_V = 0.85;
    const Findings f = examine(guided(run), fallingSheet());
    EXPECT_EQ(f.verdict.decision, Decision::adjust) << whatItSaid(f);
    EXPECT_TRUE(f.adjustment.wanted);
    EXPECT_TRUE(f.adjustment.feasible);
}

TEST(Verdict, DropsWhenPushedSidewaysIsReplaced) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        GuidedRun run;
        run.shaftEvery = 4;
        const Findings f = examine(guided(run, seed), fallingSheet());
        EXPECT_EQ(f.verdict.decision, Decision::replace) << seed << whatItSaid(f);
        EXPECT_EQ(f.positions[0].conformance, Conformance::inside);
    }
}

TEST(Verdict, DropsWithTheHarnessIsWiring) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        GuidedRun run;
        run.harnessEvery = 4;
        const Findings f = examine(guided(run, seed), fallingSheet());
        EXPECT_EQ(f.verdict.decision, Decision::checkWiring) << seed << whatItSaid(f);
    }
}

TEST(Verdict, LowReferenceIsSupply) {
    GuidedRun run;
    run.reference_V = 4.5;
    run.rest_V = 4.4 * 0.9;
    run.pressed_V = 0.9 * 0.9;
    const Findings f = examine(guided(run), fallingSheet());
    EXPECT_EQ(f.verdict.decision, Decision::checkSupply) << whatItSaid(f);
    EXPECT_NEAR(*f.positions[0].level_V, 4.4, 0.01);
    EXPECT_EQ(f.positions[0].conformance, Conformance::inside);
}

TEST(Verdict, HighGroundIsWiring) {
    GuidedRun run;
    run.ground_V = 0.35;
    const Findings f = examine(guided(run), fallingSheet());
    EXPECT_EQ(f.verdict.decision, Decision::checkWiring) << whatItSaid(f);
}

TEST(Verdict, ShortSpanIsLinkage) {
    GuidedRun run;
    run.rest_V = 4.1;
    run.pressed_V = 1.6;
    const Findings f = examine(guided(run), fallingSheet());
    EXPECT_EQ(f.verdict.decision, Decision::checkLinkage) << whatItSaid(f);
}

TEST(Verdict, TooFewPosesCannotTell) {
    GuidedRun run;
    run.poses = 8;
    const Findings f = examine(guided(run), fallingSheet());
    EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << whatItSaid(f);
    EXPECT_EQ(*f.wiggle.posesFor95, 21);
}

TEST(Verdict, ReleasesThatHangAreReplaced) {
    TraceMaker trace(MakerMeter{}, 3);
    trace.set(4.5);
    trace.guidedStart(5.0, 0.0);
    trace.wiggle("wiggle-shaft", "", 32);
    trace.wiggle("wiggle-harness", "section-1/", 32);
    trace.mark("step:full-press");
    trace.press("pressed", 0.9, 5);
    trace.press("released", 4.5);
    trace.mark("step:release");
    for (const double back_V : {3.55, 4.5, 4.5, 3.6, 4.5}) {
        trace.press("pressed", 0.9);
        trace.press("released", back_V);
    }
    trace.mark("step:end");
    const Findings f = examine(trace, fallingSheet());
    EXPECT_EQ(f.verdict.decision, Decision::replace) << whatItSaid(f);
    EXPECT_GE(f.machine.stops, 2);
}

TEST(Examination, ShowsTheNewestReadingOnTheMoveAndTheHeldLevelWhenStill) {
    TraceMaker trace(MakerMeter{}, 1);
    trace.set(0.8);
    trace.mark("step:sweep");
    trace.hold(10);
    EXPECT_NEAR(examine(trace, fallingSheet()).meter.held_V, 0.8, 0.01);
    trace.move(4.0, 10); // ends at the far level and does not stay there
    const Findings moving = examine(trace, fallingSheet());
    EXPECT_EQ(moving.state, WireState::moving);
    EXPECT_NEAR(moving.meter.held_V, 4.0, 0.2);
    trace.hold(5);
    EXPECT_NEAR(examine(trace, fallingSheet()).meter.held_V, 4.0, 0.01);
}

TEST(Verdict, ColdReadingCounts) {
    TraceMaker trace(MakerMeter{}, 3);
    trace.set(3.85);
    trace.guidedStart(5.0, 0.0);
    trace.set(4.4);
    trace.hold(5);
    trace.wiggle("wiggle-shaft", "", 32);
    trace.wiggle("wiggle-harness", "section-1/", 32);
    trace.mark("step:full-press");
    trace.press("pressed", 0.9, 5);
    trace.press("released", 4.4);
    trace.mark("step:release");
    for (int i = 0; i < 3; ++i) {
        trace.press("pressed", 0.9);
        trace.press("released", 4.4);
    }
    trace.mark("step:end");
    const Findings f = examine(trace, fallingSheet());
    EXPECT_NE(f.verdict.decision, Decision::keep) << whatItSaid(f);
    EXPECT_NEAR(*f.positions[0].coldLevel_V, 3.85, 0.01);
    EXPECT_EQ(f.positions[0].conformance, Conformance::outside);
}

// A meter locked on its 6 V range shows no figure for the battery's 12 V, only that it is over; one that may stand on
// a small range says nothing by it.
TEST(OverVoltage, WhatIsOverARangeThatReachesPastItIsOver) {
    const MeterRange small{0.4, 0.0001, 0.5, 2}, large{6.0, 0.001, 0.5, 2};
    for (const bool withSmall : {false, true}) {
        MeterTraits meter{"", 0.33, 0.1, {large}, ""};
        if (withSmall) meter.ranges.insert(meter.ranges.begin(), small);
        Examination examination({fallingSheet(), meter, true, ProbeSide::sensorSide, BlackLead::batteryNegative});
        examination.push(Mark{Time{0}, "step:wiggle-shaft"});
        double at_s = 0;
        for (int i = 0; i < 10; ++i) examination.push(Reading{fromSeconds(at_s += 0.33), 4.4, {}});
        const Reading over{fromSeconds(at_s + 0.33), std::numeric_limits<double>::quiet_NaN(), Flag::overload};
        examination.push(over);
        EXPECT_FALSE(examination.findings().overVoltage); // one alone may be a needle slipping
        examination.push(Reading{fromSeconds(at_s + 0.66), over.volts_V, over.flags});
        EXPECT_EQ(examination.findings().overVoltage, !withSmall);
    }
}

} // namespace
} // namespace stillwire::test
