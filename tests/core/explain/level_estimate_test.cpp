// SPDX-License-Identifier: GPL-3.0-or-later
// Thresholds: the design, 'What the core computes', point 1. The rest by closed formulas, named beside each.
#include "core/explain/level_estimate.hpp"
#include "tests/support/trace_maker.hpp"

#include <cmath>
#include <vector>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using namespace std::chrono_literals;
const Tuning kTuning;
const MeterAt kMeter{0.001, 0.001, true, 0};
constexpr double kInterval_s = 0.1;

Time at(int count) { return fromSeconds(kInterval_s * count); }

// Its first reading, then as many of the same as it takes.
LevelEstimate steady(int readings, double volts_V = 4.5, const MeterAt& meter = kMeter) {
    LevelEstimate level(kTuning, meter, 3, at(0), volts_V);
    for (int i = 1; i < readings; ++i) level.add(kTuning, at(i), volts_V, false);
    return level;
}

TEST(LevelEstimate, BeginsWithItsFirstReading) {
    const LevelEstimate level(kTuning, kMeter, 3, 7s, 4.5);
    EXPECT_EQ(level.id(), 3);
    EXPECT_EQ(level.began(), 7s);
    EXPECT_EQ(level.level_V(), 4.5);
    EXPECT_EQ(level.count(), 1);
    EXPECT_EQ(level.noise_V(), 0.001);
    EXPECT_EQ(level.due(), 7s + 2500ms); // held.refresh_s
    EXPECT_FALSE(level.known(kTuning));
    EXPECT_EQ(LevelEstimate(kTuning, kMeter, 3, 7s, 4.5, 0.025).noise_V(), 0.025);
    EXPECT_EQ(LevelEstimate(kTuning, kMeter, 3, 7s, 4.5, 0.0002).noise_V(), 0.001);
    EXPECT_EQ(LevelEstimate().id(), -1);
}

TEST(LevelEstimate, IsTheMeanOfUpToEightReadings) {
    const std::vector<double> volts_V{4.500, 4.502, 4.499, 4.501, 4.500, 4.503, 4.498, 4.501};
    LevelEstimate level(kTuning, kMeter, 1, at(0), volts_V[0]);
    double sum_V = volts_V[0];
    for (std::size_t i = 1; i < volts_V.size(); ++i) {
        level.add(kTuning, at(static_cast<int>(i)), volts_V[i], false);
        sum_V += volts_V[i];
        EXPECT_NEAR(level.level_V(), sum_V / static_cast<double>(i + 1), 1e-12);
        EXPECT_TRUE(level.justLooked());
    }
    level.add(kTuning, at(8), 4.503, false); // the ninth waits for the next look
    EXPECT_NEAR(level.level_V(), sum_V / 8, 1e-12);
    EXPECT_FALSE(level.justLooked());
}

// Readings thrown to one side move the level a little; the scatter of the others is about their own mean.
TEST(LevelEstimate, WildReadingsToOneSideDoNotHideTheNoise) {
    LevelEstimate level = steady(8, 4.5);
    for (int i = 8; i < 400; ++i) {
        const double volts_V = i % 6 == 0 ? 4.515 : i % 2 == 0 ? 4.502 : 4.498; // the others: sd 2 mV
        level.add(kTuning, at(i), volts_V, false);
    }
    EXPECT_NEAR(level.noise_V(), 0.002, 0.0003);
}

// Before it is known, its mean is uncertain by noise / sqrt(n), and a reading about it lies within
// noise * sqrt(1 + 1/n).
TEST(LevelEstimate, ReachIsTheLargestOfThree) {
    const auto reach_V = [](double resolution_V, double noise_V) {
        return LevelEstimate(kTuning, {resolution_V, noise_V, true, 0}, 1, 0s, 4.5).reach_V();
    };
    EXPECT_NEAR(reach_V(0.001, 0.001), 0.0194, 1e-12);
    EXPECT_NEAR(reach_V(0.001, 0.01), 0.06 * std::sqrt(2), 1e-12); // 6 noises
    EXPECT_NEAR(reach_V(0.01, 0.001), 0.03, 1e-12);                // 3 counts
    LevelEstimate level(kTuning, {0.001, 0.01, true, 0}, 1, at(0), 4.5);
    for (int i = 2; i <= 15; ++i) level.add(kTuning, at(i), 4.5, false);
    EXPECT_NEAR(level.reach_V(), 6 * std::sqrt(1 + 1.0 / 8) * level.noise_V(), 1e-9); // as of its last look
    level.add(kTuning, at(16), 4.5, false);
    while (!level.justLooked()) level.add(kTuning, at(17), 4.5, false);
    EXPECT_TRUE(level.known(kTuning));
    EXPECT_NEAR(level.reach_V(), std::max(0.0194, 6 * level.noise_V()), 1e-12);
}

TEST(LevelEstimate, ThresholdIsTheLargestOfThree) {
    const auto threshold_V = [](double resolution_V, double noise_V) {
        return LevelEstimate(kTuning, {resolution_V, noise_V, true, 0}, 1, 0s, 4.5).threshold_V(kTuning);
    };
    EXPECT_NEAR(threshold_V(0.001, 0.001), 0.02, 1e-12);
    EXPECT_NEAR(threshold_V(0.001, 0.01), 0.06, 1e-12); // 6 noises
    EXPECT_NEAR(threshold_V(0.01, 0.001), 0.03, 1e-12); // 3 counts
}

TEST(LevelEstimate, QuietReachIsThreeNoisesOrOneAndAHalfCounts) {
    const auto quietReach_V = [](double resolution_V, double noise_V) {
        return LevelEstimate(kTuning, {resolution_V, noise_V, true, 0}, 1, 0s, 4.5).quietReach_V();
    };
    EXPECT_NEAR(quietReach_V(0.001, 0.001), 0.0194 / 6, 1e-12);
    EXPECT_NEAR(quietReach_V(0.001, 0.01), 0.03, 1e-12);
    EXPECT_NEAR(quietReach_V(0.01, 0.001), 0.015, 1e-12);
}

// The expected noise is worth eight readings: the second one moves the variance by a ninth. Scatter of n readings
// about their mean, as it grows (Welford): the square of the offset from the mean before, times (n - 1) / n.
TEST(LevelEstimate, NoiseIsLearntFromItsReadings) {
    LevelEstimate level(kTuning, kMeter, 1, at(0), 4.5);
    level.add(kTuning, at(1), 4.503, false);
    const double second_V2 = 1e-6 + (9e-6 / 2 - 1e-6) / 9;
    EXPECT_NEAR(level.noise_V(), std::sqrt(second_V2), 1e-12);
    level.add(kTuning, at(2), 4.5035, false); // 2 mV off the mean
    const double third_V2 = second_V2 + (4e-6 * 2 / 3 - second_V2) / 10;
    EXPECT_NEAR(level.noise_V(), std::sqrt(third_V2), 1e-12);
    // What is expected of a hand is worth three.
    LevelEstimate hand(kTuning, kMeter, 1, at(0), 4.5, 0.02);
    hand.add(kTuning, at(1), 4.51, false);
    EXPECT_NEAR(hand.noise_V(), std::sqrt(4e-4 + (1e-4 / 2 - 4e-4) / 4), 1e-12);
}

TEST(LevelEstimate, NoiseComesToThatOfTheReadings) {
    Dice dice(5);
    for (const double noise_V : {0.002, 0.005, 0.02}) {
        LevelEstimate level(kTuning, {0.001, 0.01, true, 0}, 1, at(0), 4.5);
        double squares_V2 = 0;
        for (int i = 1; i < 4000; ++i) {
            level.add(kTuning, at(i), 4.5 + noise_V * dice.normal(), false);
            if (i >= 2000) squares_V2 += level.noise_V() * level.noise_V();
        }
        EXPECT_NEAR(std::sqrt(squares_V2 / 2000), noise_V, 0.05 * noise_V);
    }
}

// Rounding alone spreads readings over a count: 1 / sqrt(12) of it (GUM 4.3.7).
TEST(LevelEstimate, IsNoQuieterThanRounding) {
    EXPECT_NEAR(steady(400).noise_V(), 0.001 / std::sqrt(12), 1e-12);
    EXPECT_NEAR(steady(400, 4.5, {0.01, 0.01, true, 0}).noise_V(), 0.01 / std::sqrt(12), 1e-12);
}

TEST(LevelEstimate, IsNoNoisierThanAHandOrThreeTimesTheMeter) {
    const auto noisiest_V = [](double expected_V) {
        LevelEstimate level(kTuning, {0.001, expected_V, true, 0}, 1, at(0), 4.5, 0.2);
        level.add(kTuning, at(1), 4.5, false);
        return level.noise_V();
    };
    EXPECT_NEAR(noisiest_V(0.001), 0.04, 1e-12);
    EXPECT_NEAR(noisiest_V(0.02), 0.06, 1e-12);
}

TEST(LevelEstimate, AWildReadingIsNoNoise) {
    LevelEstimate level(kTuning, kMeter, 1, at(0), 4.5);
    level.add(kTuning, at(1), 4.515, false);
    EXPECT_NEAR(level.noise_V(), 0.001, 1e-12);                // nothing it says of it
    EXPECT_NEAR(level.level_V(), 4.5 + 0.0194 / 6 / 2, 1e-12); // the mean of two, moved by no more than a quiet reach
    LevelEstimate down(kTuning, kMeter, 1, at(0), 4.5);
    down.add(kTuning, at(1), 4.485, false);
    EXPECT_NEAR(down.level_V(), 4.5 - 0.0194 / 6 / 2, 1e-12);
}

// held.known, held.refresh = 16, held.refresh_s = 2.5 s.
TEST(LevelEstimate, LooksAnewEverySixteenReadingsOrTwoAndAHalfSeconds) {
    const LevelEstimate eight = steady(8);
    LevelEstimate level = eight;
    for (int i = 8; i < 23; ++i) {
        level.add(kTuning, at(i), 4.5, false);
        EXPECT_FALSE(level.justLooked()) << i;
    }
    EXPECT_EQ(level.count(), 23);
    level.add(kTuning, at(23), 4.5, false);
    EXPECT_TRUE(level.justLooked());
    EXPECT_EQ(level.due(), at(23) + 2500ms);
    LevelEstimate slow = eight;
    EXPECT_EQ(slow.due(), at(7) + 2500ms);
    slow.add(kTuning, at(7) + 2499ms, 4.5, false);
    EXPECT_FALSE(slow.justLooked());
    slow.add(kTuning, at(7) + 2500ms, 4.5, false);
    EXPECT_TRUE(slow.justLooked());
}

TEST(LevelEstimate, IsKnownFromSixteenReadings) {
    EXPECT_FALSE(steady(15).known(kTuning));
    EXPECT_TRUE(steady(16).known(kTuning));
    EXPECT_EQ(steady(16).untilRefresh(kTuning), 8); // eight wait since the eighth
    EXPECT_EQ(steady(24).untilRefresh(kTuning), 16);
}

// An exponential of 2.5 s (held.follows_s).
TEST(LevelEstimate, FollowsItsReadings) {
    LevelEstimate level = steady(24);
    for (int i = 24; i < 40; ++i) level.add(kTuning, at(i), 4.502, false);
    ASSERT_TRUE(level.justLooked());
    EXPECT_NEAR(level.level_V(), 4.5 + 0.002 * (1 - std::exp(-1.6 / 2.5)), 1e-12);
    LevelEstimate stirred = steady(24);
    for (int i = 24; i < 40; ++i) stirred.add(kTuning, at(i), 4.502, true);
    EXPECT_NEAR(stirred.level_V(), 4.5 + 0.05 * 0.002 * (1 - std::exp(-1.6 / 2.5)), 1e-12); // held.stirredFollows
    // A young one follows all the same.
    LevelEstimate young(kTuning, kMeter, 1, at(0), 4.5);
    young.add(kTuning, at(1), 4.502, true);
    EXPECT_NEAR(young.level_V(), 4.501, 1e-12);
    EXPECT_NE(young.noise_V(), 0.001);
}

// Scatter about the mean of a look's readings, n - 1 of them free; 48 readings are remembered (held.remembers).
TEST(LevelEstimate, AShiftIsNoNoise) {
    const MeterAt meter{0.0001, 0.001, true, 0};
    LevelEstimate level = steady(120, 4.5, meter);
    ASSERT_TRUE(level.justLooked());
    const double before_V = level.noise_V();
    LevelEstimate shaken = level;
    for (int i = 120; i < 136; ++i) level.add(kTuning, at(i), 4.501 + (i % 2 == 0 ? 0.0005 : -0.0005), false);
    ASSERT_TRUE(level.justLooked());
    const double inner_V2 = 16 * 0.0005 * 0.0005 * 16 / 15;
    EXPECT_NEAR(level.noise_V(), std::sqrt(before_V * before_V + (inner_V2 - 16 * before_V * before_V) / 48), 1e-9);
    // Nor is what comes while somebody shakes it.
    for (int i = 120; i < 136; ++i) shaken.add(kTuning, at(i), 4.501 + (i % 2 == 0 ? 0.0005 : -0.0005), true);
    EXPECT_EQ(shaken.noise_V(), before_V);
}

// Warm-up of 0.08 V over minutes is followed within 0.004 V (tuning).
TEST(LevelEstimate, FollowsTheWarmUp) {
    LevelEstimate level(kTuning, kMeter, 1, at(0), 4.5);
    double most_V = 0;
    for (int i = 1; i < 1800; ++i) {
        const double true_V = 4.5 + 0.08 * i / 1800;
        level.add(kTuning, at(i), true_V, false);
        most_V = std::max(most_V, std::abs(level.level_V() - true_V));
    }
    EXPECT_LT(most_V, 0.004);
}

TEST(LevelEstimate, QuietReadingsCountAsOneByOne) {
    Dice dice(8);
    LevelEstimate one = steady(24);
    LevelEstimate together = one;
    std::vector<Reading> readings;
    for (int i = 24; i < 40; ++i) readings.push_back({at(i), 4.5 + 0.001 * dice.uniform(), {}});
    for (const Reading& r : readings) one.add(kTuning, r.time, r.volts_V, false);
    together.addQuiet(kTuning, readings.data(), 15, false);
    EXPECT_EQ(together.count(), 39);
    EXPECT_EQ(together.untilRefresh(kTuning), 1);
    EXPECT_FALSE(together.justLooked());
    together.addQuiet(kTuning, readings.data() + 15, 1, false);
    EXPECT_TRUE(together.justLooked());
    EXPECT_EQ(one.level_V(), together.level_V());
    EXPECT_EQ(one.noise_V(), together.noise_V());
    EXPECT_EQ(one.reach_V(), together.reach_V());
}

TEST(LevelEstimate, QuietReadingsThatComeSlowlyAreLookedAtWhenDue) {
    LevelEstimate level = steady(24);
    const Reading early{level.due() - Time(1), 4.5, {}}, late{level.due(), 4.5, {}};
    level.addQuiet(kTuning, &early, 1, false);
    EXPECT_FALSE(level.justLooked());
    level.addQuiet(kTuning, &late, 1, false);
    EXPECT_TRUE(level.justLooked());
}

TEST(LevelEstimate, MayTurnOutToTremble) {
    LevelEstimate level = steady(24);
    const double before_V = level.level_V();
    level.trembles(kTuning, 0.01);
    EXPECT_EQ(level.noise_V(), 0.01);
    EXPECT_EQ(level.level_V(), before_V);
    EXPECT_EQ(level.id(), 3);
    EXPECT_NEAR(level.reach_V(), 0.06, 1e-12);
    level.trembles(kTuning, 0.002);
    EXPECT_EQ(level.noise_V(), 0.01);
    // That is worth eight readings: sixteen quiet ones leave a third of the variance.
    for (int i = 24; i < 40; ++i) level.add(kTuning, at(i), 4.5, false);
    EXPECT_NEAR(level.noise_V(), 0.01 * std::sqrt(1.0 / 3), 1e-9);
}

// Minus the logarithm of a normal density: z^2 / 2, with at least half a count or a sixth of reach.least_V for the
// scatter.
TEST(LevelEstimate, AReadingCostsByItsDistance) {
    const double scatter_V = 0.0194 / 6;
    const LevelEstimate level = steady(24);
    EXPECT_EQ(leastScatter_V(kTuning, kMeter), scatter_V);
    EXPECT_EQ(leastScatter_V(kTuning, {0.01, 0.001, true, 0}), 0.005);
    const double noisy = level.costOf(kTuning, 4.5, 99, false);
    EXPECT_EQ(noisy, 0); // it is no noisier than the meter
    EXPECT_NEAR(level.costOf(kTuning, 4.5 + scatter_V, 99, false), 0.5, 1e-9);
    EXPECT_NEAR(level.costOf(kTuning, 4.5 - 2 * scatter_V, 99, false), 2, 1e-9);
    EXPECT_EQ(level.costOf(kTuning, 4.6, 99, false), 4.5); // held.surprise
    EXPECT_EQ(level.costOf(kTuning, 4.6, 1.6, false), 1.6);
    // A young one's mean is uncertain; and a reading within reach tells less of it.
    const LevelEstimate young = steady(1);
    EXPECT_NEAR(young.costOf(kTuning, 4.5 + scatter_V, 99, false), 0.25, 1e-9);
    EXPECT_EQ(young.costOf(kTuning, 4.6, 99, false), 3);                                       // held.young
    EXPECT_EQ(steady(1, 4.5, {0.001, 0.001, false, 0}).costOf(kTuning, 4.6, 99, false), 1.6);  // foreseen
    EXPECT_EQ(steady(24, 4.5, {0.001, 0.001, false, 0}).costOf(kTuning, 4.6, 99, false), 4.5); // it is known
}

// held.noisy = 0.45 of ln(its noise / the expected), a hand's 25 mV (hand.held_V) where somebody holds it.
TEST(LevelEstimate, ANoisyLevelCostsMore) {
    LevelEstimate level = steady(24);
    level.trembles(kTuning, 0.035);
    EXPECT_NEAR(level.costOf(kTuning, 4.5, 99, false), 0.45 * std::log(0.035 / (0.0194 / 6)), 1e-9);
    EXPECT_NEAR(level.costOf(kTuning, 4.5, 99, true), 0.45 * std::log(0.035 / 0.025), 1e-9);
    EXPECT_NEAR(level.costOf(kTuning, 4.5 + 0.035, 99, false) - level.costOf(kTuning, 4.5, 99, false), 0.5, 1e-9);
    LevelEstimate rough = steady(24, 4.5, {0.001, 0.03, true, 0});
    EXPECT_EQ(rough.costOf(kTuning, 4.5, 99, true), 0); // no noisier than that meter
    rough.trembles(kTuning, 0.06);
    EXPECT_NEAR(rough.costOf(kTuning, 4.5, 99, false), 0.45 * std::log(2), 1e-9);
    EXPECT_NEAR(rough.costOf(kTuning, 4.5, 99, true), 0.45 * std::log(2), 1e-9);
}

} // namespace
} // namespace stillwire::test
