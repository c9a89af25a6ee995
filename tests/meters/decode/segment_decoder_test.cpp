// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/meters/decode/frames.hpp"

#include <gtest/gtest.h>

namespace stillwire {

namespace {

using frames::Bytes;

// "4.123 V DC AUTO", byte by byte.
const Bytes kFrame = {0x17,                    // DC, AUTO, RS232
                      0x22,        0x37,       // 4: f, c g b
                      0x48 | 0x00, 0x55,       // point, 1: c b
                      0x65,        0x7B,       // 2: e a, d g b
                      0x81,        0x9F,       // 3: a, d c g b
                      0xA0,        0xB0, 0xC0, // no prefix, no other unit
                      0xD4,                    // V
                      0xE0};

Reading first(const Bytes& in) {
    const auto out = frames::decode(FrameKind::segments, in);
    return out.empty() ? Reading{} : out.front();
}

Bytes with(std::size_t byte, std::uint8_t set) {
    Bytes out = kFrame;
    out[byte] = static_cast<std::uint8_t>(out[byte] | set);
    return out;
}

} // namespace

// The usual letters of a seven-segment figure: a top, b and c right, d bottom, e and f left, g middle.
TEST(SegmentDecoder, KnowsTheFiguresOfSevenSegments) {
    constexpr std::uint8_t a = 0x10, b = 0x01, c = 0x04, d = 0x08, e = 0x40, f = 0x20, g = 0x02;
    const std::uint8_t figures[10] = {a | b | c | d | e | f, b | c,         a | b | d | e | g,
                                      a | b | c | d | g,     b | c | f | g, a | c | d | f | g,
                                      a | c | d | e | f | g, a | b | c,     a | b | c | d | e | f | g,
                                      a | b | c | d | f | g};
    for (int i = 0; i < 10; ++i) EXPECT_EQ(digitOf(figures[i]), i);
    EXPECT_EQ(kLetterL, d | e | f);
    EXPECT_FALSE(digitOf(kBlank));
}

TEST(SegmentDecoder, ReadsADisplay) {
    const Reading reading = first(kFrame);
    EXPECT_EQ(reading.volts_V, 4.123);
    EXPECT_EQ(reading.flags, ReadingFlags(Flag::autorange));
}

TEST(SegmentDecoder, ReadsSignHoldBatteryAndPrefix) {
    EXPECT_EQ(first(with(1, 8)).volts_V, -4.123);
    EXPECT_TRUE(first(with(11, 1)).flags.has(Flag::hold));
    EXPECT_TRUE(first(with(12, 1)).flags.has(Flag::lowbat));
    EXPECT_EQ(first(with(10, 8)).volts_V, 0.004123); // m
    EXPECT_EQ(first(with(9, 8)).volts_V, 4.123e-6);  // µ
}

TEST(SegmentDecoder, NeverTakesAnotherFunctionForVolts) {
    for (const auto& [byte, mask] : std::initializer_list<std::pair<std::size_t, std::uint8_t>>{
             {0, 8}, {9, 1}, {10, 4}, {10, 1}, {11, 8}, {11, 4}, {11, 2}, {12, 8}, {12, 2}}) {
        const Reading reading = first(with(byte, mask));
        EXPECT_FALSE(reading.hasNumber()) << byte;
        EXPECT_TRUE(reading.flags.has(Flag::unit)) << byte;
    }
    Bytes noVolt = kFrame;
    noVolt[12] = 0xD0;
    EXPECT_TRUE(first(noVolt).flags.has(Flag::unit));
}

TEST(SegmentDecoder, AnLAmongBlanksIsOverload) {
    const Bytes overload = {0x15, 0x20, 0x30, 0x47, 0x5D, 0x66, 0x78, 0x80, 0x90, 0xA0, 0xB0, 0xC0, 0xD4, 0xE0};
    EXPECT_EQ(first(overload).flags, ReadingFlags(Flag::overload));
    Bytes amongFigures = overload;
    amongFigures[1] = 0x22;
    amongFigures[2] = 0x37;
    EXPECT_TRUE(frames::decode(FrameKind::segments, amongFigures).empty());
}

TEST(SegmentDecoder, BlankDigitsAreARangeChange) {
    const Bytes blank = {0x17, 0x20, 0x30, 0x40, 0x50, 0x60, 0x70, 0x80, 0x90, 0xA0, 0xB0, 0xC0, 0xD4, 0xE0};
    EXPECT_EQ(first(blank).flags, ReadingFlags(Flag::autorange));
}

TEST(SegmentDecoder, LeadingBlanksAreFineAndGapsAreNot) {
    Bytes leading = kFrame;
    leading[1] = 0x20;
    leading[2] = 0x30;
    EXPECT_EQ(first(leading).volts_V, 0.123);
    Bytes gap = kFrame;
    gap[5] = 0x60;
    gap[6] = 0x70;
    EXPECT_TRUE(frames::decode(FrameKind::segments, gap).empty());
}

// Every one of the 128 patterns in every place: a figure reads as itself, anything else gives no number at all.
TEST(SegmentDecoder, ACorruptedPatternIsNoDigit) {
    for (std::size_t digit = 0; digit < 4; ++digit)
        for (unsigned pattern = 0; pattern < 128; ++pattern) {
            Bytes in = kFrame;
            in[1 + 2 * digit] = static_cast<std::uint8_t>((in[1 + 2 * digit] & 0xF8) | pattern >> 4);
            in[2 + 2 * digit] = static_cast<std::uint8_t>((in[2 + 2 * digit] & 0xF0) | (pattern & 0xF));
            const auto value = digitOf(static_cast<std::uint8_t>(pattern));
            const auto out = frames::decode(FrameKind::segments, in);
            if (value) {
                std::string shown = "4.123";
                shown[digit == 0 ? 0 : digit + 1] = static_cast<char>('0' + *value);
                ASSERT_EQ(out.size(), 1u);
                EXPECT_EQ(out[0].volts_V, std::stod(shown));
            } else if (!(digit == 0 && pattern == 0)) {
                EXPECT_TRUE(out.empty()) << digit << " " << pattern;
            }
        }
}

TEST(SegmentDecoder, FindsTheFrameAgainAfterGarbage) {
    SegmentDecoder decoder;
    Bytes in = {0x00, 0xFF, 0x15, 0x22, 0x34}; // noise, then three bytes of a torn frame
    in.insert(in.end(), kFrame.begin(), kFrame.end());
    EXPECT_EQ(frames::decode(decoder, in).size(), 1u);
    EXPECT_EQ(decoder.droppedBytes(), 5u);
    EXPECT_FALSE(decoder.lastComplaint().empty());
}

TEST(SegmentDecoder, LosesOneFrameForOneLostByte) {
    for (std::size_t lost = 0; lost < kSegmentFrame; ++lost) {
        SegmentDecoder decoder;
        Bytes in;
        for (int i = 0; i < 3; ++i) in.insert(in.end(), kFrame.begin(), kFrame.end());
        in.erase(in.begin() + static_cast<std::ptrdiff_t>(kSegmentFrame + lost));
        EXPECT_EQ(frames::decode(decoder, in).size(), 2u) << lost;
        EXPECT_EQ(decoder.droppedBytes(), kSegmentFrame - 1) << lost;
    }
}

} // namespace stillwire
