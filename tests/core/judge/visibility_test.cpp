// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/visibility.hpp"
#include "tests/support/trace_maker.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

// The closed form against counting: a dropout dropped at random into a row of apertures, 3 standard errors.
TEST(ChanceToShow, AgreesWithCounting) {
    test::Dice dice(3);
    for (const auto& [T, A, h, D, t] :
         {std::array{0.33, 0.10, 0.02, 0.5, 0.05}, std::array{0.33, 0.10, 0.1, 0.5, 0.2},
          std::array{0.5, 0.4, 0.02, 4.0, 0.01}, std::array{0.2, 0.2, 0.15, 0.5, 0.15},
          std::array{0.4, 0.1, 0.3, 0.5, 0.05}}) {
        constexpr int n = 40000;
        int shown = 0;
        for (int i = 0; i < n; ++i) {
            const double start = 10 * T + T * dice.uniform();
            double most = 0;
            for (int k = 5; k < 20; ++k)
                most = std::max(most, D * (std::min(k * T, start + t) - std::max(k * T - A, start)) / A);
            if (most >= h) ++shown;
        }
        const double p = chanceToShow({T, A, h}, D, t);
        const double error = 3 * std::sqrt(std::max(p * (1 - p), 1e-6) / n);
        EXPECT_NEAR(static_cast<double>(shown) / n, p, error + 1e-9) << T << " " << A << " " << t;
    }
}

TEST(ShortestVisible, CannotHideAndAHairLessCan) {
    const Sight sight{0.33, 0.10, 0.02};
    const double shortest_s = *shortestVisible_s(sight, 0.5);
    EXPECT_NEAR(chanceToShow(sight, 0.5, shortest_s), 1.0, 1e-12);
    EXPECT_LT(chanceToShow(sight, 0.5, shortest_s - 0.001), 1.0);
    EXPECT_NEAR(shortest_s, 0.33 - 0.10 + 2 * 0.10 * 0.02 / 0.5, 1e-12);
}

// One that lies half in this reading and half in the next is listed as play if neither shows more than that.
TEST(ShortestVisible, InAPoseMoreThanPlayHasToShow) {
    EXPECT_DOUBLE_EQ(poseThreshold_V(0.02, 0.05, 0.001), 0.051);
    EXPECT_DOUBLE_EQ(poseThreshold_V(0.08, 0.05, 0.001), 0.08);
}

TEST(ShortestVisible, NothingBelowTheThreshold) {
    EXPECT_FALSE(shortestVisible_s({0.33, 0.10, 0.6}, 0.5));
    EXPECT_EQ(chanceToShow({0.33, 0.10, 0.6}, 0.5, 10), 0.0);
}

TEST(ShortestVisible, AnUnknownApertureIsTheWorseOfTwo) {
    const double unknown_s = *shortestVisible_s({0.33, std::nullopt, 0.1}, 0.5);
    EXPECT_DOUBLE_EQ(
        unknown_s, std::max(*shortestVisible_s({0.33, 0.033, 0.1}, 0.5), *shortestVisible_s({0.33, 0.33, 0.1}, 0.5)));
}

} // namespace
} // namespace stillwire
