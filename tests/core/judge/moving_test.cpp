// SPDX-License-Identifier: GPL-3.0-or-later
// Dropouts under a held or moving pedal: a foot that gives way stays on the travel, a wire that opens does not, and a
// worn spot spikes at its own place. Common practice, no source.
#include "tests/support/guided_run.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

// In each of six visits to "pressed" the level goes by `depth_V` for a while; the sheet falls from 4.4 to 0.9 V.
Findings heldBadly(double depth_V) {
    TraceMaker trace(MakerMeter{}, 1);
    trace.set(4.4);
    trace.guidedStart();
    trace.wiggle("wiggle-shaft", "", 30);
    trace.wiggle("wiggle-harness", "section-1/", 30);
    for (const char* step : {"step:full-press", "step:release"}) {
        trace.mark(step);
        trace.hold(1);
        for (int i = 0; i < 3; ++i) {
            trace.press("pressed", 0.9, 4);
            trace.dropout(1, 1, depth_V);
            trace.hold(4);
            trace.press("released", 4.4, 5);
        }
    }
    trace.mark("step:end");
    return examine(trace, fallingSheet());
}

TEST(Moving, AFootThatGivesWayCondemnsNothing) {
    for (const double depth_V : {0.4, 1.3, 2.5}) {
        const Findings f = heldBadly(depth_V);
        EXPECT_NE(f.verdict.decision, Decision::replace) << depth_V << whatItSaid(f);
        EXPECT_NE(f.verdict.decision, Decision::checkWiring) << depth_V << whatItSaid(f);
    }
}

TEST(Moving, OffTheTravelNoFootTakesIt) {
    const Findings f = heldBadly(-0.85);
    EXPECT_EQ(f.verdict.decision, Decision::replace) << whatItSaid(f);
}

// Two short dips to one level while the foot holds at the end of a sweep: a foot. On the way, at one place: a worn
// spot.
TEST(Moving, SpikesOfASweepSpeakOnTheWayAlone) {
    const auto swept = [](bool held) {
        TraceMaker trace(MakerMeter{}, 1);
        trace.set(4.4);
        trace.guidedStart();
        trace.wiggle("wiggle-shaft", "", 30);
        trace.wiggle("wiggle-harness", "section-1/", 30);
        trace.mark("step:sweep");
        for (int i = 0; i < 2; ++i) {
            if (!held) trace.dropout(5, 0.3, 0.9);
            trace.move(0.9, 15);
            for (int dip = 0; held && dip < 2; ++dip) {
                trace.dropout(3, 0.3, 0.9);
                trace.hold(6);
            }
            trace.move(4.4, 15);
            trace.hold(3);
        }
        trace.mark("step:end");
        trace.guidedEnds(0.9, 2);
        return examine(trace, fallingSheet()).verdict.decision;
    };
    EXPECT_NE(swept(true), Decision::replace);
    EXPECT_EQ(swept(false), Decision::replace);
}

} // namespace
} // namespace stillwire::test
