// SPDX-License-Identifier: GPL-3.0-or-later
// Whole runs against the judgement table, for a sensor with windows 4.2 to 4.8 V released and 0.9 ± 0.1 V pressed.
#include "core/examination.hpp"
#include "tests/support/guided_run.hpp"

#include <limits>
#include <sstream>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

TEST(Verdict, GoodSensorIsKept) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const Findings f = examine(guided({}, seed), fallingSheet());
        EXPECT_EQ(f.verdict.decision, Decision::keep) << seed << whatItSaid(f);
        EXPECT_EQ(dropoutCount(f), 0) << seed << whatItSaid(f);
        EXPECT_EQ(f.positions[0].conformance, Conformance::inside);
        EXPECT_EQ(f.positions[1].conformance, Conformance::inside);
        EXPECT_EQ(f.positions[0].visits.size(), 5U);
        EXPECT_EQ(f.wiggle.poses, 64); // shaft and harness
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
    EXPECT_EQ(*f.wiggle.posesFor95, 42); // shaft and harness
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

// Probed at the controller for a while: what lies between is no longer untested.
TEST(Verdict, AProbeThatWasMovedToTheControllerIsRemembered) {
    for (const bool moved : {false, true}) {
        TraceMaker trace = guided({});
        if (moved) trace.mark("probe:controller-side");
        bool untested = false;
        for (const auto& one : examine(trace, fallingSheet()).verdict.notTested)
            untested = untested || one.kind == NotTestedKind::beyondTheSensor;
        EXPECT_EQ(untested, !moved);
    }
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
        EXPECT_FALSE(examination.findings().overVoltage); // one alone may be a tip slipping
        examination.push(Reading{fromSeconds(at_s + 0.66), over.volts_V, over.flags});
        EXPECT_EQ(examination.findings().overVoltage, !withSmall);
    }
}

// A wire is judged while a step says that the lead is on it; 1.1 times the nominal, two readings in succession.
TEST(Examination, OverVoltageIsOfAWireThatAStepReads) {
    const auto over = [](const std::string& marks, double volts_V, Flag flag = {}, bool known = true) {
        Examination examination({fallingSheet(), {"", 0.33, 0.1, {{6.0, 0.001, 0.5, 2}}, ""}, known});
        double at_s = 0;
        std::istringstream all(marks);
        for (std::string mark; all >> mark;) examination.push(Mark{fromSeconds(at_s += 0.2), mark});
        at_s += 1;
        for (int i = 0; i < 3; ++i) examination.push(Reading{fromSeconds(at_s += 0.33), volts_V, flag});
        return examination.findings().overVoltage;
    };
    EXPECT_TRUE(over("step:wiggle-shaft", 5.6));
    EXPECT_TRUE(over("step:reference", 5.6));
    EXPECT_TRUE(over("", 5.6)); // nobody marked anything
    EXPECT_FALSE(over("step:wiggle-shaft", 5.4));
    EXPECT_FALSE(over("step:ground", 12.4)); // the lead on battery, more likely
    EXPECT_FALSE(over("step:reference step:end", 12.4));
    EXPECT_FALSE(over("step:hook-up", 12.4));
    const double none = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(over("step:wiggle-shaft", none, Flag::overload));
    EXPECT_FALSE(over("step:wiggle-shaft", none, Flag::overload, false)); // its ranges are a guess
}

TEST(Examination, AStepSkippedAsItRanIsNoEvidence) {
    TraceMaker trace(MakerMeter{}, 1);
    trace.set(0.82); // the lead is still on the signal
    trace.mark("step:reference");
    trace.hold(5);
    EXPECT_TRUE(examine(trace, risingSheet()).reference);
    trace.mark("skip:reference");
    trace.mark("step:cold-start");
    trace.hold(5);
    EXPECT_FALSE(examine(trace, risingSheet()).reference);
}

} // namespace
} // namespace stillwire::test
