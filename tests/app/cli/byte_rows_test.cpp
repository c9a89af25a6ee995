// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/byte_rows.hpp"
#include "meters/decode/segment_decoder.hpp"
#include "meters/decode/text_decoder.hpp"

#include <algorithm>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

std::string take(ByteRows& rows, const std::string& text, double at_s) {
    return rows.take({reinterpret_cast<const std::uint8_t*>(text.data()), text.size()}, fromSeconds(at_s));
}

ByteRows textRows() { return ByteRows(std::make_unique<TextDecoder>(std::nullopt, false)); }

int lines(const std::string& text) { return static_cast<int>(std::count(text.begin(), text.end(), '\n')); }

} // namespace

TEST(ByteRows, PutsAReadingBesideItsBytes) {
    ByteRows rows = textRows();
    EXPECT_EQ(take(rows, "+0.812 V DC\r\n", 0.412),
              "    0.412 s  2b 30 2e 38 31 32 20 56 20 44 43 0d 0a           +0.812 V DC..     0.812 V\n");
    EXPECT_EQ(rows.readings(), 1u);
}

TEST(ByteRows, ARowGoesOnOverPiecesOfAFrameAndEndsAfterAPause) {
    ByteRows rows = textRows();
    EXPECT_EQ(take(rows, "+0.8", 0.400), "");
    EXPECT_EQ(take(rows, "12 V\r\n", 0.410),
              "    0.400 s  2b 30 2e 38 31 32 20 56 0d 0a                    +0.812 V..        0.812 V\n");
    EXPECT_EQ(take(rows, "+0.8", 1.0), "");
    const std::string out = take(rows, "13 V\n", 1.1);
    EXPECT_EQ(lines(out), 2); // the pause shows
    EXPECT_EQ(rows.readings(), 2u);
}

TEST(ByteRows, ALongFrameTakesSeveralRows) {
    ByteRows rows = textRows();
    const std::string out = take(rows, "channel 1 reads +0.812 V DC now\r\n", 0);
    EXPECT_EQ(lines(out), 3);
    EXPECT_NE(out.find("dropped: a unit that is not known"), std::string::npos); // a pattern would help
    EXPECT_EQ(rows.finish(), "");
}

TEST(ByteRows, SaysWhyAFrameMakesNoReading) {
    ByteRows rows = textRows();
    EXPECT_NE(take(rows, "-.-- V\r\n", 0).find("dropped: no number in \"-.-- V\""), std::string::npos);
    EXPECT_NE(take(rows, "OL V\r\n", 1).find("no number: overload"), std::string::npos);
    EXPECT_NE(take(rows, "0.812 V LoZ\r\n", 2).find("not DC volts (low-impedance mode)"), std::string::npos);
    EXPECT_EQ(rows.droppedBytes(), 6u);
}

TEST(ByteRows, ShowsBytesAloneWithoutADescription) {
    ByteRows rows(nullptr);
    EXPECT_EQ(take(rows, "ab", 0), "");
    EXPECT_EQ(rows.finish(), "    0.000 s  61 62                                            ab              \n");
    EXPECT_EQ(rows.heard().bytes.size(), 2u);
}

} // namespace stillwire
