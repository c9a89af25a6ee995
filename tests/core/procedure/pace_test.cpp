// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/pace.hpp"

#include <cmath>
#include <vector>

#include <gtest/gtest.h>

namespace stillwire {

TEST(Pace, GivesTheFirstWordsOfSplitMix64) {
    // The published reference program (public domain, 2015) started at 1234567 prints these three; from memory.
    std::uint64_t state = 1234567;
    EXPECT_EQ(splitMix64(state), 6457827717110365317ULL);
    EXPECT_EQ(splitMix64(state), 3203168211198807973ULL);
    EXPECT_EQ(splitMix64(state), 9817491932198370423ULL);
}

TEST(Pace, HoldsThreeIntervalsAndARandomPartOfUpToOne) {
    Pace pace(7);
    double sum = 0, least = 1e9, most = 0;
    for (int i = 0; i < 4000; ++i) {
        const double extra = pace.hold_s(0.5, 0) - 1.5;
        sum += extra;
        least = std::min(least, extra);
        most = std::max(most, extra);
    }
    EXPECT_GE(least, 0);
    EXPECT_LT(most, 0.5);
    // An even spread over 0 to 0.5 s has its mean at 0.25 with a standard error of 0.5/sqrt(12·4000).
    EXPECT_NEAR(sum / 4000, 0.25, 3 * 0.5 / std::sqrt(12 * 4000.0));
    EXPECT_LT(least, 0.01);
    EXPECT_GT(most, 0.49);
}

TEST(Pace, HoldsAsLongAsTheShortestDropoutThatCannotHide) {
    Pace pace(7);
    EXPECT_GE(pace.hold_s(0.1, 1.9), 1.9);
    EXPECT_LT(pace.hold_s(0.1, 1.9), 2.0);
}

TEST(Pace, NeverAsksMoreOfAHandThanAHandCanDo) {
    Pace pace(7);
    EXPECT_GE(pace.hold_s(0.05, 0.05), kShortestHold_s);
}

TEST(Pace, RepeatsWithItsSeedAndDiffersWithAnother) {
    Pace a(3), b(3), c(4);
    std::vector<double> x, y, z;
    for (int i = 0; i < 20; ++i) {
        x.push_back(a.hold_s(0.33, 0.3));
        y.push_back(b.hold_s(0.33, 0.3));
        z.push_back(c.hold_s(0.33, 0.3));
    }
    EXPECT_EQ(x, y);
    EXPECT_NE(x, z);
}

} // namespace stillwire
