// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/meters/decode/frames.hpp"

#include <gtest/gtest.h>

namespace stillwire {

using frames::bytes;
using frames::one;

// Range, five digits, function, status 0x30 + bits, option 0x30 + bits.
TEST(AsciiDecoder, ReadsDigitsByTheirRange) {
    EXPECT_EQ(one(FrameKind::ascii, "041234;00").volts_V, 4.1234);
    EXPECT_EQ(one(FrameKind::ascii, "104123;00").volts_V, 4.123);
    EXPECT_EQ(one(FrameKind::ascii, "104123;40").volts_V, -4.123);
    EXPECT_EQ(one(FrameKind::ascii, "200412;00").volts_V, 4.12);
}

TEST(AsciiDecoder, ReadsTheStatusBits) {
    EXPECT_EQ(one(FrameKind::ascii, "104123;10").flags, ReadingFlags(Flag::overload));
    EXPECT_FALSE(one(FrameKind::ascii, "104123;10").hasNumber());
    EXPECT_EQ(one(FrameKind::ascii, "104123;23").flags, ReadingFlags(Flag::lowbat) | Flag::hold | Flag::autorange);
}

TEST(AsciiDecoder, NeverTakesAnotherFunctionForVolts) {
    for (const char* frame : {"104123300", "904123300", "104123;04", "104123;08"}) {
        const Reading reading = one(FrameKind::ascii, std::string_view(frame).substr(0, 9));
        EXPECT_FALSE(reading.hasNumber()) << frame;
        EXPECT_TRUE(reading.flags.has(Flag::unit)) << frame;
    }
}

TEST(AsciiDecoder, DropsWhatIsNoFrame) {
    for (const char* frame : {"104123;0", "104123;000", "904123;00", "1041x3;00", "10 123;00"}) {
        AsciiDecoder decoder(frames::layout());
        EXPECT_TRUE(frames::decode(decoder, bytes(std::string(frame) + "\r\n")).empty()) << frame;
        EXPECT_GT(decoder.droppedBytes(), 0u);
        EXPECT_EQ(frames::decode(decoder, bytes("104123;00\r\n")).size(), 1u);
    }
}

} // namespace stillwire
