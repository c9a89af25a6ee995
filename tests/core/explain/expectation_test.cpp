// SPDX-License-Identifier: GPL-3.0-or-later
// What the marks in force are made of. 2 s and five intervals: the design, 'What the core computes', point 1; the
// rest are the figures of the tuning.
#include "core/domain/timeline.hpp"
#include "core/explain/expectation.hpp"
#include "tests/core/explain/wire.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace std::chrono_literals;
using test::expecting;

const Tuning kTuning;

TEST(Expectation, OfAStillWireIsThatNothingMoves) {
    const Expectation e = stillExpectation(kTuning);
    EXPECT_TRUE(e.judged && e.holds);
    EXPECT_FALSE(e.unmarked || e.asked || e.rails || e.sweep || e.held || e.stirred);
    EXPECT_EQ(e.beginMove, 12);
    EXPECT_EQ(e.flat_s, 8);
    EXPECT_EQ(e.flatReadings, 8);
}

TEST(Expectation, WithoutMarksFlatForTwoSecondsAndFiveIntervalsIsElsewhere) {
    const Expectation e = expecting(ExpectedMotion::unmarked);
    EXPECT_TRUE(e.unmarked && e.judged);
    EXPECT_FALSE(e.holds || e.sweep);
    EXPECT_EQ(e.beginMove, 5);
    EXPECT_EQ(e.flat_s, 2);
    EXPECT_EQ(e.flatReadings, 0);
    EXPECT_DOUBLE_EQ(expecting(ExpectedMotion::unmarked, 0.5).flat_s, 2.5);
}

TEST(Expectation, OfStepsThatHoldIsThatNothingMoves) {
    for (const ExpectedMotion motion : {ExpectedMotion::still, ExpectedMotion::positions}) {
        const Expectation e = expecting(motion);
        EXPECT_TRUE(e.holds && e.judged);
        EXPECT_FALSE(e.unmarked || e.sweep);
        EXPECT_EQ(e.beginMove, 12);
        EXPECT_EQ(e.flat_s, 8);
        EXPECT_EQ(e.flatReadings, 8);
    }
}

TEST(Expectation, OfAStepAboutMovingIsThatItMoves) {
    const Expectation e = expecting(ExpectedMotion::moving);
    EXPECT_TRUE(e.judged);
    EXPECT_FALSE(e.holds || e.unmarked || e.sweep);
    EXPECT_EQ(e.beginMove, 3);
    EXPECT_EQ(e.flat_s, 0);
    EXPECT_EQ(e.flatReadings, 5);
}

TEST(Expectation, OfASweepIsThatItMovesAllTheTime) {
    const Expectation e = expecting(ExpectedMotion::sweep);
    EXPECT_TRUE(e.sweep && e.judged);
    EXPECT_FALSE(e.holds || e.unmarked);
    EXPECT_EQ(e.beginMove, 0.5);
    EXPECT_EQ(e.flat_s, 2);
    EXPECT_EQ(e.flatReadings, 0);
    EXPECT_DOUBLE_EQ(expecting(ExpectedMotion::sweep, 0.5).flat_s, 2.5);
}

TEST(Expectation, WhereNothingIsJudgedAMovementIsFree) {
    const Expectation e = expecting(ExpectedMotion::free);
    EXPECT_FALSE(e.judged || e.holds || e.unmarked || e.sweep);
    EXPECT_EQ(e.beginMove, 0);
}

TEST(Expectation, TakesOverWhatThePlaceSays) {
    Context place;
    place.from = 7s;
    place.motion = ExpectedMotion::still;
    Expectation e = expectationAt(place, 3s, kTuning, 0.33);
    EXPECT_EQ(e.from, 7s);
    EXPECT_EQ(e.stepFrom, 3s);
    EXPECT_TRUE(e.rails); // the signal
    EXPECT_FALSE(e.asked || e.held || e.stirred);
    place.moveExpected = place.heldByOperator = true;
    place.poseIndex = 0;
    place.wire = Wire::reference;
    e = expectationAt(place, 3s, kTuning, 0.33);
    EXPECT_TRUE(e.asked && e.held && e.stirred);
    EXPECT_FALSE(e.rails);
    place.wire = Wire::ground;
    EXPECT_FALSE(expectationAt(place, 3s, kTuning, 0.33).rails);
}

} // namespace
} // namespace stillwire
