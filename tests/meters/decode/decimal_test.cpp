// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/decimal.hpp"

#include <cmath>
#include <cstdlib>
#include <random>

#include <gtest/gtest.h>

namespace stillwire {

// Against the C library's own correctly rounding conversion, for what a meter in millivolts shows.
TEST(Decimal, IsTheNearestDoubleOfWhatIsShown) {
    int wrongByProduct = 0; // why it is no multiplication
    for (int count = 0; count < 6000; ++count) {
        char shown[16], asVolts[16];
        std::snprintf(shown, sizeof shown, "%d.%d", count / 10, count % 10);
        std::snprintf(asVolts, sizeof asVolts, "0.%04d", count);
        ASSERT_EQ(parseDecimal(shown, -3), std::strtod(asVolts, nullptr)) << shown;
        wrongByProduct += std::strtod(shown, nullptr) * 1e-3 != std::strtod(asVolts, nullptr);
    }
    EXPECT_GT(wrongByProduct, 0);
    EXPECT_EQ(parseDecimal("412.3", -3), 0.4123);
}

// IEEE 488.2 NR1, NR2, NR3 (secondary texts; reference cases of a remote-control guide).
TEST(Decimal, TakesTheThreeNumberForms) {
    EXPECT_EQ(parseDecimal("12"), 12.0);
    EXPECT_EQ(parseDecimal("-5.470"), -5.47);
    EXPECT_EQ(parseDecimal("+1.23450000E+00"), 1.2345);
    EXPECT_EQ(parseDecimal(".5"), 0.5);
    EXPECT_EQ(parseDecimal("5."), 5.0);
}

TEST(Decimal, RefusesWhatIsNotExactlyOneNumber) {
    for (const char* text : {"", "+", "-", ".", "1.2.3", "1e", "1e+", "1 ", " 1", "0x10", "inf", "nan", "--1", "1,5",
                             "1e99999999999", "1e400", "1e-400"})
        EXPECT_FALSE(parseDecimal(text)) << text;
    EXPECT_FALSE(parseDecimal(std::string(65, '1')));
}

TEST(Decimal, NeverIsMinusZero) {
    ASSERT_TRUE(parseDecimal("-0.000"));
    EXPECT_FALSE(std::signbit(*parseDecimal("-0.000")));
}

TEST(Decimal, FindsTheLongestNumberAtTheStart) {
    EXPECT_EQ(decimalLength("4.123V"), 5u);
    EXPECT_EQ(decimalLength("4.1E"), 3u);
    EXPECT_EQ(decimalLength("4.1E-3V"), 6u);
    EXPECT_EQ(decimalLength("V"), 0u);
}

} // namespace stillwire
