// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/decoder.hpp"
#include "meters/decode/encode.hpp"
#include "meters/describe/description.hpp"
#include "tests/support/source_folder.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>

#include <gtest/gtest.h>

namespace stillwire {

namespace {

const std::string kHead =
    "format = 1\nname = \"m\"\ninterval_s = 0.33\n[[range]]\nfull_scale_V = 6.0\nresolution_V = 0.001\n"
    "accuracy_percent = 0.5\naccuracy_counts = 2\n"; // lines 1 to 8

std::string errorOf(const std::string& rest) {
    const auto parsed = parseMeterDescription(kHead + rest, "m.toml");
    return parsed ? std::string("no error") : parsed.error().text();
}

std::string fileText(const std::filesystem::path& path) {
    std::ifstream file(path);
    return {std::istreambuf_iterator<char>(file), {}};
}

} // namespace

TEST(MeterDescription, LinkAndFrameMayBeAbsent) {
    const auto parsed = parseMeterDescription(kHead, "m.toml");
    ASSERT_TRUE(parsed) << parsed.error().text();
    const MeterDescription& description = parsed.value();
    EXPECT_EQ(description.link.baud, 9600);
    EXPECT_EQ(description.link.bits, 8);
    EXPECT_TRUE(description.link.dtr);
    EXPECT_TRUE(description.link.rts);
    EXPECT_EQ(description.frame.kind, FrameKind::text);
    EXPECT_EQ(description.traits.interval_s, 0.33);
}

TEST(MeterDescription, ReadsTheLink) {
    const auto parsed = parseMeterDescription(kHead + R"(
[link]
baud = 2400
bits = 7
parity = "even"
stop_bits = 2
flow = "software"
dtr = true
rts = false
poll_command = "SAY\r"
poll_interval_s = 0.25
start_commands = ["*CLS\n", "CONF:VOLT:DC 10\n"]
leave_commands = ["INIT:CONT OFF\n"]
)",
                                              "m.toml");
    ASSERT_TRUE(parsed) << parsed.error().text();
    const LinkSettings& link = parsed.value().link;
    EXPECT_EQ(link.baud, 2400);
    EXPECT_EQ(link.bits, 7);
    EXPECT_EQ(link.parity, Parity::even);
    EXPECT_EQ(link.stopBits, 2);
    EXPECT_EQ(link.flow, FlowControl::software);
    EXPECT_FALSE(link.rts);
    EXPECT_EQ(link.pollCommand, "SAY\r");
    EXPECT_EQ(link.pollInterval, fromSeconds(0.25));
    EXPECT_EQ(link.startCommands.size(), 2u);
    EXPECT_EQ(link.leaveCommands.size(), 1u);
}

TEST(MeterDescription, PollsAtTheMetersIntervalIfNoneIsGiven) {
    const auto parsed = parseMeterDescription(kHead + "[link]\npoll_command = \"D\"\n", "m.toml");
    ASSERT_TRUE(parsed);
    EXPECT_EQ(parsed.value().link.pollInterval, fromSeconds(0.33));
}

TEST(MeterDescription, APolledScpiMeterIsAskedWhoItIsAndWhatItRefused) {
    const auto link = [](const std::string& rest) {
        const auto parsed = parseMeterDescription(kHead + rest, "m.toml");
        EXPECT_TRUE(parsed);
        return parsed ? parsed.value().link : LinkSettings{};
    };
    const LinkSettings polled = link("[link]\npoll_command = \"READ?\\n\"\n[frame]\nkind = \"scpi\"\n");
    EXPECT_EQ(polled.identifyCommand, "*IDN?\n");
    EXPECT_EQ(polled.errorCommand, "SYST:ERR?\n");
    const LinkSettings told = link("[link]\npoll_command = \"READ?\\n\"\nidentify_command = \"\"\n"
                                   "error_command = \"SYSTEM:ERROR?\\n\"\n[frame]\nkind = \"scpi\"\n");
    EXPECT_EQ(told.identifyCommand, "");
    EXPECT_EQ(told.errorCommand, "SYSTEM:ERROR?\n");
    EXPECT_EQ(link("[link]\nbaud = 9600\n[frame]\nkind = \"scpi\"\n").identifyCommand, ""); // sends by itself
    EXPECT_EQ(link("[link]\npoll_command = \"D\"\n").identifyCommand, "");                  // no scpi
}

TEST(MeterDescription, NamesFileLineAndMend) {
    EXPECT_EQ(errorOf("[link]\nbaud = \"fast\"\n"),
              "m.toml:10: baud is not a whole number in its range; write one from 50 to 4000000");
    EXPECT_EQ(errorOf("[link]\nparity = \"mark\"\n"),
              "m.toml:10: parity is not a word we know; use one of: none, odd, even");
    EXPECT_EQ(errorOf("[link]\ndtr = 1\n"),
              "m.toml:10: dtr is neither true nor false; write true or false, without quotes");
    EXPECT_EQ(errorOf("[frame]\nkind = \"morse\"\n"),
              "m.toml:10: kind is not a word we know; use one of: text, scpi, segments, ascii, polled");
    EXPECT_NE(
        errorOf("[frame]\npattern = '(?P<value>['\n").find("m.toml:10: the pattern is not a regular expression"),
        std::string::npos);
    EXPECT_EQ(errorOf("[frame]\npattern = '[0-9]+'\n"),
              "m.toml:10: the pattern does not say which part is the value; put (?P<value>...) around it");
    EXPECT_EQ(errorOf("[link]\nstart_commands = [1]\n"),
              "m.toml:10: start_commands holds something that is not text; put it in quotes");
    EXPECT_EQ(errorOf("[frame]\nkind = \"ascii\"\n"),
              "m.toml:9: a frame of kind ascii has no layout; add [frame.layout] with length, digits_at and digits");
    EXPECT_NE(errorOf("[frame]\nkind = \"ascii\"\n[frame.layout]\nlength = 5\ndigits_at = 3\ndigits = 4\n")
                  .find("do not lie within"),
              std::string::npos);
}

TEST(MeterDescription, OfEveryKindThatIsShippedSpeaksItsOwnFrames) {
    int count = 0;
    for (const auto& entry : std::filesystem::directory_iterator(test::sourceFile("resources/meters"))) {
        const auto parsed = parseMeterDescription(fileText(entry.path()), entry.path().string());
        ASSERT_TRUE(parsed) << parsed.error().text();
        const auto decoder = makeDecoder(parsed.value());
        for (const double volts_V : {0.0, 0.412, -0.004, 4.123, 5.01}) {
            Reading reading;
            reading.volts_V = volts_V;
            std::vector<Reading> out;
            decoder->push(encodeFrame(parsed.value().frame, reading, 0.001), Time(1), out);
            ASSERT_EQ(out.size(), 1u) << entry.path() << " " << decoder->lastComplaint().english();
            EXPECT_EQ(out[0].volts_V, volts_V) << entry.path();
        }
        ++count;
    }
    EXPECT_EQ(count, 6); // one of each kind, and scpi both ways
}

} // namespace stillwire
