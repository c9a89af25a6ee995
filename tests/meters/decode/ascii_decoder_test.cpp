// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/meters/decode/frames.hpp"

#include <gtest/gtest.h>

namespace stillwire {

using frames::bytes;
using frames::one;

// Two characters of states (0x30 + bits), function, range, six digits.
TEST(AsciiDecoder, ReadsDigitsByTheirRange) {
    EXPECT_EQ(one(FrameKind::ascii, "00Dj041234").volts_V, 4.1234);
    EXPECT_EQ(one(FrameKind::ascii, "00Dk004123").volts_V, 4.123);
    EXPECT_EQ(one(FrameKind::ascii, "10Dk004123").volts_V, -4.123);
    EXPECT_EQ(one(FrameKind::ascii, "00Dm000412").volts_V, 4.12);
}

TEST(AsciiDecoder, ReadsTheStatusBits) {
    EXPECT_EQ(one(FrameKind::ascii, "40Dk004123").flags, ReadingFlags(Flag::overload));
    EXPECT_FALSE(one(FrameKind::ascii, "40Dk004123").hasNumber());
    EXPECT_EQ(one(FrameKind::ascii, "2<Dk004123").flags, ReadingFlags(Flag::lowbat) | Flag::hold | Flag::autorange);
}

TEST(AsciiDecoder, NeverTakesAnotherFunctionForVolts) {
    for (const char* frame : {"00Rk004123", "00R9004123", "02Dk004123", "80Dk004123", "01Dk004123"}) {
        const Reading reading = one(FrameKind::ascii, frame);
        EXPECT_FALSE(reading.hasNumber()) << frame;
        EXPECT_TRUE(reading.flags.has(Flag::unit)) << frame;
    }
}

TEST(AsciiDecoder, DropsWhatIsNoFrame) {
    for (const char* frame : {"00Dk00412", "00Dk0041230", "00D9004123", "00Dk0041x3", "00Dk00 123"}) {
        AsciiDecoder decoder(frames::layout());
        EXPECT_TRUE(frames::decode(decoder, bytes(std::string(frame) + "\r\n")).empty()) << frame;
        EXPECT_GT(decoder.droppedBytes(), 0u);
        EXPECT_EQ(frames::decode(decoder, bytes("00Dk004123\r\n")).size(), 1u);
    }
}

} // namespace stillwire
