// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stats/exact.hpp"

#include <cmath>

#include <gtest/gtest.h>

namespace stillwire {

// JCGM 106:2012, 7.3.3 Example 1 (published 0.92) and 7.4 (published 0.66); digits recomputed with R and SciPy.
TEST(ProbabilityInside, AgreesWithJcgm106Examples) {
    EXPECT_NEAR(probabilityInside(-5.47, 0.05, -1e9, -5.40), 0.919243340766, 1e-9);
    EXPECT_NEAR(probabilityInside(13.6, 1.8, 12.5, 16.3), 0.662629786495, 1e-9);
}

// ILAC-G8:09/2019, 4.2 and its table of guard bands; digits recomputed with R.
TEST(ProbabilityInside, AgreesWithGuardBands) {
    EXPECT_NEAR(1 - probabilityInside(-2.0, 1.0, -1e9, 0), 0.0227501319, 1e-9);
    EXPECT_NEAR(probabilityInside(0, 1.0, -1e9, 0), 0.5, 1e-15);
    EXPECT_NEAR(1 - probabilityInside(-1.65, 1.0, -1e9, 0), 0.0494714680, 1e-9);
    EXPECT_NEAR(1 - probabilityInside(-3.0, 1.0, -1e9, 0), 0.0013498980, 1e-9);
}

// JCGM 106:2012, 7.3 Table 1: z for one-sided probabilities (printed to two digits; more from R).
TEST(NormalCdf, AgreesWithJcgm106Table1) {
    EXPECT_NEAR(normalCdf(0.8416), 0.80, 2e-5);
    EXPECT_NEAR(normalCdf(1.2816), 0.90, 2e-5);
    EXPECT_NEAR(normalCdf(1.6449), 0.95, 1e-5);
    EXPECT_NEAR(normalCdf(2.3263), 0.99, 1e-5);
    EXPECT_NEAR(normalCdf(3.0902), 0.999, 1e-6);
}

TEST(ProbabilityInside, IsCertainWithoutUncertainty) {
    EXPECT_EQ(probabilityInside(1.0, 0, 1.0, 2.0), 1.0);
    EXPECT_EQ(probabilityInside(0.999, 0, 1.0, 2.0), 0.0);
}

struct Bound {
    int n;
    double k0, k1, k2;
};
// Clopper-Pearson = qbeta(0.95, k+1, n-k), computed with R and SciPy.
TEST(RateUpperBound, AgreesWithR) {
    for (const Bound& row :
         {Bound{10, 0.2588655509, 0.3941633024, 0.5069013011}, Bound{20, 0.1391083407, 0.2161061642, 0.2826185249},
          Bound{30, 0.0950338529, 0.1485960687, 0.1953260437}, Bound{50, 0.0581550791, 0.0913981307, 0.1206141554},
          Bound{100, 0.0295130496, 0.0465598115, 0.0616192004}}) {
        EXPECT_NEAR(rateUpperBound(0, row.n), row.k0, 1e-9);
        EXPECT_NEAR(rateUpperBound(1, row.n), row.k1, 1e-9);
        EXPECT_NEAR(rateUpperBound(2, row.n), row.k2, 1e-9);
    }
    EXPECT_EQ(rateUpperBound(0, 0), 1.0);
    EXPECT_EQ(rateUpperBound(3, 3), 1.0);
}

// Hanley & Lippman-Hand, JAMA 1983;249:1743: 0/14, 0/112, 0/167; exact values from R.
TEST(RateUpperBound, AgreesWithZeroNumerators) {
    EXPECT_NEAR(rateUpperBound(0, 14), 0.1926362, 1e-7);
    EXPECT_NEAR(rateUpperBound(0, 112), 0.0263931, 1e-7);
    EXPECT_NEAR(rateUpperBound(0, 167), 0.0177786, 1e-7);
}

// n = ceil(ln 0.05 / ln(1-p)), exact integers from R.
TEST(TrialsToSeeOne, AgreesWithTable) {
    const double p[] = {0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.001};
    const int n[] = {5, 14, 29, 59, 149, 299, 598, 2995};
    for (int i = 0; i < 8; ++i) EXPECT_EQ(trialsToSeeOne(p[i]), n[i]);
}

// R stats, binom.test Examples (Conover 1971): 682 of 925 against 3/4.
TEST(BinomialTest, AgreesWithConover) { EXPECT_NEAR(binomialTest(682, 925, 0.75), 0.382491559575, 1e-8); }

// R stats, poisson.test Examples (eba1977), and the one-sided values from R.
TEST(EqualRates, AgreesWithR) {
    EXPECT_NEAR(equalRatesTest(11, 800, 21, 3011), 0.0796686330333, 1e-8);
    EXPECT_NEAR(greaterRateTest(11, 800, 21, 3011), 0.0560086597877, 1e-8);
    EXPECT_NEAR(equalRatesTest(0, 10, 5, 10), 0.0625, 1e-12);
    EXPECT_NEAR(equalRatesTest(0, 30, 5, 10), 0.0009765625, 1e-12);
    EXPECT_NEAR(equalRatesTest(3, 60, 12, 30), 0.000285108823968, 1e-8);
    EXPECT_EQ(equalRatesTest(0, 30, 0, 10), 1.0);
}

} // namespace stillwire
