// SPDX-License-Identifier: GPL-3.0-or-later
// Medians, spreads and exact bounds against published sets and R. The project computes no mean and no standard
// deviation of readings, for one dropout ruins both: the certified sets hold its median and MAD instead, exactly
// where a set is symmetric about its certified mean.
#include "core/analyse/level_histogram.hpp"
#include "core/stats/exact.hpp"
#include "core/stats/robust.hpp"
#include "tests/core/stats/published_sets.hpp"

#include <cmath>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace test;

// NIST StRD: the certified mean and deviation of NumAcc1 to NumAcc4 are also their median and MAD.
TEST(CertifiedSets, SymmetricOnesGiveTheirCertifiedMeanAndDeviation) {
    EXPECT_EQ(medianOf({10000001, 10000003, 10000002}), 10000002);
    EXPECT_EQ(madOf(std::vector<double>{10000001, 10000003, 10000002}), 1);
    EXPECT_EQ(medianOf(numAcc(1.2, 1.1, 1.3)), 1.2);
    EXPECT_NEAR(madOf(numAcc(1.2, 1.1, 1.3)), 0.1, 1e-15);
    // The inputs themselves are rounded: half a unit of 1e6 and of 1e7 in double precision.
    EXPECT_EQ(medianOf(numAcc(1000000.2, 1000000.1, 1000000.3)), 1000000.2);
    EXPECT_NEAR(madOf(numAcc(1000000.2, 1000000.1, 1000000.3)), 0.1, 2e-10);
    EXPECT_EQ(medianOf(numAcc(10000000.2, 10000000.1, 10000000.3)), 10000000.2);
    EXPECT_NEAR(madOf(numAcc(10000000.2, 10000000.1, 10000000.3)), 0.1, 2e-9);
}

// The set's own order statistics, by sorting the published values; and the histogram, which keeps no readings,
// agrees.
TEST(CertifiedSets, TheHistogramFindsTheMediansOfTheOthers) {
    struct Set {
        std::vector<double> values;
        double scale; // to volts
        double median_V, mad_V;
    };
    for (const Set& set : {Set{mavro(), 1, 2.0018, 0.0003}, Set{michelso(), 0.001, 0.850, 0.045}}) {
        std::vector<double> volts;
        LevelHistogram histogram;
        for (const double v : set.values) {
            volts.push_back(v * set.scale);
            const Reading reading{Time(0), v * set.scale, {}};
            histogram.add(&reading, 1);
        }
        EXPECT_NEAR(medianOf(volts), set.median_V, 1e-12);
        EXPECT_NEAR(histogram.median_V(), set.median_V, 1e-9);
        EXPECT_NEAR(madOf(volts), set.mad_V, 1e-9);
        EXPECT_NEAR(histogram.mad_V(), set.mad_V, 1.01e-5) << "bins are 10 µV wide";
    }
}

// R 4.2 on datasets::Nile.
TEST(Nile, MedianAndMadAgreeWithR) {
    EXPECT_DOUBLE_EQ(medianOf(nile()), 893.5);
    EXPECT_NEAR(kMadToSigma * madOf(nile()), 179.3946, 179.3946 * 5e-6);
}

std::vector<std::size_t> modifiedOutliers(const std::vector<double>& values, std::vector<double>* scores = nullptr) {
    // 0.6745·(x - median)/MAD beyond 3.5 (Iglewicz & Hoaglin, by the e-Handbook 1.3.5.17).
    std::vector<std::size_t> out;
    const double middle = medianOf(values), mad = madOf(values);
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double z = 0.6745 * (values[i] - middle) / mad;
        if (scores) scores->push_back(z);
        if (std::abs(z) > 3.5) out.push_back(i);
    }
    return out;
}

// Scores recomputed with R.
TEST(Median, FlagsTheTietjenMooreOutlierAndNoOther) {
    std::vector<double> scores;
    EXPECT_EQ(modifiedOutliers(tietjenMoore(), &scores), std::vector<std::size_t>{7});
    const double wanted[] = {-1.396452, -1.247317, -0.799910, -0.372839, 0.372839, 0.393176, 0.549090, 29.962714};
    for (std::size_t i = 0; i < scores.size(); ++i) EXPECT_NEAR(scores[i], wanted[i], 1e-6);
}

// Rosner 1983: three outliers that mask each other from the mean, not from the median.
TEST(Median, FlagsRosnersThree) {
    EXPECT_DOUBLE_EQ(medianOf(rosner()), 2.095);
    EXPECT_NEAR(madOf(rosner()), 0.545, 1e-12);
    EXPECT_EQ(modifiedOutliers(rosner()), (std::vector<std::size_t>{51, 52, 53}));
}

// GSL 2.7.1, Hampel filter examples with truncated ends: running medians of 3, and a dropout in a quiet trace.
TEST(Median, AgreesWithGslsRunningMedians) {
    const auto running = [](const std::vector<double>& x, std::ptrdiff_t half) {
        std::vector<double> out;
        for (std::ptrdiff_t i = 0; i < std::ssize(x); ++i) {
            const std::ptrdiff_t from = std::max<std::ptrdiff_t>(0, i - half);
            const std::ptrdiff_t to = std::min<std::ptrdiff_t>(std::ssize(x), i + half + 1);
            out.push_back(medianOf({x.begin() + from, x.begin() + to}));
        }
        return out;
    };
    EXPECT_EQ(running({1, 2, 10, 3, 4, 100, 5, 6, 7}, 1), (std::vector<double>{1.5, 2, 3, 4, 4, 5, 6, 6, 6.5}));
    const std::vector<double> trace{0.512, 0.514, 0.511, 0.513, 0.000, 0.512, 0.515, 0.513, 0.511, 0.514, 0.512};
    const double medians[] = {0.512, 0.5125, 0.512, 0.512, 0.512, 0.513, 0.512, 0.513, 0.513, 0.5125, 0.512};
    const std::vector<double> found = running(trace, 2);
    for (std::size_t i = 0; i < found.size(); ++i) EXPECT_NEAR(found[i], medians[i], 1e-12) << i;
    EXPECT_DOUBLE_EQ(medianOf(trace), 0.512);
    EXPECT_NEAR(kMadToSigma * madOf(trace), 0.0014826, 1e-7);
}

// JAMA 1995;274:1013: 0 of 50 and 0 of 1000 against the rule of three; exact values from R.
TEST(RateUpperBound, StaysUnderTheRuleOfThree) {
    EXPECT_NEAR(rateUpperBound(0, 50), 0.0581551, 1e-7);
    EXPECT_NEAR(rateUpperBound(0, 1000), 0.00299125, 1e-8);
    for (const int n : {10, 14, 20, 30, 50, 100, 112, 167, 1000}) {
        EXPECT_LT(rateUpperBound(0, n), 3.0 / n);
        EXPECT_NEAR(rateUpperBound(0, n), 1 - std::pow(0.05, 1.0 / n), 1e-12); // closed form
    }
}

// qbeta(0.975, 1, n) from R: the upper end of the two-sided interval.
TEST(RateUpperBound, AgreesWithTheTwoSidedInterval) {
    EXPECT_NEAR(rateUpperBound(0, 10, 0.975), 0.3084971, 1e-7);
    EXPECT_NEAR(rateUpperBound(0, 20, 0.975), 0.1684335, 1e-7);
    EXPECT_NEAR(rateUpperBound(0, 30, 0.975), 0.1157033, 1e-7);
    EXPECT_NEAR(rateUpperBound(0, 50, 0.975), 0.0711218, 1e-7);
    EXPECT_NEAR(rateUpperBound(0, 100, 0.975), 0.0362167, 1e-7);
}

// qchisq(0.95, 2(k+1))/2 from R: the bound on a count, which n trials of a rare event come to.
TEST(RateUpperBound, TendsToThePoissonLimits) {
    const double limits[] = {2.995732, 4.743865, 6.295794, 7.753657, 9.153519, 10.513035};
    constexpr int n = 100000000;
    for (int k = 0; k < 6; ++k) EXPECT_NEAR(rateUpperBound(k, n) * n, limits[k], 2e-6);
}

// (1-p)^30, recomputed: the chance of seeing nothing is what is left over at the confidence that p is the bound.
TEST(RateUpperBound, IsTheChanceOfSeeingNothing) {
    const double p[] = {0.3, 0.2, 0.1, 0.05};
    const double unseen[] = {2.253934e-05, 0.001237940, 0.042391158, 0.214638764};
    for (int i = 0; i < 4; ++i) EXPECT_NEAR(rateUpperBound(0, 30, 1 - unseen[i]), p[i], 1e-6);
}

// R stats, binom.test Examples (Conover 1971): 95 % interval of 682 of 925; the lower end is the upper one of the
// rest.
TEST(RateUpperBound, AgreesWithConoversInterval) {
    EXPECT_NEAR(rateUpperBound(682, 925, 0.975), 0.765406558242, 1e-8);
    EXPECT_NEAR(1 - rateUpperBound(925 - 682, 925, 0.975), 0.707668264079, 1e-8);
}

// R stats, poisson.test: interval of a ratio of two rates, p/(1-p)·T2/T1 with the exact p of k1 in k1+k2.
TEST(RateUpperBound, GivesRsIntervalsOfARatio) {
    const auto upper = [](int k1, double t1, int k2, double t2, double confidence) {
        const double p = rateUpperBound(k1, k1 + k2, confidence);
        return p / (1 - p) * t2 / t1;
    };
    EXPECT_NEAR(upper(11, 800, 21, 3011, 0.975), 4.277265943654, 1e-8); // eba1977
    EXPECT_NEAR(1 / upper(21, 3011, 11, 800, 0.975), 0.858426403392, 1e-8);
    EXPECT_NEAR(upper(11, 800, 21, 3011, 0.95), 3.82738640785, 1e-8);
    EXPECT_NEAR(1 / upper(21, 3011, 11, 800, 0.95), 0.977584347497, 1e-8);
    EXPECT_NEAR(upper(0, 10, 5, 10, 0.975), 1.09127910518, 1e-8);
    EXPECT_NEAR(upper(0, 30, 5, 10, 0.975), 0.363759701728, 1e-8);
    EXPECT_NEAR(upper(3, 60, 12, 30, 0.975), 0.4631890968589, 1e-8);
    EXPECT_NEAR(1 / upper(12, 30, 3, 60, 0.975), 0.0226364318027, 1e-8);
}

// R stats, poisson.test with alternative "less".
TEST(GreaterRate, AgreesWithRTheOtherWayRound) {
    EXPECT_NEAR(greaterRateTest(21, 3011, 11, 800), 0.975931823227, 1e-8);
}

} // namespace
} // namespace stillwire
