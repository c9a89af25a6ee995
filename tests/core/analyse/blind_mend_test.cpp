// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/blind_mend.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

BlindSpan span(double from_s, double to_s, BlindCause cause) {
    return {fromSeconds(from_s), fromSeconds(to_s), cause};
}

std::string mend(const std::vector<BlindSpan>& blind) {
    return blindMend(blind, Time(0), fromSeconds(1000)).english();
}

} // namespace

TEST(BlindMend, OneRangeChangeIsToldWithItsLength) {
    EXPECT_EQ(mend({span(10, 11.4, BlindCause::autorange)}), "Lock the range: it went blind for 1.4 s.");
}

TEST(BlindMend, ThreeInAMinuteAreHunting) {
    const std::vector<BlindSpan> blind = {span(10, 11, BlindCause::autorange), span(20, 21, BlindCause::autorange),
                                          span(30, 31.5, BlindCause::autorange)};
    EXPECT_EQ(mend(blind), "Lock the range: the meter changed it 3 times and was blind for 3.5 s in all.");
    EXPECT_EQ(blindTime(blind, BlindCause::autorange, fromSeconds(20.5), fromSeconds(100)).spans, 2);
    EXPECT_DOUBLE_EQ(blindTime(blind, BlindCause::autorange, fromSeconds(20.5), fromSeconds(100)).total_s, 2.0);
}

TEST(BlindMend, TheCauseThatTookMostTimeSpeaks) {
    EXPECT_NE(mend({span(0, 1, BlindCause::autorange), span(5, 9, BlindCause::hold)}).find("press the hold key"),
              std::string::npos);
    EXPECT_NE(mend({span(0, 1, BlindCause::frozen)}).find("switch the meter off and on"), std::string::npos);
    EXPECT_NE(mend({span(0, 1, BlindCause::unit)}).find("turn it to DC volts"), std::string::npos);
    EXPECT_NE(mend({span(0, 1, BlindCause::overload)}).find("holds 6 V"), std::string::npos);
    EXPECT_NE(mend({span(0, 1, BlindCause::gap)}).find("auto-off"), std::string::npos);
    EXPECT_EQ(mend({}), "");
}

} // namespace stillwire
