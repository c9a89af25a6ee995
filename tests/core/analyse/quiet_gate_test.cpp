// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/quiet_gate.hpp"

#include <vector>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using namespace std::chrono_literals;

constexpr QuietTerms kTerms{0.82, 0.02, 10s, 1h, 1s, 9500ms, 3};

Reading reading(Time time, double volts_V, ReadingFlags flags = {}) { return {time, volts_V, flags}; }

TEST(QuietGate, TakesWhatLiesNearAndInTimeUntilItIsFull) {
    QuietGate gate;
    EXPECT_FALSE(gate.take(reading(10s, 0.82))) << "not open yet";
    gate.open(kTerms);
    EXPECT_TRUE(gate.take(reading(10s, 0.83)));
    EXPECT_TRUE(gate.take(reading(11s, 0.81)));
    EXPECT_TRUE(gate.take(reading(12s, 0.82)));
    EXPECT_FALSE(gate.take(reading(13s, 0.82)));
    ASSERT_EQ(gate.count(), 3U);
    EXPECT_EQ(gate.kept()[1].time, 11s);
    gate.close();
    EXPECT_EQ(gate.count(), 0U);
    EXPECT_FALSE(gate.take(reading(13s, 0.82)));
}

TEST(QuietGate, TheRestIsForTheStages) {
    EXPECT_FALSE(kTerms.admits(reading(10s, 0.8401))) << "off the level";
    EXPECT_FALSE(kTerms.admits(reading(10501ms, 0.82))) << "after a silence";
    EXPECT_FALSE(kTerms.admits(reading(9900ms, 0.82))) << "before it may";
    EXPECT_FALSE(kTerms.admits(reading(10s, 0.82, Flag::autorange)));
    EXPECT_FALSE(kTerms.admits(Reading{10s, {}, {}})) << "no number";
}

TEST(QuietGate, ARunEndsWithTheFirstThatIsNone) {
    const std::vector<Reading> rows{reading(10s, 0.82), reading(11s, 0.82), reading(12s, 0.5), reading(13s, 0.82)};
    EXPECT_EQ(quietRun(kTerms, rows.data(), rows.size()), 2U);
    EXPECT_EQ(quietRun(kTerms, rows.data(), 1), 1U);
    EXPECT_EQ(quietRun(QuietTerms{}, rows.data(), rows.size()), 0U);
}

} // namespace
} // namespace stillwire::test
