// SPDX-License-Identifier: GPL-3.0-or-later
// A level that stands still leaves no range of the meter. Where it did in a wiggle, it weighs beside a dropout; alone
// it is no finding.
#include "tests/support/guided_run.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using testing::HasSubstr;

// The harness is wiggled a second time, with poses that go dark and poses that drop out for a reading.
TraceMaker withHarness(const std::vector<int>& dark, const std::vector<int>& dropouts, int shaftEvery = 0) {
    GuidedRun run;
    run.shaftEvery = shaftEvery;
    TraceMaker trace = guided(run, 3);
    trace.mark("step:wiggle-harness");
    trace.hold(1);
    for (int pose = 0; pose < 16; ++pose) {
        trace.mark(std::string("pose:section-2/") + (pose % 2 ? "left" : "right"));
        trace.hold(0.5);
        for (const int which : dark)
            if (which == pose) trace.flagged(1.0, Flag::autorange);
        for (const int which : dropouts)
            if (which == pose) trace.dropout(0.2, 0.3, -1.0);
        trace.hold(1.5);
    }
    trace.mark("step:end");
    return trace;
}

MeterTraits ranging(double smaller_V) {
    MeterTraits meter = TraceMaker(MakerMeter{}).traits();
    meter.ranges = {{smaller_V, 0.001, 0.5, 2}, {40.0, 0.001, 0.5, 2}};
    return meter;
}

Findings found(const TraceMaker& trace, double smaller_V = 6.0) {
    return examine(trace.rows(), fallingSheet(), ranging(smaller_V));
}

TEST(OffScale, IsTheSecondBesideOneDropout) {
    EXPECT_EQ(found(withHarness({}, {5})).verdict.decision, Decision::cannotTell) << "one alone does not decide";
    const Findings f = found(withHarness({3, 9}, {5}));
    EXPECT_EQ(f.verdict.decision, Decision::checkWiring) << whatItSaid(f);
    EXPECT_THAT(whatItSaid(f), HasSubstr("changed its range in 2 poses of the harness"));
    EXPECT_THAT(whatItSaid(found(withHarness({3}, {5}))), HasSubstr("changed its range in 1 pose of the harness"));
}

TEST(OffScale, AloneIsNoFinding) {
    const Findings f = found(withHarness({3, 9, 12}, {}));
    EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << whatItSaid(f);
}

// A level near the end of a range leaves it by play alone.
TEST(OffScale, NearARangeLimitMeansNothing) {
    EXPECT_EQ(found(withHarness({3, 9}, {5}), 4.5).verdict.decision, Decision::cannotTell);
}

// The shaft does not outweigh a harness that went dark as often.
TEST(OffScale, ASideThatWentDarkIsNotClean) {
    EXPECT_EQ(found(withHarness({}, {}, 8)).verdict.decision, Decision::replace);
    const Findings f = found(withHarness({2, 4, 6, 8, 10, 12, 14}, {}, 8));
    EXPECT_EQ(f.verdict.decision, Decision::checkWiring) << whatItSaid(f);
    EXPECT_EQ(f.verdict.causes[1].decision, Decision::replace);
}

} // namespace
} // namespace stillwire::test
