// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stats/robust.hpp"

#include <gtest/gtest.h>

namespace stillwire {

// R help of mad(): mad(1..9) = 2.9652 with R's constant 1.4826; raw 2 for 1..9 and for 1..8,100; 2.5 for 1 2 3 5 7 8.
TEST(Mad, AgreesWithR) {
    const std::vector<double> plain{1, 2, 3, 4, 5, 6, 7, 8, 9};
    EXPECT_DOUBLE_EQ(madOf(plain), 2.0);
    EXPECT_NEAR(kMadToSigma * madOf(plain), 2.9652, 2.9652 * 5e-6);
    EXPECT_DOUBLE_EQ(madOf(std::vector<double>{1, 2, 3, 4, 5, 6, 7, 8, 100}), 2.0);
    EXPECT_DOUBLE_EQ(madOf(std::vector<double>{1, 2, 3, 5, 7, 8}), 2.5);
}

// GSL manual, running statistics example.
TEST(Median, AgreesWithGslManual) {
    EXPECT_DOUBLE_EQ(medianOf({17.2, 18.1, 16.5, 18.3, 12.6}), 17.2);
    EXPECT_NEAR(kMadToSigma * madOf(std::vector<double>{17.2, 18.1, 16.5, 18.3, 12.6}), 1.334342, 1e-6);
}

// NIST/SEMATECH e-Handbook 1.3.5.17.1 (Tietjen & Moore 1972): one wild value leaves median and MAD alone.
TEST(Median, IsNotMovedByTheTietjenMooreOutlier) {
    const std::vector<double> data{199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
    EXPECT_NEAR(medianOf(data), 201.37, 1e-12);
    EXPECT_NEAR(madOf(data), 0.995, 1e-9);
}

TEST(RobustLine, IgnoresOnePointOffTheLine) {
    const std::vector<double> x{0, 1, 2, 3, 4, 5, 6}, y{1, 3, 5, 0, 9, 11, 13};
    EXPECT_DOUBLE_EQ(robustLine(x, y).slope, 2.0);
    EXPECT_DOUBLE_EQ(robustLine(x, y).at(3), 7.0);
}

} // namespace stillwire
