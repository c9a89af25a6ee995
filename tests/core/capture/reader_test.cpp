// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/reader.hpp"
#include "tests/core/capture/collect.hpp"
#include "tests/core/capture/temp_folder.hpp"

#include <algorithm>
#include <cstdlib>
#include <random>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

using testing::HasSubstr;

const std::string kColumnLine = "time_s,volts,flags,mark\n";

} // namespace

TEST(Reader, ReadsReadingsFlagsAndMarksInOrder) {
    const auto read = collect("# format = 1\n# probe = \"controller-side\"\n" + kColumnLine +
                              "0,4.5,,\n0.33,4.497,hold lowbat,\n0.33,,,step:reference\n0.5,,overload,\n"
                              "1,,,\"note:said \"\"no\"\", then left\"\n1.25,-0.001,,\n");
    ASSERT_EQ(read.error, "");
    EXPECT_EQ(read.header.probe, ProbeSide::controllerSide);
    EXPECT_EQ(read.text, "0 4.5|0.33 4.497 hold lowbat|0.33 step:reference|0.5 - overload|"
                         "1 note:said \"no\", then left|1.25 -0.001|");
    EXPECT_EQ(read.summary.rows, 6U);
    EXPECT_FALSE(read.summary.imported);
    EXPECT_TRUE(read.summary.warnings.empty());
}

TEST(Reader, HeaderIsOptionalAndSoAreFlagsMarkAndOrder) {
    EXPECT_EQ(collect("time_s,volts\n0,1\n1,2\n").text, "0 1|1 2|");
    EXPECT_EQ(collect("mark,extra,volts,time_s\n,7,1,0\npose:left,,,0.5\n").text, "0 1|0.5 pose:left|");
    EXPECT_EQ(collect("\xEF\xBB\xBFtime_s,volts,flags,mark\r\n0,1,,\r\n1,2,,\r\n").text, "0 1|1 2|");
    EXPECT_EQ(collect("time_s,volts,flags,mark\n0,1\n\n1,2,hold\n").text, "0 1|1 2 hold|");
}

TEST(Reader, EmptyVoltsWithoutAKnownFlagIsAReadingWithoutANumber) {
    EXPECT_EQ(collect(kColumnLine + "0,,,\n1,,sparkle,\n2,,ref,\n").text, "0 - unit|1 - unit|2 - ref|");
}

TEST(Reader, AMarkInAReadingsOwnRowKeepsTheReading) {
    EXPECT_EQ(collect(kColumnLine + "0,4.5,,gap\n").text, "0 gap|0 4.5|");
}

TEST(Reader, ColumnsWithoutReadingsAreFine) {
    EXPECT_EQ(collect(kColumnLine).error, "");
    EXPECT_EQ(collect(kColumnLine).summary.rows, 0U);
}

TEST(Reader, DropsATornLastLineAndSaysSo) {
    const auto read = collect(kColumnLine + "0,4.5,,\n0.33,4.49");
    EXPECT_EQ(read.text, "0 4.5|");
    ASSERT_EQ(read.summary.warnings.size(), 1U);
    EXPECT_THAT(read.summary.warnings[0].english(), HasSubstr("line 3"));
    const auto note = collect(kColumnLine + "0,4.5,,\n1,,,\"note:half a\nnote");
    EXPECT_EQ(note.text, "0 4.5|");
    EXPECT_EQ(note.summary.warnings.size(), 1U);
}

TEST(Reader, AQuoteThatIsNeverClosedDoesNotSwallowTheRest) {
    std::string text = kColumnLine + "0,,,\"note:x\n";
    for (int i = 0; i < 50; ++i) text += std::to_string(i) + ",1,,\n";
    EXPECT_THAT(collect(text).error, HasSubstr("test.csv:2: a quote opens here"));
}

TEST(Reader, TimesThatGoBackAreAnErrorAndEqualOnesAreNot) {
    EXPECT_EQ(collect(kColumnLine + "1,1,,\n1,2,,\n").text, "1 1|1 2|");
    EXPECT_EQ(collect("# notes = \"a\"\n" + kColumnLine + "3.2,1,,\n1.1,2,,\n").error,
              "test.csv:4: times go back from 3.2 s to 1.1 s; remove the row or split the file there");
    EXPECT_THAT(collect(kColumnLine + "3.2,1,,\n1.1,,,gap\n").error, HasSubstr("times go back"));
    EXPECT_THAT(collect(kColumnLine + "-1,1,,\n").error, HasSubstr("negative"));
    // The rows before it were handed on.
    EXPECT_EQ(collect(kColumnLine + "1,1,,\n0,2,,\n").text, "1 1|");
}

TEST(Reader, RefusesVoltsThatAreNoNumber) {
    for (const char* volts :
         {"OL", "nan", "inf", "-inf", "1e999", "4.5x", "0x10", "--4", "4,5", "1e7", "4.5 V", "٤"}) {
        const auto read = collect(kColumnLine + "0,1,,\n1,\"" + volts + "\",,\n");
        EXPECT_THAT(read.error, HasSubstr("test.csv:3: ")) << volts;
    }
}

TEST(Reader, RefusesTimesThatAreNone) {
    for (const char* time : {"", "x", "nan", "inf", "1e30", "1:00"}) {
        EXPECT_THAT(collect(kColumnLine + time + ",1,,\n").error, HasSubstr("test.csv:2: ")) << time;
    }
}

TEST(Reader, TakesNumbersInEveryForm) {
    EXPECT_EQ(collect(kColumnLine + "+0.5,+4.5,,\n1e0,45e-1,,\n 1.5 , 4.5 ,,\n2.,4.,,\n3,.5,,\n").text,
              "0.5 4.5|1 4.5|1.5 4.5|2 4|3 0.5|");
    EXPECT_EQ(collect(kColumnLine + "1.00000049,1,,\n1.0000005,1,,\n").text, "1 1|1.000001 1|");
}

TEST(Reader, RefusesFilesThatAreNoCapture) {
    EXPECT_THAT(collect("").error, HasSubstr("empty"));
    EXPECT_THAT(collect(std::string("\x7f"
                                    "ELF\x02\0\0\x01",
                                    8))
                    .error,
                HasSubstr("not a text file"));
    EXPECT_THAT(collect(std::string("\xFF\xFEt\0i\0m\0e\0", 10)).error, HasSubstr("no volts column"));
    EXPECT_THAT(collect("apples,pears\n1,2\n").error, HasSubstr("no time and volts columns"));
    EXPECT_THAT(collect("# format = 1\n").error, HasSubstr("no time and volts columns"));
}

TEST(Reader, BoundsTheLengthOfARow) {
    EXPECT_THAT(collect(kColumnLine + "0,1,,\n1,,,note:" + std::string(100'000, 'x') + "\n").error,
                HasSubstr("test.csv:3: a row is longer"));
}

TEST(Reader, ALongLineWhereColumnsShouldBeIsNoWorkToRefuse) {
    EXPECT_THAT(collect(std::string(50'000'000, ',') + "\n").error, HasSubstr("no time and volts columns"));
}

TEST(Reader, ReadsANewerFormatWithAWarning) {
    const auto read = collect("# format = 7\n# probe = \"on-the-moon\"\n" + kColumnLine + "0,1,,\n");
    EXPECT_EQ(read.error, "");
    EXPECT_EQ(read.text, "0 1|");
    ASSERT_EQ(read.summary.warnings.size(), 1U);
    EXPECT_THAT(read.summary.warnings[0].english(), HasSubstr("format 7 is newer"));
}

TEST(Reader, NamesTheLineOfABrokenHeader) {
    EXPECT_THAT(collect("# format = 1\n# notes = nope\n" + kColumnLine).error,
                HasSubstr("test.csv:2: header: not TOML"));
    EXPECT_THAT(collect("# [sheet]\n# format = 2\n# name = \"x\"\n" + kColumnLine).error,
                HasSubstr("test.csv:2: sheet: format 2 is newer than this program reads (1)"));
}

TEST(Reader, TakesProseBehindHashesAsNotes) {
    const auto read = collect("# logged on a cold morning\n# by the ramp\n" + kColumnLine + "0,1,,\n");
    EXPECT_EQ(read.error, "");
    EXPECT_EQ(read.header.notes, "logged on a cold morning\nby the ramp");
    EXPECT_EQ(read.summary.warnings.size(), 1U);
}

// The plain way and the slow way must agree to the last bit with the C library.
TEST(Reader, EveryFormOfANumberGivesTheNearestDouble) {
    std::mt19937_64 random(20260301);
    std::string text = kColumnLine;
    std::vector<std::string> written;
    for (int i = 0; i < 50'000; ++i) {
        std::string volts = std::to_string(random() % (std::uint64_t{1} << (random() % 17)));
        const auto decimals = random() % 14;
        if (decimals > 0) volts += ".";
        for (std::uint64_t d = 0; d < decimals; ++d) volts += static_cast<char>('0' + random() % 10);
        if (random() % 4 == 0) volts = "-" + volts;
        written.push_back(volts);
        text += std::to_string(i) + "," + volts + (i % 2 == 0 ? ",,\n" : ",hold,\n");
    }
    struct Sink : RowSink {
        std::vector<double> volts;
        void reading(const Reading& r) override { volts.push_back(r.volts_V); }
        void mark(const Mark&) override {}
    } sink;
    ASSERT_TRUE(readCaptureText(text, "random", sink).ok());
    ASSERT_EQ(sink.volts.size(), written.size());
    for (std::size_t i = 0; i < written.size(); ++i) {
        EXPECT_EQ(sink.volts[i], std::strtod(written[i].c_str(), nullptr)) << written[i];
    }
}

TEST(Reader, TellsHowFarItIsAndCanBeGivenUp) {
    const TempFolder folder;
    const std::string path = folder / "long.csv";
    std::string bytes = kColumnLine;
    for (int i = 0; i < 60'000; ++i) bytes += std::to_string(i) + ",4.5,,\n";
    writeFile(path, bytes);
    std::vector<std::uint64_t> told;
    ImportOptions options;
    options.told = [&](std::uint64_t read) {
        told.push_back(read);
        return true;
    };
    ASSERT_TRUE(loadCapture(path, options));
    ASSERT_GE(told.size(), 3U);
    EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
    EXPECT_LT(told.front(), bytes.size());
    EXPECT_EQ(told.back(), bytes.size());

    options.told = [](std::uint64_t read) { return read < 300'000; };
    const auto given = loadCapture(path, options);
    ASSERT_FALSE(given);
    EXPECT_THAT(given.error().text(), HasSubstr("given up"));
}

} // namespace stillwire
