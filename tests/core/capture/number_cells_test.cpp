// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/number_cells.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

std::string plainOf(std::string cell, DecimalSign sign) {
    plainSigns(cell);
    const auto number = writtenNumber(cell, sign);
    return number ? number->plain + (number->rest.empty() ? "" : "|" + std::string(number->rest)) : "none";
}
std::string point(const std::string& cell) { return plainOf(cell, DecimalSign::point); }
std::string comma(const std::string& cell) { return plainOf(cell, DecimalSign::comma); }

} // namespace

TEST(NumberCells, ThousandsMayBeSetApart) {
    EXPECT_EQ(point("4,100"), "4100");
    EXPECT_EQ(comma("4,100"), "4.100");
    EXPECT_EQ(comma("1.234.567,5"), "1234567.5");
    for (const char* cell : {"4 100", "4'100",
                             "4\xC2\xA0"
                             "100",
                             "4\xE2\x80\xAF"
                             "100",
                             "4\xE2\x80\x99"
                             "100"}) {
        EXPECT_EQ(point(cell), "4100") << cell;
        EXPECT_EQ(comma(cell), "4100") << cell;
    }
}

TEST(NumberCells, WhatIsSetApartWronglyIsNoNumber) {
    for (const char* cell : {"4,10", "41,00", "0,820", "4,1000", "1,23,456", "4100,000"})
        EXPECT_EQ(point(cell), "none") << cell;
    for (const char* cell : {"", "-", ".", ",", "4 1", "soup", "1.2.3", "10:00", "--5"}) {
        EXPECT_EQ(point(cell), "none") << cell;
        EXPECT_EQ(comma(cell), "none") << cell;
    }
}

TEST(NumberCells, SignsExponentsAndUnits) {
    EXPECT_EQ(point("\xE2\x88\x92"
                    "0.5"),
              "-0.5");
    EXPECT_EQ(point("+4.1E+00V"), "4.1E+00|V");
    EXPECT_EQ(point("812.5 mV DC"), "812.5|mV DC");
    EXPECT_EQ(point(".5"), ".5");
    EXPECT_EQ(point("5."), "5");
}

TEST(NumberStyle, RulesOutASignAndAsksWhereBothAreLeft) {
    NumberStyle style;
    EXPECT_FALSE(style.certain());
    style.learn("4,100");
    style.learn("820");
    EXPECT_FALSE(style.certain());
    EXPECT_TRUE(style.twoReadings("4,100"));
    EXPECT_FALSE(style.twoReadings("820"));
    style.learn("0,820");
    EXPECT_EQ(style.certain(), DecimalSign::comma);
    EXPECT_FALSE(style.twoReadings("4,100"));
    style.learn("4.1"); // decided is decided: this cell is wrong, not the file
    EXPECT_EQ(style.certain(), DecimalSign::comma);
    EXPECT_FALSE(style.read("4.1").has_value());
    EXPECT_EQ(NumberStyle(false).certain(), DecimalSign::point);
}

} // namespace stillwire
