// SPDX-License-Identifier: GPL-3.0-or-later
// Moving median and MAD held against GSL 2.7 (gsl_movstat) on the same readings.
#include "core/analyse/held_level.hpp"
#include "core/stats/robust.hpp"
#include "tests/support/trace_maker.hpp"

#include <cmath>

#include <gsl/gsl_movstat.h>
#include <gsl/gsl_vector.h>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

TEST(HeldLevel, AgreesWithGslOverItsWindow) {
    test::Dice dice(5);
    constexpr std::size_t n = 400;
    constexpr std::size_t window = HeldLevel::kWindow;
    gsl_vector* x = gsl_vector_alloc(n);
    gsl_vector* median = gsl_vector_alloc(n);
    gsl_vector* mad = gsl_vector_alloc(n);
    for (std::size_t i = 0; i < n; ++i) gsl_vector_set(x, i, std::round(4300 + 5 * dice.normal()) / 1000);
    gsl_movstat_workspace* work = gsl_movstat_alloc(window);
    gsl_movstat_mad(GSL_MOVSTAT_END_TRUNCATE, x, median, mad, work);

    HeldLevel level(1e-6);
    int compared = 0;
    for (std::size_t i = 0; i < n; ++i) {
        level.add(gsl_vector_get(x, i));
        // GSL's window is centred; ours ends at i, and is renewed now and again.
        if (i < window || (i + 1 - HeldLevel::kFewReadings + 1) % HeldLevel::kRefreshEvery != 0) continue;
        const std::size_t centre = i - window / 2;
        EXPECT_NEAR(level.level_V(), gsl_vector_get(median, centre), 1e-12) << i;
        EXPECT_NEAR(level.noise_V(), gsl_vector_get(mad, centre), 1e-9) << i;
        ++compared;
    }
    EXPECT_GE(compared, 20);
    gsl_movstat_free(work);
    gsl_vector_free(mad);
    gsl_vector_free(median);
    gsl_vector_free(x);
}

// Quantised readings collapse the plain MAD (the warning of GSL's manual on its impulse detection filter): the floor
// holds.
TEST(HeldLevel, EqualReadingsLeaveTheFloor) {
    HeldLevel level(0.001);
    for (int i = 0; i < 40; ++i) level.add(i == 20 ? 1.001 : 1.000);
    EXPECT_DOUBLE_EQ(level.level_V(), 1.0);
    EXPECT_NEAR(level.noise_V(), 0.001 / std::sqrt(12.0), 1e-12);
    EXPECT_NEAR(level.threshold_V(), 0.02, 1e-6);
}

TEST(HeldLevel, ThresholdFollowsACoarseMeterAndNoise) {
    HeldLevel coarse(0.010);
    for (int i = 0; i < 40; ++i) coarse.add(4.30);
    EXPECT_NEAR(coarse.threshold_V(), 0.030, 1e-6);
    HeldLevel noisy(0.001);
    test::Dice dice(9);
    for (int i = 0; i < 400; ++i) noisy.add(4.3 + 0.008 * dice.normal());
    EXPECT_NEAR(noisy.threshold_V(), 6 * noisy.noise_V(), 1e-6);
    EXPECT_NEAR(noisy.noise_V(), 0.008, 0.004);
}

// Published example B of a Hampel filter, recomputed with GSL 2.7.1: one dropout does not move level or noise.
TEST(HeldLevel, OneDropoutMovesNothing) {
    HeldLevel level(0.001);
    for (const double v : {0.512, 0.514, 0.511, 0.513, 0.000, 0.512, 0.515, 0.513, 0.511, 0.514, 0.512}) level.add(v);
    EXPECT_DOUBLE_EQ(level.level_V(), 0.512);
    EXPECT_LT(level.noise_V(), 0.003);
}

} // namespace
} // namespace stillwire
