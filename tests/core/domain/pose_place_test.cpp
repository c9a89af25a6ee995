// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/domain/pose_place.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

TEST(PosePlace, ASideAloneIsOfTheShaft) {
    for (const auto& [text, side] : {std::pair("left", Side::left), std::pair("right", Side::right)}) {
        const PosePlace place = PosePlace::parse(text);
        EXPECT_TRUE(place.ofShaft());
        EXPECT_EQ(place.side(), side);
        EXPECT_EQ(place.section(), "");
        EXPECT_EQ(PosePlace::at(side).text(), text);
    }
}

TEST(PosePlace, ASectionOfTheHarnessHasItsNumberAndItsSide) {
    const PosePlace place = PosePlace::parse("section-12/right");
    EXPECT_EQ(place.area, "section-12");
    EXPECT_EQ(place.section(), "12");
    EXPECT_EQ(place.side(), Side::right);
    EXPECT_FALSE(place.ofShaft());
    EXPECT_EQ(PosePlace::at(Side::right, 12).text(), "section-12/right");
    EXPECT_EQ(PosePlace::parse("section-3").section(), "3");
    EXPECT_EQ(PosePlace::parse("section-3").side(), std::nullopt);
}

TEST(PosePlace, AnyTextIsWrittenAsItWasRead) {
    for (const char* text :
         {"", "left", "up", "section-2", "section-2/left", "section-2/", "section-", "connector/left", "/left", "/",
          "//", "a/b/c", "left/", "section-/right", "section-2/a/b"})
        EXPECT_EQ(PosePlace::parse(text).text(), text);
    EXPECT_TRUE(PosePlace::parse("").empty());
    EXPECT_FALSE(PosePlace::parse("up").ofShaft());
    EXPECT_FALSE(PosePlace::parse("connector/left").ofShaft());
}

} // namespace
} // namespace stillwire::test
