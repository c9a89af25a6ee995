// SPDX-License-Identifier: GPL-3.0-or-later
// Values: SCPI-1999 volume 1, infinity and not a number; IEEE 488.2 number forms (both by secondary texts).
#include "tests/meters/decode/frames.hpp"

#include <gtest/gtest.h>

namespace stillwire {

using frames::bytes;
using frames::one;

TEST(ScpiDecoder, ReadsTheNumberForms) {
    EXPECT_EQ(one(FrameKind::scpi, "+1.23450000E+00").volts_V, 1.2345);
    EXPECT_EQ(one(FrameKind::scpi, "-5.470").volts_V, -5.47);
    EXPECT_EQ(one(FrameKind::scpi, "12").volts_V, 12);
    EXPECT_EQ(one(FrameKind::scpi, " 4.123 ").volts_V, 4.123);
}

TEST(ScpiDecoder, InfinityIsOverloadAndNeverANumber) {
    for (const char* text : {"9.9E37", "+9.90000000E+37", "-9.9E37", "9.9e+37", "9.8999999E37"}) {
        const Reading reading = one(FrameKind::scpi, text);
        EXPECT_FALSE(reading.hasNumber()) << text;
        EXPECT_EQ(reading.flags, ReadingFlags(Flag::overload)) << text;
    }
}

TEST(ScpiDecoder, NotANumberIsNeither) {
    for (const char* text : {"9.91E37", "+9.91000000E+37", "-9.91E37", "9.9099999E37"}) {
        const Reading reading = one(FrameKind::scpi, text);
        EXPECT_FALSE(reading.hasNumber()) << text;
        EXPECT_EQ(reading.flags, ReadingFlags(Flag::unit)) << text;
    }
}

TEST(ScpiDecoder, RefusesRepliesThatAreNoReadings) {
    for (const char* text : {"1.2E", "+", "volts", "1e20", "4.1 V", "-350,Queue overflow", "40000,\"x\"", "1.0,x,2,3",
                             "MA,IN,0", "0,\"", "1.5,\"x\""}) {
        ScpiDecoder decoder;
        EXPECT_TRUE(frames::decode(decoder, bytes(std::string(text) + "\n")).empty()) << text;
        EXPECT_GT(decoder.droppedBytes(), 0u) << text;
        EXPECT_FALSE(decoder.takeAnswer()) << text;
    }
    EXPECT_TRUE(frames::decode(FrameKind::scpi, bytes("\n\r\n\n")).empty());
    EXPECT_TRUE(frames::decode(FrameKind::scpi, bytes("+1.234")).empty()); // partial
}

// Answers as an open parser library's tests give them: no readings, and no garbage either.
TEST(ScpiDecoder, KnowsAnIdentityAndAnErrorEntry) {
    ScpiDecoder decoder;
    EXPECT_TRUE(frames::decode(decoder, bytes("MA,IN,0,VER\n")).empty());
    auto answer = decoder.takeAnswer();
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->kind, Answer::Kind::identity);
    EXPECT_EQ(answer->text, "MA,IN,0,VER");
    EXPECT_FALSE(decoder.takeAnswer()); // once
    EXPECT_TRUE(frames::decode(decoder, bytes("-350,\"Queue overflow\"\r\n")).empty());
    answer = decoder.takeAnswer();
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->kind, Answer::Kind::error);
    EXPECT_EQ(answer->code, -350);
    EXPECT_TRUE(frames::decode(decoder, bytes("+0,\"No error\"\n")).empty());
    answer = decoder.takeAnswer();
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->code, 0);
    EXPECT_EQ(decoder.droppedBytes(), 0u);
}

TEST(ScpiDecoder, TakesSeveralReadingsInOneReply) {
    const auto out = frames::decode(FrameKind::scpi, bytes("+4.1E+00,+4.2E+00;4.3\n"));
    ASSERT_EQ(out.size(), 3u);
    EXPECT_EQ(out[2].volts_V, 4.3);
}

} // namespace stillwire
