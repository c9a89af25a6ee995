// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/leave.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using namespace std::chrono_literals;

Context placeAt(Time from, ExpectedMotion asked, bool moveAsked = false, int stepVisit = 0) {
    Context place;
    place.from = from;
    place.motion = asked;
    place.moveExpected = moveAsked;
    place.stepVisit = stepVisit;
    return place;
}

TEST(Leave, AMarkThatAsksGivesItUntilTheLevelHasMovedAndThreeSecondsLonger) {
    Leave leave;
    leave.placeChanged(placeAt(10s, ExpectedMotion::positions, true));
    EXPECT_TRUE(leave.mayMove(60s, ExpectedMotion::positions, true)) << "it has not come yet";
    EXPECT_FALSE(leave.byGrace(ExpectedMotion::positions)) << "a mark waits for it";
    leave.arrived();
    EXPECT_TRUE(leave.mayMove(13s, ExpectedMotion::positions, true));
    EXPECT_TRUE(leave.byGrace(ExpectedMotion::positions));
    EXPECT_FALSE(leave.mayMove(13001ms, ExpectedMotion::positions, true));
}

TEST(Leave, NothingMayMoveInAStepOfHoldingStill) {
    Leave leave;
    leave.placeChanged(placeAt(10s, ExpectedMotion::still));
    leave.looked(ExpectedMotion::still);
    EXPECT_FALSE(leave.mayMove(11s, ExpectedMotion::still, false));
    EXPECT_TRUE(leave.mayMove(11s, ExpectedMotion::free, true));
    EXPECT_TRUE(leave.mayMove(11s, ExpectedMotion::sweep, true));
}

TEST(Leave, WhatMovedWhileNothingWasJudgedMayShowInTheReadingAfter) {
    Leave leave;
    leave.placeChanged(placeAt(10s, ExpectedMotion::free));
    leave.looked(ExpectedMotion::free);
    leave.placeChanged(placeAt(20s, ExpectedMotion::still, false, 1));
    EXPECT_TRUE(leave.mayMove(40s, ExpectedMotion::still, true)) << "the meter was dark for long";
    leave.looked(ExpectedMotion::still);
    EXPECT_FALSE(leave.mayMove(41s, ExpectedMotion::still, true));
}

TEST(Leave, ANeedleOnItsWayToAnotherWireKeepsItThroughTheNextMark) {
    Leave leave;
    Context reference = placeAt(10s, ExpectedMotion::moving);
    reference.wire = Wire::reference;
    EXPECT_TRUE(leave.placeChanged(reference).otherWire);
    reference.from = 15s;
    EXPECT_FALSE(leave.placeChanged(reference).otherWire);
    EXPECT_TRUE(leave.asked()) << "it has not come yet";
    leave.arrived();
    reference.from = 20s;
    leave.placeChanged(reference);
    EXPECT_FALSE(leave.asked());
}

TEST(Leave, ItMayComeHomeWithinTenSeconds) {
    Leave leave;
    EXPECT_FALSE(leave.comesHome(1s, 0.8, 0.02));
    leave.leftUnjudged(10s, 0.8);
    EXPECT_TRUE(leave.comesHome(19s, 0.81, 0.02));
    EXPECT_FALSE(leave.comesHome(19s, 0.83, 0.02));
    EXPECT_FALSE(leave.comesHome(20s, 0.81, 0.02));
}

TEST(Leave, KnowsWhenItsStepBegan) {
    Leave leave;
    leave.placeChanged(placeAt(10s, ExpectedMotion::still, false, 1));
    EXPECT_TRUE(leave.placeChanged(placeAt(12s, ExpectedMotion::still, false, 1)).sameStep);
    EXPECT_EQ(leave.stepFrom(), 10s);
    EXPECT_FALSE(leave.placeChanged(placeAt(20s, ExpectedMotion::moving, false, 2)).sameStep);
    EXPECT_EQ(leave.stepFrom(), 20s);
}

} // namespace
} // namespace stillwire::test
