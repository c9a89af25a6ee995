// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/open_excursion.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using namespace std::chrono_literals;

constexpr OpenExcursion::Level kLevel{0.8, 0.02, 0.02, 0};
constexpr double kTogether_V = 0.02;

// A reading every 300 ms, the first of them at 10 s.
OpenExcursion excursion(ExpectedMotion asked, const std::vector<double>& volts_V) {
    OpenExcursion e;
    e.begin(10s, volts_V.front(), asked, kLevel);
    for (std::size_t i = 1; i < volts_V.size(); ++i)
        e.push(10s + static_cast<int>(i) * 300ms, volts_V[i], kLevel.limit_V, kTogether_V);
    return e;
}

TEST(OpenExcursion, KeepsItsDeepestReadingAndTheReadingThatEndsItIsNoPartOfIt) {
    OpenExcursion e = excursion(ExpectedMotion::still, {0.5, 0.1, 0.4});
    EXPECT_EQ(e.push(10900ms, 0.805, 0.02, kTogether_V), DipDetector::Event::ended);
    const Excursion ended = e.ended();
    EXPECT_FALSE(ended.open);
    EXPECT_DOUBLE_EQ(ended.extreme_V, 0.1);
    EXPECT_EQ(ended.readings, 3);
    EXPECT_EQ(ended.to, 10600ms);
}

TEST(OpenExcursion, AShoulderIsANeighbourThatLeansTheSameWay) {
    OpenExcursion e = excursion(ExpectedMotion::still, {0.75});
    EXPECT_FALSE(e.shoulder(0.80));
    EXPECT_TRUE(e.shoulder(0.78));
    EXPECT_FALSE(e.shoulder(0.82));
    OpenExcursion::Level leant = kLevel;
    leant.offsetBefore_V = -0.021;
    e.begin(10s, 0.75, ExpectedMotion::still, leant);
    EXPECT_TRUE(e.shoulder(0.80));
}

TEST(OpenExcursion, WhereItRestsSaysWhatItWas) {
    using Settled = OpenExcursion::Settled;
    const std::vector<double> away(6, 2.0);
    EXPECT_EQ(excursion(ExpectedMotion::still, away).settled(11500ms, ExpectedMotion::still, false), Settled::no);
    EXPECT_EQ(excursion(ExpectedMotion::moving, away).settled(11500ms, ExpectedMotion::moving, false),
              Settled::moved);
    EXPECT_EQ(excursion(ExpectedMotion::unmarked, away).settled(11600ms, ExpectedMotion::unmarked, true),
              Settled::moved);
    EXPECT_EQ(excursion(ExpectedMotion::unmarked, away).settled(11600ms, ExpectedMotion::unmarked, false),
              Settled::no);
    const std::vector<double> long_(28, 2.0);
    EXPECT_EQ(excursion(ExpectedMotion::still, long_).settled(18100ms, ExpectedMotion::still, false),
              Settled::jumped);
    EXPECT_EQ(excursion(ExpectedMotion::still, {2.0, 1.0}).settled(70s, ExpectedMotion::still, false), Settled::lost);
}

TEST(OpenExcursion, WhatLayDeeperBeforeTheJumpIsAPartOfItsOwn) {
    const auto deeper = excursion(ExpectedMotion::still, {0.1, 0.1, 0.5, 0.5}).deeperBeforeRun();
    ASSERT_TRUE(deeper);
    EXPECT_DOUBLE_EQ(deeper->extreme_V, 0.1);
    EXPECT_EQ(deeper->readings, 2);
    EXPECT_FALSE(excursion(ExpectedMotion::still, {0.6, 0.5, 0.5}).deeperBeforeRun()) << "on its way there";
}

TEST(OpenExcursion, WhatLayOffTheNewLevelSinceItArrivedThereWereDropouts) {
    const auto arrival =
        excursion(ExpectedMotion::moving, {1.5, 4.1, 4.1, 3.0, 2.9, 4.1, 4.1}).arrivedAt(4.1, 0.02, 0.02);
    EXPECT_EQ(arrival.at, 10300ms);
    ASSERT_EQ(arrival.dropouts.size(), 1U);
    EXPECT_DOUBLE_EQ(arrival.dropouts[0].held_V, 4.1);
    EXPECT_DOUBLE_EQ(arrival.dropouts[0].extreme_V, 2.9);
    EXPECT_EQ(arrival.dropouts[0].readings, 2);
}

} // namespace
} // namespace stillwire::test
