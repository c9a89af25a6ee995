// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/level_search.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using namespace std::chrono_literals;

LevelSearch::Start leaving(double left_V, double newest_V) {
    LevelSearch::Start start;
    start.left_V = left_V;
    start.lastHeld = 700ms;
    start.first = start.newest = 1s;
    start.extreme_V = start.newest_V = newest_V;
    return start;
}

TEST(LevelSearch, FromNowhereTheFirstTwoThatLieTogetherSettleIt) {
    LevelSearch search;
    EXPECT_FALSE(search.push(1s, 0.82, 0.01));
    EXPECT_FALSE(search.push(1100ms, 0.90, 0.01));
    EXPECT_TRUE(search.push(1200ms, 0.905, 0.01));
    EXPECT_EQ(search.before(), 1100ms);
    EXPECT_DOUBLE_EQ(search.before_V(), 0.90);
}

TEST(LevelSearch, TwoReadingsAcrossBlindTimeDoNotTouch) {
    LevelSearch search;
    search.push(1s, 0.82, 0.01);
    search.blind();
    EXPECT_FALSE(search.push(9s, 0.82, 0.01));
    EXPECT_TRUE(search.push(9300ms, 0.82, 0.01));
}

TEST(LevelSearch, TwoNearReadingsOfAQuickMeterAreNoRestOnASlowMovement) {
    LevelSearch::Start start = leaving(0.8, 2.0);
    start.slowly = true;
    LevelSearch slow(start);
    EXPECT_FALSE(slow.push(1300ms, 2.005, 0.01));
    EXPECT_FALSE(slow.push(1600ms, 2.010, 0.01));
    EXPECT_TRUE(slow.push(2s, 2.010, 0.01));
    LevelSearch quick(leaving(0.8, 2.0));
    EXPECT_FALSE(quick.push(1100ms, 2.005, 0.01));
    EXPECT_TRUE(quick.push(1300ms, 2.005, 0.01));
}

TEST(LevelSearch, HadItBeenAnExcursion) {
    LevelSearch search(leaving(0.8, 0.6));
    search.push(1300ms, 0.2, 0.01);
    search.push(1600ms, 0.5, 0.01);
    search.push(1900ms, 0.8, 0.01);
    EXPECT_TRUE(search.push(2200ms, 0.8, 0.01));
    const Excursion e = search.asExcursion(0.02);
    EXPECT_EQ(e.from, 1s);
    EXPECT_EQ(e.to, 1600ms) << "the last that was off";
    EXPECT_DOUBLE_EQ(e.extreme_V, 0.2);
    EXPECT_EQ(e.direction, Direction::down);
    EXPECT_EQ(e.readings, 3);
}

} // namespace
} // namespace stillwire::test
