// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/leave.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using namespace std::chrono_literals;

Place placeAt(Time from, Asked asked, bool moveAsked = false, int stepVisit = 0) {
    Place place;
    place.from = from;
    place.asked = asked;
    place.moveAsked = moveAsked;
    place.stepVisit = stepVisit;
    return place;
}

TEST(Leave, AMarkThatAsksGivesItUntilTheLevelHasMovedAndThreeSecondsLonger) {
    Leave leave;
    leave.placeChanged(placeAt(10s, Asked::positions, true));
    EXPECT_TRUE(leave.mayMove(60s, Asked::positions, true)) << "it has not come yet";
    EXPECT_FALSE(leave.byGrace(Asked::positions)) << "a mark waits for it";
    leave.arrived();
    EXPECT_TRUE(leave.mayMove(13s, Asked::positions, true));
    EXPECT_TRUE(leave.byGrace(Asked::positions));
    EXPECT_FALSE(leave.mayMove(13001ms, Asked::positions, true));
}

TEST(Leave, NothingMayMoveInAStepOfHoldingStill) {
    Leave leave;
    leave.placeChanged(placeAt(10s, Asked::still));
    leave.looked(Asked::still);
    EXPECT_FALSE(leave.mayMove(11s, Asked::still, false));
    EXPECT_TRUE(leave.mayMove(11s, Asked::free, true));
    EXPECT_TRUE(leave.mayMove(11s, Asked::sweep, true));
}

TEST(Leave, WhatMovedWhileNothingWasJudgedMayShowInTheReadingAfter) {
    Leave leave;
    leave.placeChanged(placeAt(10s, Asked::free));
    leave.looked(Asked::free);
    leave.placeChanged(placeAt(20s, Asked::still, false, 1));
    EXPECT_TRUE(leave.mayMove(40s, Asked::still, true)) << "the meter was dark for long";
    leave.looked(Asked::still);
    EXPECT_FALSE(leave.mayMove(41s, Asked::still, true));
}

TEST(Leave, ANeedleOnItsWayToAnotherWireKeepsItThroughTheNextMark) {
    Leave leave;
    Place reference = placeAt(10s, Asked::moving);
    reference.wire = Probed::reference;
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
    leave.placeChanged(placeAt(10s, Asked::still, false, 1));
    EXPECT_TRUE(leave.placeChanged(placeAt(12s, Asked::still, false, 1)).sameStep);
    EXPECT_EQ(leave.stepFrom(), 10s);
    EXPECT_FALSE(leave.placeChanged(placeAt(20s, Asked::moving, false, 2)).sameStep);
    EXPECT_EQ(leave.stepFrom(), 20s);
}

} // namespace
} // namespace stillwire::test
