// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/passing.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using namespace std::chrono_literals;

Passing pressedAndBack() {
    Passing passing;
    Excursion e;
    e.to = 10s;
    e.held_V = 2.5;
    e.extreme_V = 4.1;
    e.direction = Direction::up;
    passing.begin({e, false, 5s}, 2.51);
    return passing;
}

TEST(Passing, OneThatStaysHasComeBack) {
    Passing passing = pressedAndBack();
    EXPECT_EQ(passing.push(10300ms, 2.50, 2.5, 0.02), Passing::Turn::goesOn);
    EXPECT_EQ(passing.push(11600ms, 2.50, 2.5, 0.02), Passing::Turn::cameBack);
}

TEST(Passing, OneThatGoesOnBeyondWasAHandOnItsWay) {
    Passing passing = pressedAndBack();
    EXPECT_EQ(passing.push(10300ms, 2.40, 2.5, 0.02), Passing::Turn::crossed);
}

TEST(Passing, OneThatTurnsAgainWasADropoutAndTheNextBegins) {
    Passing passing = pressedAndBack();
    EXPECT_EQ(passing.push(10300ms, 2.60, 2.5, 0.02), Passing::Turn::cameBack);
}

TEST(Passing, OneThatStillMovesIsWaitedFor) {
    Passing passing = pressedAndBack();
    EXPECT_EQ(passing.push(11600ms, 2.49, 2.5, 0.02), Passing::Turn::goesOn) << "by more than half the limit";
    EXPECT_EQ(passing.push(13200ms, 2.49, 2.5, 0.02), Passing::Turn::cameBack);
}

} // namespace
} // namespace stillwire::test
