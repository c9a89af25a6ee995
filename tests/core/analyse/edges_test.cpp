// SPDX-License-Identifier: GPL-3.0-or-later
// Moments at which a dropout, a hand and a meter look alike.
#include "tests/support/trace_maker.hpp"

#include <cmath>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

const Excursion* dropoutNear(const Findings& f, double at_s) {
    for (const Excursion& e : f.excursions)
        if (e.kind == ExcursionKind::dropout && toSeconds(e.from) < at_s + 1.5 && toSeconds(e.to) > at_s - 0.5)
            return &e;
    return nullptr;
}

const Excursion* dropoutNear(Findings&&, double) = delete; // they would be gone

class StraddledEnd : public testing::TestWithParam<const char*> {};

TEST_P(StraddledEnd, TheDropoutCountsForTheEarlierStep) {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        TraceMaker trace(MakerMeter{}, seed);
        trace.set(0.82);
        trace.guidedStart(5.0, 0.0);
        trace.wiggle("wiggle-shaft", "", 6);
        trace.mark("pose:left");
        trace.dropout(1.2, 1.0, -0.6);
        trace.hold(1.7);
        const double mark_s = trace.now_s();
        trace.mark(GetParam());
        trace.hold(5);
        const Findings f = examine(trace, risingSheet());
        const Excursion* e = dropoutNear(f, mark_s);
        ASSERT_TRUE(e) << "seed " << seed;
        EXPECT_EQ(e->step, Step::wiggleShaft);
        EXPECT_EQ(e->pose.text(), "left");
    }
}
INSTANTIATE_TEST_SUITE_P(Marks, StraddledEnd,
                         testing::Values("step:end", "step:full-press", "step:wiggle-harness", "step:sweep"));

TEST(Edges, ADropoutThatIsOpenWhenThePressBeginsIsToldAndSoIsThePress) {
    for (std::uint64_t seed = 1; seed <= 10; ++seed)
        for (const double open_s : {1.2, 2.5, 4.0}) { // of it, after the press is asked for
            TraceMaker trace(MakerMeter{}, seed);
            trace.set(0.82);
            trace.guidedStart(5.0, 0.0);
            trace.wiggle("wiggle-shaft", "", 6);
            trace.mark("pose:left");
            trace.dropout(1.2, 2.5 + open_s, -0.6);
            trace.hold(1.7);
            const double end_s = trace.now_s();
            trace.mark("step:end");
            trace.hold(1);
            trace.mark("step:full-press");
            trace.hold(1);
            trace.press("pressed", 4.1, 6);
            trace.press("released", 0.82, 6);
            trace.mark("step:end");
            const Findings f = examine(trace, risingSheet());
            const Excursion* e = dropoutNear(f, end_s);
            ASSERT_TRUE(e) << "seed " << seed << ", " << open_s << " s";
            EXPECT_EQ(e->step, Step::wiggleShaft);
            EXPECT_NEAR(toSeconds(e->from), end_s - 0.5, 0.7);
            EXPECT_TRUE(f.jumps.empty()) << "seed " << seed << ", " << open_s << " s";
            EXPECT_EQ(f.positions.at(1).visits.size(), 1U) << "seed " << seed << ", " << open_s << " s";
        }
}

TEST(Edges, WhatWentAndCameHomeWhileNothingWasJudgedIsNoJump) {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        TraceMaker trace(MakerMeter{}, seed);
        trace.set(0.82);
        trace.guidedStart(5.0, 0.0);
        trace.wiggle("wiggle-shaft", "", 6);
        trace.mark("step:end");
        trace.dropout(0.5, 2.0, -0.6);
        trace.hold(1);
        trace.mark("step:wiggle-harness");
        trace.mark("pose:section-1");
        trace.hold(12);
        const Findings f = examine(trace, risingSheet());
        EXPECT_TRUE(f.jumps.empty()) << "seed " << seed;
        EXPECT_EQ(dropoutCount(f), 0) << "seed " << seed;
    }
}

TEST(Edges, DropoutsShowUnderPlay) {
    int due = 0, found = 0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        TraceMaker trace(MakerMeter{}, seed);
        trace.set(0.82);
        trace.guidedStart(5.0, 0.0);
        trace.wiggle("wiggle-shaft", "", 34, 5, -0.15, 0.6, 0.03);
        trace.mark("step:end");
        const Findings f = examine(trace, risingSheet());
        for (const TrueDropout& d : trace.dropouts()) {
            if (d.shownDepth_V < 0.12) continue;
            ++due;
            found += dropoutNear(f, d.from_s) ? 1 : 0;
        }
        EXPECT_NE(f.verdict.decision, Decision::keep);
    }
    EXPECT_GT(due, 80);
    EXPECT_GE(found, 0.99 * due);
}

TEST(Edges, ANeedleThatHangsInTheAirFirstIsNoDropout) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        TraceMaker trace({0.4, 0.1, 0.001, 0.0005, 0.004, 0.5, 2}, seed);
        trace.set(0.82);
        trace.mark("key:on");
        trace.mark("step:hook-up");
        trace.hold(4);
        trace.mark("step:reference");
        trace.hold(0.6);
        trace.move(0.0, 0.1);
        trace.hold(3.2);
        trace.move(5.0, 0.1);
        trace.hold(6);
        trace.mark("step:ground");
        trace.hold(0.7);
        trace.move(0.0, 0.1);
        trace.hold(1.5);
        trace.move(0.03, 0.1);
        trace.hold(6);
        trace.mark("step:cold-start");
        trace.hold(0.8);
        trace.move(0.82, 0.2);
        trace.hold(30);
        trace.mark("step:end");
        const Findings f = examine(trace, risingSheet());
        EXPECT_EQ(dropoutCount(f), 0) << "seed " << seed;
        ASSERT_TRUE(f.reference && f.ground);
        EXPECT_NEAR(f.reference->level_V, 5.0, 0.005);
        EXPECT_NEAR(f.ground->level_V, 0.03, 0.01);
        EXPECT_NE(f.verdict.decision, Decision::checkSupply);
    }
}

TEST(Edges, AnUnsteadyMeterThatStandsStillIsFrozen) {
    int found = 0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        TraceMaker trace({0.33, 0.1, 0.001, 0.003, 0.004, 0.5, 2}, seed);
        trace.set(4.3);
        trace.hold(30);
        auto rows = trace.rows();
        const double stuck_V = std::get<Reading>(rows.back()).volts_V;
        for (int i = 1; i <= 30; ++i) rows.emplace_back(Reading{fromSeconds(30 + 0.33 * i), stuck_V, {}});
        TraceMaker after({0.33, 0.1, 0.001, 0.003, 0.004, 0.5, 2}, seed + 100);
        after.set(4.3);
        after.hold(20);
        for (const auto& row : after.rows()) {
            Reading reading = std::get<Reading>(row);
            reading.time += fromSeconds(41);
            rows.emplace_back(reading);
        }
        const Findings f = examine(rows, fallingSheet(), trace.traits());
        for (const BlindSpan& span : f.blind)
            if (span.cause == BlindCause::frozen && std::abs(toSeconds(span.from) - 30) < 1) ++found;
    }
    EXPECT_GE(found, 19);
}

TEST(Edges, AQuietCoarseMeterIsNeverFrozen) {
    TraceMaker trace({0.33, 0.1, 0.010, 0.001, 0.004, 0.8, 2}, 4);
    trace.set(4.302);
    trace.hold(1200);
    EXPECT_TRUE(examine(trace, fallingSheet()).blind.empty());
}

// At rest it stands on one count as it must; how it ran through the counts on the way says nothing of that.
TEST(Edges, ACoarseMeterAtRestAfterASlowMovementIsNotFrozen) {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        TraceMaker trace({0.2, 0.2, 0.010, 0.001, 0.004, 0.8, 2}, seed);
        trace.set(0.825);
        trace.hold(8);
        for (int i = 0; i < 4; ++i) {
            trace.move(4.101, trace.dice().between(12, 40));
            trace.hold(8);
            trace.move(0.825, trace.dice().between(12, 40));
            trace.hold(8);
        }
        EXPECT_TRUE(examine(trace, risingSheet()).blind.empty()) << seed;
    }
}

TEST(Edges, ALevelThatStaysElsewhereHasJumped) {
    TraceMaker trace(MakerMeter{}, 8);
    trace.set(4.4);
    trace.guidedStart(5.0, 0.0);
    trace.mark("step:wiggle-shaft");
    trace.hold(10);
    const double at_s = trace.now_s();
    trace.set(3.9);
    trace.hold(30);
    trace.mark("step:end");
    const Findings f = examine(trace, fallingSheet());
    ASSERT_EQ(f.jumps.size(), 1U);
    EXPECT_NEAR(toSeconds(f.jumps[0].at), at_s, 0.5);
    EXPECT_NEAR(f.jumps[0].from_V, 4.4, 0.003);
    EXPECT_NEAR(f.jumps[0].to_V, 3.9, 0.003);
    EXPECT_EQ(dropoutCount(f), 0);
}

// The reading that shows a dropout is the reading that flags it.
TEST(Edges, FlaggedByTheReadingThatShowsIt) {
    TraceMaker trace(MakerMeter{}, 9);
    trace.set(4.3);
    trace.hold(20);
    trace.dropout(2, 0.8, -1.0);
    trace.hold(10);
    Examination examination(
        {fallingSheet(), trace.traits(), true, ProbeSide::sensorSide, BlackLead::batteryNegative});
    for (const auto& row : trace.rows()) {
        const Reading& reading = std::get<Reading>(row);
        const bool low = reading.volts_V < 4.2;
        const PushResult result = examination.push(reading);
        if (low) {
            EXPECT_TRUE(result.dropoutFlagged);
            EXPECT_EQ(result.direction, Direction::down);
            return;
        }
        EXPECT_FALSE(result.dropoutFlagged);
    }
    FAIL() << "no reading showed it";
}

} // namespace
} // namespace stillwire::test
