// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/header.hpp"
#include "tests/core/capture/collect.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

using testing::HasSubstr;

const std::string kSheet =
    "format = 1\nname = \"pedal\"\nmine = \"kept\"\n[reference]\nnominal_V = 5.0\nmin_V = 4.75\nmax_V = 5.25\n"
    "[ground]\nmax_drop_V = 0.1\n[[position]]\nname = \"a\"\nmin_V = 1.0\nmax_V = 2.0\n"
    "[[position]]\nname = \"b\"\nmin_V = 3.0\nmax_V = 4.0\n";
const std::string kMeter =
    "format = 1\nname = \"logger\"\ninterval_s = 0.33\n[[range]]\nfull_scale_V = 6.0\nresolution_V = 0.001\n"
    "[link]\nbaud = 9600\n[frame]\nkind = \"text\"\npattern = '\\d+'\n";

CaptureHeader whole() {
    CaptureHeader header;
    header.started = "2026-03-01T10:00:00+01:00";
    header.notes = "cold \"start\"\nsecond line";
    header.probe = ProbeSide::controllerSide;
    header.black = BlackLead::sensorGround;
    header.sections = {"connector", "wire \"by the hinge\"", "controller"};
    header.sheet = std::move(*parseSheet(kSheet, "sheet"));
    header.meter = std::move(*parseMeterTraits(kMeter, "meter"));
    header.other =
        "mood = \"good\"\nold_marks = [[\"12.5 pose:left\"]]\n[extra]\nx = 1\n[extra.deep]\ny = 2026-01-01\n";
    return header;
}

// What a header says, in one text.
std::string said(const CaptureHeader& h) {
    std::string sections;
    for (const std::string& name : h.sections) sections += name + ";";
    return sections + std::to_string(h.format) + h.started + h.notes + std::to_string(static_cast<int>(h.probe)) +
           std::to_string(static_cast<int>(h.black)) + h.other + (h.sheet ? h.sheet->toml : "-") +
           (h.meter ? h.meter->toml : "-");
}

CaptureHeader throughAFile(const CaptureHeader& header) {
    const auto read = collect(formatHeader(header) + kColumns);
    EXPECT_EQ(read.error, "");
    return read.header;
}

} // namespace

TEST(Header, EveryLineIsBehindAHash) {
    const std::string text = formatHeader(whole());
    EXPECT_EQ(text.back(), '\n');
    for (std::size_t at = 0; at < text.size(); at = text.find('\n', at) + 1) EXPECT_EQ(text[at], '#');
    EXPECT_THAT(text, HasSubstr("# started = 2026-03-01T10:00:00+01:00\n"));
    EXPECT_THAT(text, HasSubstr("# [sheet]\n"));
    EXPECT_THAT(text, HasSubstr("# [[sheet.position]]\n"));
    EXPECT_THAT(text, HasSubstr("# [[meter.range]]\n"));
    EXPECT_THAT(text, HasSubstr("# [meter.frame]\n"));
}

TEST(Header, ReadsBackWhole) {
    const CaptureHeader once = throughAFile(whole());
    EXPECT_EQ(said(throughAFile(once)), said(once));
    EXPECT_EQ(once.started, whole().started);
    EXPECT_EQ(once.notes, whole().notes);
    EXPECT_EQ(once.probe, ProbeSide::controllerSide);
    EXPECT_EQ(once.black, BlackLead::sensorGround);
    EXPECT_EQ(once.other, whole().other);
    ASSERT_TRUE(once.sheet && once.meter);
    EXPECT_EQ(once.sheet->positions.size(), 2U);
    EXPECT_THAT(once.sheet->toml, HasSubstr("mine = \"kept\""));
    EXPECT_THAT(once.meter->toml, HasSubstr("baud = 9600"));
    // The kept text is a sheet of its own again.
    EXPECT_TRUE(parseSheet(once.sheet->toml, "again").ok());
}

TEST(Header, KeepsTheMeterOnTheReference) {
    CaptureHeader header = whole();
    header.referenceMeter = std::move(*parseMeterTraits(kMeter, "second"));
    header.referenceMeter->toml.replace(header.referenceMeter->toml.find("0.33"), 4, "0.25");
    const CaptureHeader once = throughAFile(header);
    ASSERT_TRUE(once.meter && once.referenceMeter);
    EXPECT_EQ(once.meter->interval_s, 0.33);
    EXPECT_EQ(once.referenceMeter->interval_s, 0.25);
    EXPECT_EQ(formatHeader(throughAFile(once)), formatHeader(once));
    EXPECT_FALSE(throughAFile(whole()).referenceMeter);
}

TEST(Header, WritesSheetsThatWereMadeInCode) {
    CaptureHeader header = whole();
    header.sheet->toml.clear();
    header.meter->toml.clear();
    const CaptureHeader once = throughAFile(header);
    ASSERT_TRUE(once.sheet && once.meter);
    EXPECT_EQ(once.sheet->positions[1].window.max_V, 4.0);
    EXPECT_EQ(once.meter->ranges[0].resolution_V, 0.001);
}

TEST(Header, AStartThatIsNoDateIsKeptAsText) {
    CaptureHeader header;
    header.started = "yesterday\nx = 1";
    EXPECT_EQ(throughAFile(header).started, "yesterday\nx = 1");
    EXPECT_EQ(throughAFile(CaptureHeader{}).started, "");
}

TEST(Header, RefusesSectionsThatAreNoNames) {
    for (const char* wrong : {"sections = 3", "sections = [1, 2]", "sections = [\"\"]"}) {
        const auto read = collect(std::string("# format = 1\n# ") + wrong + "\n" + kColumns);
        EXPECT_NE(read.error.find(":2: header: sections is not a list of names"), std::string::npos) << read.error;
    }
}

TEST(Header, RefusesASideThatItDoesNotKnow) {
    EXPECT_THAT(parseHeader("x = 1\nprobe = \"left\"\n", "a.csv", 3).error().text(),
                HasSubstr("a.csv:4: header: probe"));
    EXPECT_THAT(parseHeader("black = 5\n", "a.csv").error().text(), HasSubstr("a.csv:1: header: black"));
    EXPECT_THAT(parseHeader("sheet = 5\n", "a.csv").error().text(), HasSubstr("sheet is not a table"));
    EXPECT_THAT(parseHeader("format = \"1\"\n", "a.csv").error().text(), HasSubstr("format is not a number"));
    EXPECT_TRUE(parseHeader("", "a.csv").ok());
}

} // namespace stillwire
