// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/ratiometric.hpp"
#include "tests/support/trace_maker.hpp"

#include <cmath>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

MeterTraits meter(double percent, double counts, double resolution_V) {
    MeterTraits m;
    m.interval_s = 0.33;
    m.ranges.push_back({6.0, resolution_V, percent, counts});
    return m;
}

// ±(0.5 % + 2 counts), 1 mV: half-width to standard uncertainty as rectangular (JCGM 100:2008, 4.3.7); values
// recomputed in R.
TEST(AccuracyStatement, AgreesWithGumTypeB) {
    EXPECT_NEAR(absoluteUncertainty_V(meter(0.5, 2, 0.001), {0.512, 0, 1}), 0.002648496429, 1e-9);
    EXPECT_NEAR(absoluteUncertainty_V(meter(0.5, 2, 0.001), {4.532, 0, 1}), 0.014240383890, 1e-9);
    EXPECT_NEAR(absoluteUncertainty_V(meter(0.1, 1, 0.0001), {2.5, 0, 1}), 0.001501388246, 1e-9);
}

// JCGM 100:2008, 5.1.5: 15 µV rectangular and 12 µV of repeatability combine to 14.8 µV (published 15).
TEST(AccuracyStatement, AgreesWithTheVoltmeterExample) {
    const double a_V = 14e-6 * 0.928571 + 2e-6;
    EXPECT_NEAR(a_V / std::sqrt(3.0), 8.66025e-6, 1e-10);
    EXPECT_NEAR(std::hypot(a_V / std::sqrt(3.0), 12e-6), 14.7986e-6, 1e-10);
}

Supply measured(double R, double G) {
    Supply supply;
    supply.reference = {R, 0.0005, 20};
    supply.ground = {G, 0.0005, 20};
    supply.referenceMeasured = supply.groundMeasured = true;
    return supply;
}

TEST(RatiometricLevel, FollowsTheFormula) {
    const Sheet sheet = test::risingSheet();
    const Level level = ratiometricLevel(sheet, meter(0.5, 2, 0.001), measured(4.9, 0.03), {2.5, 0.0005, 20});
    EXPECT_NEAR(level.level_V, (2.5 - 0.03) * 5 / (4.9 - 0.03), 1e-12);
}

// Advice of metrology (no source): the gain error of one range is common to numerator and denominator and cancels.
TEST(RatiometricLevel, GainErrorOfOneRangeDropsOut) {
    const Sheet sheet = test::risingSheet();
    const Supply supply = measured(5.0, 0.02);
    const double without = ratiometricLevel(sheet, meter(0, 2, 0.001), supply, {4.2, 0, 20}).u_V;
    const double with = ratiometricLevel(sheet, meter(2, 2, 0.001), supply, {4.2, 0, 20}).u_V;
    EXPECT_NEAR(with, without, 1e-12);
    // Propagated by hand: counts and resolution of raw, R and G.
    const double u = std::sqrt(std::pow(0.002, 2) / 3 + 1e-6 / 12);
    const double x = (4.2 - 0.02) / 4.98;
    const double scatter = 1.2533141373155003 * 0.0005 / std::sqrt(20.0);
    const double wire2 = u * u + scatter * scatter;
    EXPECT_NEAR(without, 5 / 4.98 * std::sqrt(u * u + x * x * wire2 + (1 - x) * (1 - x) * wire2), 1e-12);
}

TEST(RatiometricLevel, GainErrorCountsBetweenRangesAndWithoutAReference) {
    const Sheet sheet = test::risingSheet();
    MeterTraits two = meter(1, 2, 0.001);
    two.ranges.insert(two.ranges.begin(), {0.6, 0.0001, 1, 2});
    const double across = ratiometricLevel(sheet, two, measured(5.0, 0.3), {2.5, 0, 20}).u_V;
    two.ranges[0].accuracyPercent = 0;
    EXPECT_GT(across, ratiometricLevel(sheet, two, measured(5.0, 0.3), {2.5, 0, 20}).u_V);

    const Supply assumed = assumedSupply(sheet, false);
    const double percent = ratiometricLevel(sheet, meter(1, 0, 0.001), assumed, {4.2, 0, 20}).u_V;
    const double none = ratiometricLevel(sheet, meter(0, 0, 0.001), assumed, {4.2, 0, 20}).u_V;
    EXPECT_GT(percent, none);
}

// Two meters, two gain errors: drawn apart (JCGM 101:2008), the spread of the level is u.
TEST(RatiometricLevel, OfTwoMetersAgreesWithMonteCarlo) {
    const Sheet sheet = test::risingSheet();
    const MeterTraits m = meter(0.8, 4, 0.001), second = meter(0.5, 2, 0.001);
    Supply supply = measured(5.0, 0.05);
    supply.referenceMeter = &second;
    const Settled raw{1.2, 0, 20};
    test::Dice dice(23);
    double sum = 0, sum2 = 0;
    constexpr int n = 200000;
    const double scatter = 1.2533141373155003 * 0.0005 / std::sqrt(20.0);
    for (int i = 0; i < n; ++i) {
        const double gain = 1 + 0.008 * dice.between(-1, 1), other = 1 + 0.005 * dice.between(-1, 1);
        const auto shown = [&](double v, double g, double a, double s) {
            return v * g + dice.between(-a, a) + dice.between(-0.0005, 0.0005) + s * dice.normal();
        };
        const double R = shown(5.0, other, 0.002, scatter), G = shown(0.05, gain, 0.004, scatter);
        const double level = (shown(1.2, gain, 0.004, 0) - G) * 5 / (R - G);
        sum += level;
        sum2 += level * level;
    }
    const double spread = std::sqrt(sum2 / n - (sum / n) * (sum / n));
    // The counts and percent of an absolute statement are added before they are squared: up to a fifth more.
    const double u_V = ratiometricLevel(sheet, m, supply, raw).u_V;
    EXPECT_GE(u_V, 0.99 * spread);
    EXPECT_LE(u_V, 1.2 * spread);
    supply.referenceMeter = nullptr;
    EXPECT_LT(ratiometricLevel(sheet, m, supply, raw).u_V, u_V);
}

// Monte Carlo after JCGM 101:2008: draw every input within its stated limits; the spread of the level is u.
TEST(RatiometricLevel, AgreesWithMonteCarlo) {
    const Sheet sheet = test::risingSheet();
    const MeterTraits m = meter(0.8, 4, 0.001);
    const Supply supply = measured(5.0, 0.05);
    const Settled raw{1.2, 0, 20};
    test::Dice dice(17);
    double sum = 0, sum2 = 0;
    constexpr int n = 200000;
    const double a = 4 * 0.001;
    for (int i = 0; i < n; ++i) {
        const double gain = 1 + 0.008 * dice.between(-1, 1);
        const auto shown = [&](double v, double scatter) {
            return v * gain + dice.between(-a, a) + dice.between(-0.0005, 0.0005) + scatter * dice.normal();
        };
        const double scatter = 1.2533141373155003 * 0.0005 / std::sqrt(20.0);
        const double R = shown(5.0, scatter), G = shown(0.05, scatter), r = shown(1.2, 0);
        const double level = (r - G) * 5 / (R - G);
        sum += level;
        sum2 += level * level;
    }
    const double sd = std::sqrt(sum2 / n - sum / n * (sum / n));
    EXPECT_NEAR(ratiometricLevel(sheet, m, supply, raw).u_V / sd, 1.0, 0.01);
}

TEST(AssumedSupply, IsNominalAndHalfOfTheDrop) {
    const Supply supply = assumedSupply(test::risingSheet(), false);
    EXPECT_DOUBLE_EQ(supply.reference.level_V, 5.0);
    EXPECT_DOUBLE_EQ(supply.ground.level_V, 0.05);
    EXPECT_DOUBLE_EQ(assumedSupply(test::risingSheet(), true).ground.level_V, 0.0);
}

} // namespace
} // namespace stillwire
