// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/runs.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using namespace std::chrono_literals;

TEST(Runs, AreHeldTogetherByTheirMean) {
    Runs runs;
    runs.begin(1s, 1.00);
    EXPECT_FALSE(runs.push(2s, 1.018, 0.02));
    EXPECT_TRUE(runs.push(3s, 1.036, 0.02)) << "0.027 V from the mean";
    ASSERT_EQ(runs.before().size(), 1U);
    EXPECT_DOUBLE_EQ(runs.before()[0].level_V(), 1.009);
    EXPECT_EQ(runs.newest().from, 3s);
}

TEST(Runs, OneThatWasLongEnoughWasARest) {
    Runs runs;
    runs.begin(1s, 1.0);
    for (const Time at : {2s, 3s, 4s}) runs.push(at, 1.0, 0.02);
    runs.push(5s, 2.0, 0.02);
    EXPECT_TRUE(runs.rested(4, 3s));
    EXPECT_FALSE(runs.rested(5, 3s));
    EXPECT_FALSE(runs.rested(4, 3001ms));
}

TEST(Runs, BlindTimeEndsOneAndItIsNotKept) {
    Runs runs;
    runs.begin(1s, 1.0);
    runs.blind();
    EXPECT_TRUE(runs.push(5s, 1.0, 0.02));
    EXPECT_TRUE(runs.before().empty());
}

} // namespace
} // namespace stillwire::test
