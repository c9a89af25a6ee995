// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/sha256.hpp"
#include "tests/core/capture/collect.hpp"
#include "tests/core/capture/temp_folder.hpp"

#include <sys/stat.h>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

using testing::EndsWith;
using testing::HasSubstr;

const std::string kRows = "0,4.500,,\n0,,,step:cold-start\n1,04.5,,\n1,,,pose:left\n1,4.5,hold,\n2,4.5,,\n";
const std::string kHead = "# format = 1\n# mood = \"good\"\n";

} // namespace

// The three messages of FIPS 180-4's example set (NIST, "SHA-256 example values": "abc", the 448-bit one) and the
// empty one.
TEST(Sha256, AgreesWithThePublishedExamples) {
    const auto sum = [](std::string_view text) {
        Sha256 sha;
        sha.add(text.substr(0, text.size() / 2));
        sha.add(text.substr(text.size() / 2));
        return sha.finish();
    };
    EXPECT_EQ(sum("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    EXPECT_EQ(sum("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
              "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    EXPECT_EQ(sum(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST(CaptureHash, IsOverTheReadingRowsWithLfEnds) {
    const TempFolder folder;
    Sha256 sha;
    sha.add("0,4.500,,\n1,04.5,,\n1,4.5,hold,\n2,4.5,,\n");
    const std::string expected = sha.finish();
    writeFile(folder / "a.csv", kHead + kColumns + kRows);
    std::string windows;
    for (const char c : kColumns + kRows) windows += c == '\n' ? "\r\n" : std::string(1, c);
    writeFile(folder / "b.csv", windows + "3,4."); // no header, other line ends, a torn last line
    EXPECT_EQ(*captureHash(folder / "a.csv"), expected);
    EXPECT_EQ(*captureHash(folder / "b.csv"), expected);
    EXPECT_FALSE(captureHash(folder / "none.csv").ok());
}

TEST(RewriteMarks, TheSameMarksLeaveTheRowsAsTheyAre) {
    const TempFolder folder;
    const std::string path = folder / "a.csv";
    writeFile(path, kHead + kColumns + kRows);
    ASSERT_TRUE(rewriteMarks(path, loadCapture(path)->marks).ok());
    EXPECT_THAT(readFile(path), EndsWith(kColumns + kRows));
}

TEST(RewriteMarks, KeepsReadingsByteForByteAndOldMarksInTheHeader) {
    const TempFolder folder;
    const std::string path = folder / "a.csv";
    writeFile(path, kHead + kColumns + kRows);
    ASSERT_EQ(::chmod(path.c_str(), 0640), 0);
    const std::string hash = *captureHash(path);
    const std::vector<Mark> marks = {
        {Time(1'500'000), "pose:right"}, {Time(1'000'000), "note:a, b"}, {Time(0), "step:cold-start"}};
    ASSERT_TRUE(rewriteMarks(path, marks).ok());
    EXPECT_THAT(readFile(path), EndsWith("0,4.500,,\n0,,,step:cold-start\n1,04.5,,\n1,4.5,hold,\n1,,,\"note:a, b\"\n"
                                         "1.5,,,pose:right\n2,4.5,,\n"));
    EXPECT_EQ(*captureHash(path), hash);
    ASSERT_TRUE(rewriteMarks(path, {}).ok());
    auto capture = loadCapture(path);
    ASSERT_TRUE(capture.ok()) << capture.error().text();
    EXPECT_TRUE(capture->marks.empty());
    EXPECT_THAT(capture->header.other, HasSubstr("mood = \"good\""));
    EXPECT_THAT(capture->header.other, HasSubstr("old_marks = [[\"0 step:cold-start\", \"1 pose:left\"], "
                                                 "[\"0 step:cold-start\", \"1 note:a, b\", \"1.5 pose:right\"]]"));
    struct stat about {};
    ASSERT_EQ(::stat(path.c_str(), &about), 0);
    EXPECT_EQ(about.st_mode & 0777, 0640U);
    std::size_t files = 0;
    for ([[maybe_unused]] const auto& entry : std::filesystem::directory_iterator(folder / "")) ++files;
    EXPECT_EQ(files, 1U);
}

TEST(RewriteMarks, WritesMarksIntoTheColumnsThatTheFileHas) {
    const TempFolder folder;
    writeFile(folder / "a.csv", "volts,time_s\n4.5,0\n4.4,2\n");
    ASSERT_TRUE(rewriteMarks(folder / "a.csv", {{Time(1'000'000), "gap"}}).ok());
    EXPECT_THAT(readFile(folder / "a.csv"), EndsWith("volts,time_s,mark\n4.5,0\n,1,gap\n4.4,2\n"));
    EXPECT_EQ(collect(readFile(folder / "a.csv")).text, "0 4.5|1 gap|2 4.4|");
}

TEST(RewriteMarks, LeavesForeignAndMissingFilesAlone) {
    const TempFolder folder;
    writeFile(folder / "a.csv", "Time;Voltage\n0;1\n");
    EXPECT_FALSE(rewriteMarks(folder / "a.csv", {}).ok());
    EXPECT_EQ(readFile(folder / "a.csv"), "Time;Voltage\n0;1\n");
    EXPECT_FALSE(rewriteMarks(folder / "none.csv", {}).ok());
}

TEST(ReadCapture, ReadsFilesAcrossBlockBordersAsItReadsMemory) {
    const TempFolder folder;
    std::string text = "# notes = \"x\"\n" + std::string(kColumns);
    for (int i = 0; i < 60'000; ++i) {
        text += formatRow(Reading{Time(i * std::int64_t{330'001}), 4.0 + (i % 997) * 0.001,
                                  i % 50 == 0 ? ReadingFlags(Flag::hold) : ReadingFlags()});
        if (i % 700 == 0)
            text += formatRow(Mark{Time(i * std::int64_t{330'001}), "note:line\nbreak " + std::to_string(i)});
    }
    writeFile(folder / "a.csv", text);
    Collected fromFile;
    ASSERT_TRUE(readCapture(folder / "a.csv", fromFile).ok());
    const auto fromMemory = collect(text);
    ASSERT_EQ(fromMemory.error, "");
    EXPECT_TRUE(fromFile.text == fromMemory.text);
    EXPECT_THAT(readCapture(folder / "", fromFile).error().text(), HasSubstr("is a folder"));
    EXPECT_THAT(readCapture(folder / "none", fromFile).error().text(), HasSubstr("no such file"));
    writeFile(folder / "empty", "");
    EXPECT_THAT(readCapture(folder / "empty", fromFile).error().text(), HasSubstr("empty"));
}

} // namespace stillwire
