// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/sweep_bridge.hpp"
#include "tests/support/trace_maker.hpp"

#include <vector>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

constexpr double kThreshold_V = 0.02;

// A reading every half a second.
std::vector<Excursion> found(const std::vector<double>& volts_V) {
    SweepBridge bridge;
    std::vector<Excursion> all;
    for (std::size_t i = 0; i < volts_V.size(); ++i)
        if (const auto e = bridge.push(fromSeconds(0.5 * static_cast<double>(i)), volts_V[i], kThreshold_V))
            all.push_back(*e);
    return all;
}

// 0.1 V from reading to reading, with these offsets in the middle.
std::vector<double> sweep(const std::vector<double>& offsets_V) {
    std::vector<double> volts_V;
    for (int i = 0; i < 6; ++i) volts_V.push_back(1 + 0.1 * i);
    for (const double offset_V : offsets_V)
        volts_V.push_back(1 + 0.1 * static_cast<double>(volts_V.size()) + offset_V);
    for (int i = 0; i < 4; ++i) volts_V.push_back(1 + 0.1 * static_cast<double>(volts_V.size()));
    return volts_V;
}

TEST(SweepBridge, FindsADropoutThatGoesAlongWithTheSweep) {
    const auto all = found(sweep({-0.3, -0.3, -0.3, -0.3, -0.3}));
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].from, fromSeconds(3.0));
    EXPECT_EQ(all[0].to, fromSeconds(5.0));
    EXPECT_EQ(all[0].direction, Direction::down);
    EXPECT_NEAR(all[0].depth_V(), 0.3, 1e-9);
    EXPECT_EQ(all[0].readings, 5);
}

TEST(SweepBridge, ItsFirstAndLastReadingMayLieBetween) {
    const auto all = found(sweep({-0.1, -0.3, -0.15}));
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].readings, 3);
}

TEST(SweepBridge, AHandThatPausesAndHurriesAfterIsNone) {
    EXPECT_TRUE(found(sweep({-0.1, -0.2, -0.3, -0.4, -0.15})).empty()) << "at rest between";
    EXPECT_TRUE(found(sweep({-0.08, -0.16, -0.24, -0.32, -0.24, -0.16, -0.08})).empty()) << "slower, then faster";
}

TEST(SweepBridge, WhatIsNoLeapOrNoSweepIsNone) {
    EXPECT_TRUE(found(sweep({-0.2, -0.2, -0.2})).empty()) << "two readings' worth of movement";
    EXPECT_TRUE(found({1, 1, 1, 1, 1, 0.5, 0.5, 1, 1, 1, 1, 1}).empty()) << "held";
    EXPECT_TRUE(found({0.8, 0.8, 0.8, 0.8, 0.8, 4.1, 4.1, 4.1, 1.0, 1.0, 1.0, 1.0}).empty())
        << "a press, and back short";
    auto other = sweep({-0.3, -0.3});
    for (std::size_t i = 8; i < other.size(); ++i) other[i] += 0.5;
    EXPECT_TRUE(found(other).empty()) << "back on another line";
}

// The depth is within what a hand can do between two readings of a slow meter.
TEST(SweepBridge, AShallowDropoutInAnEvenSweepIsToldMarkedOrNot) {
    const MakerMeter kMeters[] = {{0.33, 0.10, 0.001, 0.0005, 0.004, 0.5, 2},
                                  {0.50, 0.20, 0.001, 0.0005, 0.004, 0.5, 2}};
    for (const MakerMeter& meter : kMeters)
        for (const bool marked : {true, false}) {
            int told = 0, runs = 0;
            for (std::uint64_t seed = 1; seed <= 40; ++seed) {
                TraceMaker trace(meter, seed);
                trace.set(0.82);
                if (marked) trace.mark("step:sweep");
                trace.hold(8);
                trace.dropout(trace.dice().between(5, 15), trace.dice().between(1.2, 2.5), -0.3);
                trace.move(4.1, 20);
                trace.hold(12);
                const TrueDropout due = trace.dropouts()[0];
                const Findings f = examine(trace, risingSheet());
                ++runs;
                for (const Excursion& e : f.excursions)
                    if (toSeconds(e.from) <= due.to_s + 1 && toSeconds(e.to) >= due.from_s - 1) {
                        ++told;
                        break;
                    }
            }
            EXPECT_GE(told, runs - 1) << meter.interval_s << (marked ? " s, marked" : " s, unmarked");
        }
}

} // namespace
} // namespace stillwire::test
