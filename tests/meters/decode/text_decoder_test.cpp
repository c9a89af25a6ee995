// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/meters/decode/frames.hpp"

#include <gtest/gtest.h>

namespace stillwire {

using frames::bytes;
using frames::one;

namespace {

Reading text(std::string_view line) { return one(FrameKind::text, line); }

std::vector<Reading> byPattern(const char* pattern, std::string_view lines, bool decimalComma = false) {
    auto compiled = LinePattern::compile(pattern);
    EXPECT_TRUE(compiled.ok());
    TextDecoder decoder(std::move(compiled.value()), decimalComma);
    return frames::decode(decoder, bytes(lines));
}

} // namespace

TEST(TextDecoder, ReadsTheFirstNumberWithItsUnit) {
    EXPECT_EQ(text("4.123").volts_V, 4.123);
    EXPECT_EQ(text("+4.123 V DC").volts_V, 4.123);
    EXPECT_EQ(text("DC -0.004V").volts_V, -0.004);
    EXPECT_EQ(text("412.3 mV").volts_V, 0.4123);
    EXPECT_EQ(text("412.3mVDC").volts_V, 0.4123);
    EXPECT_EQ(text("0.0041 kV").volts_V, 4.1);
    EXPECT_EQ(text("CH1 4.123 V").volts_V, 4.123);
    EXPECT_EQ(text("4.1234E+00;VDC").volts_V, 4.1234);
}

TEST(TextDecoder, ReadsMicroInAllItsSpellings) {
    for (const char* micro : {"u", "\xC2\xB5", "\xCE\xBC", "\xB5"})
        EXPECT_EQ(text(std::string("512 ") + micro + "V").volts_V, 0.000512) << micro;
}

TEST(TextDecoder, NeverTakesAnotherUnitForVolts) {
    for (const char* line : {"4.123 V AC", "4.123 VAC", "4.123 kOhm", "4.123 \xE2\x84\xA6", "4.123 mA", "50.0 Hz",
                             "AC 4.123 V", "4.123 V REL",
                             "21 \xC2\xB0"
                             "C"}) {
        const Reading reading = text(line);
        EXPECT_FALSE(reading.hasNumber()) << line;
        EXPECT_TRUE(reading.flags.has(Flag::unit)) << line;
    }
    for (const char* line : {"4.123 zork", "4.123MV", "hello", "4.124.123 V", "12:30", "999999999 V"}) {
        TextDecoder decoder(std::nullopt, false);
        const auto out = frames::decode(decoder, bytes(std::string(line) + "\n"));
        if (std::string_view(line) == "12:30") continue; // two numbers: the first is taken, a pattern says otherwise
        EXPECT_TRUE(out.empty()) << line;
        EXPECT_EQ(decoder.droppedBytes(), std::string_view(line).size());
        EXPECT_FALSE(decoder.lastComplaint().empty());
    }
}

TEST(TextDecoder, SaysWhyItIsNotDcVolts) {
    const auto because = [](const char* line) {
        TextDecoder decoder(std::nullopt, false);
        const auto out = frames::decode(decoder, bytes(std::string(line) + "\n"));
        EXPECT_EQ(out.size(), 1u) << line;
        EXPECT_TRUE(out.empty() || (out[0].flags.has(Flag::unit) && !out[0].hasNumber())) << line;
        return decoder.notVolts();
    };
    EXPECT_EQ(because("4.123 V LoZ"), NotVolts::lowImpedance);
    EXPECT_EQ(because("REL 0.004 V DC"), NotVolts::relative);
    EXPECT_EQ(because("4.123 V AC"), NotVolts::alternating);
    EXPECT_EQ(because("4.123 kOhm"), NotVolts::unsaid);
}

TEST(TextDecoder, OverloadIsNoNumber) {
    for (const char* line : {"OL", "O.L V DC", "-OL V", "0L", "0.L V", "OVLD"}) {
        const Reading reading = text(line);
        EXPECT_FALSE(reading.hasNumber()) << line;
        EXPECT_EQ(reading.flags, ReadingFlags(Flag::overload)) << line;
    }
    EXPECT_EQ(text("OL kOhm").flags, ReadingFlags(Flag::unit));
}

TEST(TextDecoder, KeepsTheStateWords) {
    const Reading reading = text("4.123 V DC HOLD AUTO LOBAT");
    EXPECT_EQ(reading.volts_V, 4.123);
    EXPECT_EQ(reading.flags, ReadingFlags(Flag::hold) | Flag::autorange | Flag::lowbat);
}

TEST(TextDecoder, ReadsByThePatternsGroups) {
    const char* pattern = R"(^#\d+ (?P<function>[A-Z]+) (?P<value>\S+) (?P<unit>\S+)(?P<flags>.*)$)";
    const auto out = byPattern(pattern, "#12 DCV 4.123 V HOLD\n#13 OHM 4.123 k\n#14 DCV OL V\n#15 ACV 1 V\n");
    ASSERT_EQ(out.size(), 3u); // "k" alone is no unit: garbage
    EXPECT_EQ(out[0].volts_V, 4.123);
    EXPECT_EQ(out[0].flags, ReadingFlags(Flag::hold));
    EXPECT_EQ(out[1].flags, ReadingFlags(Flag::overload));
    EXPECT_EQ(out[2].flags, ReadingFlags(Flag::unit));
}

TEST(TextDecoder, TakesADecimalCommaOnlyWhereItIsDescribed) {
    TextDecoder comma(std::nullopt, true);
    EXPECT_EQ(frames::decode(comma, bytes("4,123 V\n")).at(0).volts_V, 4.123);
    EXPECT_EQ(byPattern("(?P<value>[-0-9,]+)", "U=4,123\n", true).at(0).volts_V, 4.123);
    EXPECT_TRUE(byPattern("(?P<value>[-0-9,]+)", "U=4,123\n", false).empty());
}

TEST(TextDecoder, DropsALineOver512BytesWhole) {
    TextDecoder decoder(std::nullopt, false);
    const std::string tooLong = "4.5 " + std::string(509, 'x');
    ASSERT_EQ(tooLong.size(), 513u);
    const auto out = frames::decode(decoder, bytes(tooLong + "\n4.123 V\n"));
    ASSERT_EQ(out.size(), 1u);
    EXPECT_EQ(out[0].volts_V, 4.123);
    EXPECT_EQ(decoder.droppedBytes(), 513u);
    const auto longest = frames::decode(decoder, bytes("4.5 V" + std::string(507, ' ') + "\n"));
    EXPECT_EQ(longest.size(), 1u);
}

TEST(TextDecoder, APartialLineWaitsAndATornOneIsSkipped) {
    TextDecoder decoder(std::nullopt, false);
    decoder.beginMidStream();
    EXPECT_TRUE(frames::decode(decoder, bytes("123 V")).empty());
    EXPECT_TRUE(frames::decode(decoder, bytes("\r\n4.12")).empty()); // the tail of 4.123 V is no 123 V
    EXPECT_EQ(frames::decode(decoder, bytes("4 V\n")).at(0).volts_V, 4.124);
    frames::decode(decoder, bytes("9"));
    decoder.reset();
    EXPECT_EQ(frames::decode(decoder, bytes("4.1 V\n")).at(0).volts_V, 4.1);
}

} // namespace stillwire
