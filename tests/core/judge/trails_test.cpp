// SPDX-License-Identifier: GPL-3.0-or-later
// The printed bound with a dropout that runs on into later poses.
#include "core/stats/exact.hpp"
#include "tests/support/guided_run.hpp"

#include <stdexcept>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

const StepCoverage& shaftOf(const Findings& f) {
    for (const StepCoverage& s : f.steps)
        if (s.step == Step::wiggleShaft) return s;
    throw std::logic_error("no wiggle");
}

// Twelve poses of two seconds; in the third a dropout of so many seconds begins.
StepCoverage covered(double lasts_s) {
    TraceMaker trace(MakerMeter{}, 5);
    trace.set(4.4);
    trace.guidedStart(5.0, 0.0);
    trace.mark("step:wiggle-shaft");
    trace.hold(1);
    for (int pose = 0; pose < 12; ++pose) {
        trace.mark(pose % 2 ? "pose:left" : "pose:right");
        if (pose == 2) trace.dropout(0.5, lasts_s, -1.0);
        trace.hold(2);
    }
    trace.mark("step:end");
    return shaftOf(examine(trace, fallingSheet()));
}

TEST(Trails, ADropoutInItsPoseLeavesTheBoundThatOfItsPoses) {
    const StepCoverage s = covered(0.6);
    EXPECT_EQ(s.poses, 12);
    EXPECT_EQ(s.dropouts, 1);
    EXPECT_DOUBLE_EQ(*s.rateUpper95, rateUpperBound(1, 12));
}

TEST(Trails, PosesItHidesAreNoTrialsOfTheBound) {
    const StepCoverage s = covered(5.3); // over two more poses
    EXPECT_EQ(s.poses, 12);
    EXPECT_EQ(s.dropouts, 1);
    EXPECT_DOUBLE_EQ(*s.rateUpper95, rateUpperBound(1, 10));
}

} // namespace
} // namespace stillwire::test
