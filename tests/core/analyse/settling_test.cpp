// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/settling.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

TEST(Settling, AShaftJustArrivedSwingsByAShareOfItsWay) {
    Settling settling;
    settling.arrived(0.8, 4.1); // 3.3 V: 66 mV
    EXPECT_TRUE(settling.swings(0.06));
    EXPECT_TRUE(settling.swings(-0.06));
    EXPECT_FALSE(settling.swings(0.07));
    settling.count(5);
    EXPECT_FALSE(settling.swings(0.06)) << "no longer";
}

TEST(Settling, ADisplayFilterCreepsOnTheWayItCame) {
    Settling settling;
    settling.arrived(4.1, 0.8);
    EXPECT_TRUE(settling.creeps(-0.09, 0.02));
    EXPECT_FALSE(settling.creeps(0.09, 0.02)) << "against it";
    EXPECT_FALSE(settling.creeps(-0.11, 0.02)) << "too far";
    settling.count(9);
    EXPECT_FALSE(settling.creeps(-0.09, 0.02));
}

TEST(Settling, ALevelThatWasNotMovedToDoesNeither) {
    Settling settling;
    settling.arrived(4.1, 0.8);
    settling.nowhere();
    EXPECT_FALSE(settling.swings(0.001));
    EXPECT_FALSE(settling.creeps(-0.03, 0.02));
    EXPECT_FALSE(settling.established());
    settling.count(10);
    EXPECT_TRUE(settling.established());
}

} // namespace
} // namespace stillwire::test
