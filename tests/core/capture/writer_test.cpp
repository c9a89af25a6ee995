// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/writer.hpp"
#include "tests/core/capture/collect.hpp"
#include "tests/core/capture/temp_folder.hpp"

#include <csignal>
#include <cstdlib>
#include <limits>
#include <random>
#include <sys/resource.h>
#include <thread>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {

using testing::HasSubstr;
using testing::StartsWith;

TEST(FormatRow, WritesTheShortestDecimals) {
    EXPECT_EQ(formatRow(Reading{Time(330'000), 4.497, {}}), "0.33,4.497,,\n");
    EXPECT_EQ(formatRow(Reading{Time(0), -0.001, Flag::lowbat | ReadingFlags(Flag::hold)}),
              "0,-0.001,hold lowbat,\n");
    EXPECT_EQ(formatTime(Time(1)), "0.000001");
    EXPECT_EQ(formatTime(Time(3'600'000'000)), "3600");
    EXPECT_EQ(formatVolts(5), "5");
    EXPECT_EQ(formatVolts(-0.0), "0");
    EXPECT_EQ(formatVolts(0.1 + 0.2), "0.30000000000000004");
}

TEST(FormatRow, AReadingWithoutANumberAlwaysSaysWhy) {
    EXPECT_EQ(formatRow(Reading{Time(0), std::numeric_limits<double>::quiet_NaN(), Flag::overload}),
              "0,,overload,\n");
    EXPECT_EQ(formatRow(Reading{}), "0,,unit,\n");
}

TEST(FormatRow, QuotesMarksWhereTheTextNeedsIt) {
    EXPECT_EQ(formatRow(Mark{Time(1'500'000), "pose:left"}), "1.5,,,pose:left\n");
    EXPECT_EQ(formatRow(Mark{Time(0), "note:a, \"b\"\nc"}), "0,,,\"note:a, \"\"b\"\"\nc\"\n");
}

TEST(FormatRow, EveryReadingReadsBackToTheLastDigit) {
    std::mt19937_64 random(5);
    std::uniform_real_distribution<double> exponent(-12, 5.9);
    for (int i = 0; i < 20'000; ++i) {
        const double volts = std::pow(10.0, exponent(random)) * (random() % 2 == 0 ? 1 : -1);
        EXPECT_EQ(std::strtod(formatVolts(volts).c_str(), nullptr), volts);
    }
}

TEST(CaptureWriter, WritesWhatTheReaderReads) {
    const TempFolder folder;
    const std::string path = folder / "a.csv";
    CaptureHeader header;
    header.notes = "two\nlines";
    auto writer = CaptureWriter::create(path, header);
    ASSERT_TRUE(writer.ok()) << writer.error().text();
    EXPECT_TRUE(writer->append(Mark{Time(0), "step:reference"}).ok());
    EXPECT_TRUE(writer->append(Reading{Time(330'000), 5.002, {}}).ok());
    EXPECT_TRUE(writer->append(Mark{Time(330'000), ""}).ok());
    EXPECT_TRUE(writer->sync().ok());
    EXPECT_EQ(writer->pendingBytes(), 0U);
    const auto read = collect(readFile(path));
    EXPECT_EQ(read.text, "0 step:reference|0.33 5.002|");
    EXPECT_EQ(read.header.notes, "two\nlines");
}

TEST(CaptureWriter, NeverOverwrites) {
    const TempFolder folder;
    const std::string path = folder / "a.csv";
    writeFile(path, "precious");
    const auto writer = CaptureWriter::create(path, {});
    ASSERT_FALSE(writer.ok());
    EXPECT_THAT(writer.error().text(), HasSubstr("exists already"));
    EXPECT_EQ(readFile(path), "precious");
    EXPECT_THAT(CaptureWriter::create(folder / "no/such/a.csv", {}).error().text(), HasSubstr("no such"));
}

// The limit on the size of a file stands in for a disk that fills up.
TEST(CaptureWriter, KeepsRowsThatTheDiskRefusesAndWritesThemLater) {
    const TempFolder folder;
    auto writer = CaptureWriter::create(folder / "a.csv", {});
    ASSERT_TRUE(writer.ok());
    const auto old = std::signal(SIGXFSZ, SIG_IGN);
    rlimit before{};
    ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &before), 0);
    rlimit tight = before;
    tight.rlim_cur = readFile(folder / "a.csv").size() + 15; // one row and half of the next
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &tight), 0);
    const Status first = writer->append(Reading{Time(1'000'000), 4.512, {}});
    const Status second = writer->append(Reading{Time(2'000'000), 4.513, {}});
    const Status third = writer->append(Reading{Time(3'000'000), 4.514, {}});
    const std::size_t pending = writer->pendingBytes();
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &before), 0);
    std::signal(SIGXFSZ, old);
    EXPECT_TRUE(first.ok());
    EXPECT_FALSE(second.ok());
    EXPECT_FALSE(third.ok());
    EXPECT_GT(pending, 0U);
    EXPECT_EQ(collect(readFile(folder / "a.csv")).text, "1 4.512|");

    EXPECT_TRUE(writer->append(Reading{Time(4'000'000), 4.515, {}}).ok());
    EXPECT_EQ(writer->pendingBytes(), 0U);
    EXPECT_EQ(collect(readFile(folder / "a.csv")).text, "1 4.512|2 4.513|3 4.514|4 4.515|");
}

TEST(CaptureWriter, RetryFinishesTheHalfRow) {
    const TempFolder folder;
    auto writer = CaptureWriter::create(folder / "a.csv", {});
    ASSERT_TRUE(writer.ok());
    const auto old = std::signal(SIGXFSZ, SIG_IGN);
    rlimit before{};
    ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &before), 0);
    rlimit tight = before;
    tight.rlim_cur = readFile(folder / "a.csv").size() + 5;
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &tight), 0);
    const Status refused = writer->append(Reading{Time(1'000'000), 4.512, {}});
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &before), 0);
    std::signal(SIGXFSZ, old);
    EXPECT_FALSE(refused.ok());
    EXPECT_TRUE(writer->retry().ok());
    EXPECT_EQ(collect(readFile(folder / "a.csv")).text, "1 4.512|");
}

TEST(CaptureWriter, KnowsThatItsFileIsGone) {
    const TempFolder folder;
    const std::string path = folder / "a.csv";
    auto writer = CaptureWriter::create(path, {});
    ASSERT_TRUE(writer.ok());
    EXPECT_TRUE(writer->inPlace().ok());
    ASSERT_EQ(std::remove(path.c_str()), 0);
    EXPECT_THAT(writer->inPlace().error().text(), HasSubstr("is gone; save the capture in another folder"));
    writeFile(path, "somebody else's");
    EXPECT_FALSE(writer->inPlace().ok());
}

TEST(CaptureWriter, SeesThatAnotherProgramCutTheFileShort) {
    const TempFolder folder;
    const std::string path = folder / "a.csv";
    auto writer = CaptureWriter::create(path, {});
    ASSERT_TRUE(writer.ok());
    EXPECT_TRUE(writer->append(Reading{Time(1), 1, {}}).ok());
    EXPECT_TRUE(writer->inPlace().ok());
    std::filesystem::resize_file(path, std::filesystem::file_size(path) - 1);
    EXPECT_THAT(writer->inPlace().error().text(), HasSubstr("another program has cut the file short"));
    EXPECT_TRUE(writer->append(Reading{Time(2), 1, {}}).ok());
    EXPECT_FALSE(writer->inPlace().ok()); // what is written since makes up for nothing
}

TEST(CaptureWriter, SyncsFromAnotherThreadWhileItWrites) {
    const TempFolder folder;
    auto writer = CaptureWriter::create(folder / "a.csv", {});
    ASSERT_TRUE(writer.ok());
    std::atomic<bool> done{false};
    std::atomic<int> failed{0};
    std::thread syncer([&] {
        while (!done) failed += writer->sync().ok() && writer->inPlace().ok() ? 0 : 1;
    });
    for (int i = 1; i <= 20; ++i) EXPECT_TRUE(writer->append(Reading{Time(i), 1, {}}).ok());
    done = true;
    syncer.join();
    EXPECT_EQ(failed, 0);
}

} // namespace stillwire
