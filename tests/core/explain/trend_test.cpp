// SPDX-License-Identifier: GPL-3.0-or-later
// The line of a movement, against least squares as another library reckons it, and against closed formulas.
#include "core/explain/trend.hpp"
#include "tests/support/trace_maker.hpp"

#include <cmath>
#include <vector>

#include <gsl/gsl_fit.h>
#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

constexpr double kInterval_s = 0.5;
const Tuning kTuning;
const MeterAt kMeter{0.001, 0.001, true, 0};

Time at(double count) { return fromSeconds(kInterval_s * count); }

Trend lineOf(const std::vector<double>& volts_V, const MeterAt& meter = kMeter) {
    Trend trend(at(0), volts_V[0]);
    for (std::size_t i = 1; i < volts_V.size(); ++i)
        trend.add(kTuning, meter, at(static_cast<double>(i)), volts_V[i]);
    return trend;
}

// Variance of a reading that least squares predicts, k intervals from the middle of n: 1 + 1/n + 12 k^2 / (n (n^2 -
// 1)) (any book on regression).
double predicted(double n, double k) { return 1 + 1 / n + 12 * k * k / (n * (n * n - 1)); }

TEST(Trend, OfOneReadingStaysThere) {
    const Trend trend(at(2), 1.5);
    EXPECT_EQ(trend.readings(), 1);
    EXPECT_EQ(trend.newest_V(), 1.5);
    EXPECT_EQ(trend.at(at(2)), 1.5);
    EXPECT_EQ(trend.at(at(9)), 1.5);
    EXPECT_FALSE(trend.paused());
}

// gsl_fit_linear() of the same readings, as long as all are remembered (line.memory = 12).
TEST(Trend, IsTheLeastSquaresLineWhileItsMemoryGrows) {
    Dice dice(3);
    std::vector<double> x, y;
    Trend trend;
    for (int i = 0; i < 12; ++i) {
        x.push_back(kInterval_s * i);
        y.push_back(1 + 0.2 * i + 0.004 * dice.normal());
        if (i == 0) {
            trend = Trend(at(0), y[0]);
            continue;
        }
        trend.add(kTuning, kMeter, at(i), y.back());
        ASSERT_EQ(trend.readings(), i + 1);
        double c0 = 0, c1 = 0, cov00 = 0, cov01 = 0, cov11 = 0, squares = 0;
        gsl_fit_linear(x.data(), 1, y.data(), 1, x.size(), &c0, &c1, &cov00, &cov01, &cov11, &squares);
        EXPECT_NEAR(trend.slope_V_per_s(), c1, 1e-9) << i;
        EXPECT_NEAR(trend.at(at(i)), c0 + c1 * kInterval_s * i, 1e-9) << i;
        EXPECT_NEAR(trend.at(at(i + 3)), c0 + c1 * kInterval_s * (i + 3), 1e-9) << i;
        EXPECT_NEAR(trend.interval_s(), kInterval_s, 1e-12);
    }
}

// The gain of least squares at the newest of n: 2 (2n - 1) / (n (n + 1)), of its slope 6 / (n (n + 1)).
TEST(Trend, RemembersTwelveReadings) {
    std::vector<double> volts_V;
    for (int i = 0; i < 30; ++i) volts_V.push_back(0.5 + 0.1 * i);
    Trend trend = lineOf(volts_V);
    EXPECT_EQ(trend.readings(), 12);
    const double due_V = trend.at(at(30)), slope_V_per_s = trend.slope_V_per_s();
    EXPECT_NEAR(due_V, 3.5, 1e-9);
    trend.add(kTuning, kMeter, at(30), due_V + 0.006);
    EXPECT_EQ(trend.readings(), 12);
    EXPECT_NEAR(trend.at(at(30)), due_V + 0.006 * 46 / 156, 1e-9);
    EXPECT_NEAR(trend.slope_V_per_s(), slope_V_per_s + 0.006 * 6 / 156 / kInterval_s, 1e-9);
}

TEST(Trend, OfTwoReadingsIsUnevenByATenthOfTheStepBetweenThem) {
    const Trend trend = lineOf({1.0, 1.2}); // line.uneven = 0.1
    EXPECT_NEAR(trend.spread_V(at(2)), 0.02 * std::sqrt(predicted(2, 1.5)), 1e-12);
    EXPECT_NEAR(trend.spread_V(at(4)), 0.02 * std::sqrt(predicted(2, 3.5)), 1e-12);
    EXPECT_NEAR(lineOf({1.2, 1.0}).spread_V(at(2)), 0.02 * std::sqrt(predicted(2, 1.5)), 1e-12);
    // Or by what the meter or the hand makes of it, if that is more.
    EXPECT_NEAR(lineOf({1.0, 1.2}, {0.001, 0.03, true, 0}).spread_V(at(2)), 0.03 * std::sqrt(6.0), 1e-12);
    EXPECT_NEAR(lineOf({1.0, 1.2}, {0.001, 0.001, true, 0.04}).spread_V(at(2)), 0.04 * std::sqrt(6.0), 1e-12);
}

// gsl_fit_linear_est() gives the error of the line; that of a reading about it has the reading's own on top. Known
// weights of 1 make the covariances those of a variance of 1.
TEST(Trend, SpreadGrowsAheadAsThatOfLeastSquares) {
    for (int n = 2; n <= 12; ++n) {
        std::vector<double> volts_V, x, weights(static_cast<std::size_t>(n), 1.0);
        for (int i = 0; i < n; ++i) {
            volts_V.push_back(1 + 0.2 * i);
            x.push_back(kInterval_s * i);
        }
        double c0 = 0, c1 = 0, cov00 = 0, cov01 = 0, cov11 = 0, squares = 0, y = 0, error1 = 0, error4 = 0;
        gsl_fit_wlinear(x.data(), 1, weights.data(), 1, volts_V.data(), 1, x.size(), &c0, &c1, &cov00, &cov01, &cov11,
                        &squares);
        gsl_fit_linear_est(kInterval_s * n, c0, c1, cov00, cov01, cov11, &y, &error1);
        gsl_fit_linear_est(kInterval_s * (n + 3), c0, c1, cov00, cov01, cov11, &y, &error4);
        const Trend trend = lineOf(volts_V);
        EXPECT_NEAR(trend.spread_V(at(n + 3)) / trend.spread_V(at(n)),
                    std::sqrt((1 + error4 * error4) / (1 + error1 * error1)), 1e-9)
            << n;
    }
}

// Weight 2 to begin with (line.prior), one more with each reading: the variance moves by a third of what is new.
TEST(Trend, UnevennessIsLearntFromTheReadings) {
    const Trend even = lineOf({1.0, 1.2, 1.4});
    EXPECT_NEAR(even.spread_V(at(3)), 0.02 * std::sqrt(2.0 / 3 * predicted(3, 2)), 1e-9);
    const double off_V = 0.06;
    const Trend uneven = lineOf({1.0, 1.2, 1.4 + off_V});
    const double seen = off_V * off_V / (0.02 * 0.02 * predicted(2, 1.5));
    EXPECT_NEAR(uneven.spread_V(at(3)), 0.02 * std::sqrt((1 + (seen - 1) / 3) * predicted(3, 2)), 1e-9);
    // The next counts for a quarter.
    const Trend four = lineOf({1.0, 1.2, 1.4, 1.6});
    EXPECT_NEAR(four.spread_V(at(4)), 0.02 * std::sqrt(2.0 / 3 * 3.0 / 4 * predicted(4, 2.5)), 1e-9);
}

TEST(Trend, IsNeverMoreEvenThanTheMeter) {
    std::vector<double> volts_V;
    for (int i = 0; i < 60; ++i) volts_V.push_back(0.1 + 0.05 * i);
    const MeterAt meter{0.001, 0.004, true, 0};
    EXPECT_NEAR(lineOf(volts_V, meter).spread_V(at(60)), 0.004 * std::sqrt(predicted(12, 6.5)), 1e-9);
}

// A weight of 16 at most (line.remembers): a reading off by three of its spreads raises the variance by 8/16.
TEST(Trend, UnevennessIsRememberedOverSixteenReadings) {
    std::vector<double> volts_V;
    for (int i = 0; i < 60; ++i) volts_V.push_back(0.1 + 0.05 * i);
    const MeterAt meter{0.001, 0.004, true, 0};
    Trend trend = lineOf(volts_V, meter);
    const double spread_V = trend.spread_V(at(60));
    trend.add(kTuning, meter, at(60), trend.at(at(60)) + 3 * spread_V);
    EXPECT_NEAR(trend.spread_V(at(61)), spread_V * std::sqrt(1 + 8.0 / 16), 1e-9);
}

// max(reach.least_V, 6 spreads, 3 counts) as the design has it for a level; wider by line.young / weight.
TEST(Trend, ReachIsTheLargestOfThree) {
    const Trend steep = lineOf({1.0, 1.2});
    EXPECT_NEAR(steep.reach_V(kTuning, kMeter, at(2)), 6 * 1.5 * 0.02 * std::sqrt(6.0), 1e-9);
    const Trend slow = lineOf({1.0, 1.0001}, {0.001, 0.0001, true, 0});
    EXPECT_NEAR(slow.reach_V(kTuning, kMeter, at(2)), 0.0194, 1e-12);
    EXPECT_NEAR(slow.reach_V(kTuning, {0.01, 0.0001, true, 0}, at(2)), 0.03, 1e-12);
    const Trend third = lineOf({1.0, 1.2, 1.4});
    EXPECT_NEAR(third.reach_V(kTuning, kMeter, at(3)), 6 * (1 + 1.0 / 3) * third.spread_V(at(3)), 1e-9);
}

TEST(Trend, BeginsAnewWhereThePaceHasChanged) {
    Trend trend = lineOf({1.0, 1.2, 1.4, 1.6});
    const double reach_V = trend.reach_V(kTuning, kMeter, at(4));
    Trend within = trend;
    within.add(kTuning, kMeter, at(4), 1.8 - 0.99 * reach_V);
    EXPECT_EQ(within.readings(), 5);
    trend.add(kTuning, kMeter, at(4), 1.8 - 1.01 * reach_V);
    EXPECT_EQ(trend.readings(), 2);
    EXPECT_NEAR(trend.slope_V_per_s(), (1.8 - 1.01 * reach_V - 1.6) / kInterval_s, 1e-9);
    EXPECT_NEAR(trend.at(at(4)), 1.8 - 1.01 * reach_V, 1e-12);
    EXPECT_NEAR(trend.reach_V(kTuning, kMeter, at(5)), std::max(0.0194, 9 * trend.spread_V(at(5))), 1e-12);
}

TEST(Trend, AReadingShownAgainIsNoNews) {
    Trend trend = lineOf({1.0, 1.2, 1.4});
    trend.add(kTuning, kMeter, at(2.5), 1.4);
    EXPECT_EQ(trend.readings(), 3);
    EXPECT_NEAR(trend.interval_s(), kInterval_s, 1e-12);
    EXPECT_NEAR(trend.at(at(3)), 1.6, 1e-9);
    // The second reading is one, even where the first was.
    EXPECT_EQ(lineOf({1.0, 1.0}).readings(), 2);
}

TEST(Trend, TwoReadingsAtOneMomentGiveNoSlope) {
    Trend trend(at(1), 1.0);
    trend.add(kTuning, kMeter, at(1), 1.3);
    EXPECT_EQ(trend.readings(), 1);
    EXPECT_EQ(trend.slope_V_per_s(), 0);
    EXPECT_EQ(trend.newest_V(), 1.3);
    Trend known = lineOf({1.0, 1.2, 1.4});
    known.add(kTuning, kMeter, at(2), 1.41);
    EXPECT_EQ(known.readings(), 3);
    EXPECT_NEAR(known.at(at(3)), 1.6, 1e-9);
}

TEST(Trend, IntervalIsTheMeanOfTheIntervals) {
    Trend trend(fromSeconds(0), 1.0);
    trend.add(kTuning, kMeter, fromSeconds(0.4), 1.2);
    trend.add(kTuning, kMeter, fromSeconds(1.0), 1.5);
    EXPECT_NEAR(trend.interval_s(), 0.4 + 0.2 / 3, 1e-12);
}

// moving.paused = 0.6 of a reach (0.0194 V or 6 noises) in a second.
TEST(Trend, IsPausedWhereItHardlyMovedForASecond) {
    const auto paused = [](double moved_V, double noise_V, double over_s) {
        const MeterAt meter{0.001, noise_V, true, 0};
        Trend trend(fromSeconds(0), 1.0);
        trend.add(kTuning, meter, fromSeconds(over_s), 1.0 + moved_V);
        return trend.paused();
    };
    EXPECT_TRUE(paused(0.0113, 0.001, 1.0));
    EXPECT_TRUE(paused(-0.0113, 0.001, 1.0));
    EXPECT_FALSE(paused(0.0118, 0.001, 1.0));
    EXPECT_FALSE(paused(-0.0118, 0.001, 1.0));
    EXPECT_TRUE(paused(0.0355, 0.01, 1.0));
    EXPECT_FALSE(paused(0.0365, 0.01, 1.0));
    EXPECT_TRUE(paused(0.022, 0.001, 2.0)); // in each second
    EXPECT_FALSE(paused(0.0236, 0.001, 2.0));
    EXPECT_FALSE(paused(0.005, 0.001, 0.99)); // not yet
}

TEST(Trend, APauseEndsWithTheNextSecondThatMoves) {
    Trend trend(fromSeconds(0), 1.0);
    trend.add(kTuning, kMeter, fromSeconds(1), 1.001);
    ASSERT_TRUE(trend.paused());
    trend.add(kTuning, kMeter, fromSeconds(1.6), 1.3);
    EXPECT_TRUE(trend.paused());
    trend.add(kTuning, kMeter, fromSeconds(2), 1.5);
    EXPECT_FALSE(trend.paused());
    trend.add(kTuning, kMeter, fromSeconds(2.9), 1.5); // shown again counts for this
    EXPECT_FALSE(trend.paused());
    trend.add(kTuning, kMeter, fromSeconds(3), 1.5);
    EXPECT_TRUE(trend.paused());
}

} // namespace
} // namespace stillwire::test
