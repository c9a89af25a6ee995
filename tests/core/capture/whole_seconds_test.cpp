// SPDX-License-Identifier: GPL-3.0-or-later
// A logger that writes whole seconds and reads several times in each.
#include "core/capture/whole_seconds.hpp"
#include "tests/core/capture/collect.hpp"
#include "tests/core/capture/temp_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

constexpr const char* kSaid = "times are whole seconds: readings spread evenly within each";

// One reading for each of these whole seconds, as another program logs them.
Read logged(const std::vector<int>& seconds, const std::string& columns = "Elapsed (s),Voltage (V)") {
    std::string bytes = columns + "\n";
    for (const int second : seconds) bytes += std::to_string(second) + ",4\n";
    const Read read = collect(bytes);
    EXPECT_EQ(read.error, "");
    return read;
}
std::string timesOf(const std::vector<int>& seconds) {
    const Read read = logged(seconds);
    std::string times;
    for (std::size_t at = 0; at < read.text.size(); at = read.text.find('|', at) + 1)
        times += (at > 0 ? " " : "") + read.text.substr(at, read.text.find(' ', at) - at);
    return times;
}
std::string endOf(const Read& read) { return read.text.substr(read.text.size() - 65); }
bool said(const Read& read) {
    return read.header.assumed.size() == 1 && read.header.assumed.front().english() == kSaid;
}

} // namespace

TEST(WholeSeconds, AreSpreadEvenlyWithinEach) {
    EXPECT_EQ(timesOf({10, 10, 11, 11, 12, 12}), "0 0.5 1 1.5 2 2.5");
    EXPECT_EQ(timesOf({0, 0, 0, 1, 1, 2, 2, 2, 2}), "0 0.333333 0.666667 1 1.5 2 2.25 2.5 2.75");
    EXPECT_TRUE(said(logged({0, 0, 0, 1, 1, 1})));
}

TEST(WholeSeconds, AFirstOrLastSecondThatIsPartialIsNotStretched) {
    // One reading of three: the last third of its second.
    EXPECT_EQ(timesOf({7, 8, 8, 8, 9, 9, 9}), "0 0.333333 0.666666 1 1.333333 1.666666 2");
    EXPECT_EQ(timesOf({7, 7, 8, 8, 8, 8}), "0 0.25 0.5 0.75 1 1.25");
    EXPECT_EQ(timesOf({0, 0, 0, 0, 1, 1, 1, 1, 2}), "0 0.25 0.5 0.75 1 1.25 1.5 1.75 2");
    EXPECT_EQ(timesOf({0, 0, 0, 0, 1, 1}), "0 0.25 0.5 0.75 1 1.25");
    EXPECT_EQ(timesOf({5, 5, 5, 5}), "0 0.25 0.5 0.75"); // the only one: nothing tells
}

TEST(WholeSeconds, OneReadingASecondStaysAsItIs) {
    EXPECT_EQ(timesOf({3, 4, 5, 7}), "0 1 2 4");
    EXPECT_TRUE(logged({3, 4, 5, 7}).header.assumed.empty());
}

TEST(WholeSeconds, ABurstIsSpreadInItsOwnSecondOnly) {
    EXPECT_EQ(timesOf({0, 0, 5, 5, 5, 5, 10, 10}), "0 0.25 4.5 4.75 5 5.25 9.5 9.75");
    EXPECT_EQ(timesOf({0, 1, 1, 2, 3}), "0 0.5 1 1.5 2.5");
}

TEST(WholeSeconds, SharedTimesWithAFractionAreLeftAsWritten) {
    const Read read = collect("Elapsed (s),Voltage (V)\n0,4\n0,4\n0.5,4\n1,4\n1,4\n");
    EXPECT_EQ(read.text, "0 4|0 4|0.5 4|1 4|1 4|");
    EXPECT_TRUE(read.header.assumed.empty());
}

TEST(WholeSeconds, ASecondWithAFractionAfterMuchThatHadNoneIsLeftAsWritten) {
    std::string bytes = "Elapsed (s),Voltage (V)\n";
    for (int i = 0; i < 40000; ++i) bytes += std::to_string(i / 2) + ",4\n";
    const Read read = collect(bytes + "20000,4\n20000,4\n20000.25,4\n20001,4\n20001,4\n");
    EXPECT_EQ(endOf(read).substr(1), "|19999 4|19999.5 4|20000 4|20000 4|20000.25 4|20001 4|20001.5 4|");
    EXPECT_TRUE(said(read));
}

TEST(WholeSeconds, TimesOfDayAreSpreadToo) {
    const Read read = collect("Date,Time,Voltage (V)\n2026-03-01,23:59:59,1\n2026-03-01,23:59:59,2\n"
                              "2026-03-02,00:00:00,3\n2026-03-02,00:00:00,4\n");
    EXPECT_EQ(read.text, "0 1|0.5 2|1 3|1.5 4|");
}

TEST(WholeSeconds, ACaptureThatShowsTheSameKeepsItsStartAndItsMarksInPlace) {
    const std::string columns = "time_s,volts,flags,mark\n";
    const std::string later = "10,4,,\n10,4,,\n10,4,,\n11,4,,\n11,4,,\n";
    const Read read = collect(columns +
                              "6,,,key:on\n7,4,,\n8,4,,\n8,,,pose:left\n8,4,,\n8,4,,\n"
                              "8.9,,,pose:right\n9,4,,\n9,4,,\n9,,,pose:left\n9,4,,\n" +
                              later);
    EXPECT_THAT(read.text,
                testing::StartsWith("6 key:on|7.666667 4|8 4|8 pose:left|8.333333 4|8.666667 4|8.9 pose:right|"
                                    "9 4|9.333333 4|9.333333 pose:left|9.666667 4|10 4|"));
    EXPECT_TRUE(said(read));
    const Read fine = collect(columns + "8,4,,\n8,4,,\n9.000001,4,,\n" + later);
    EXPECT_THAT(fine.text, testing::StartsWith("8 4|8 4|9.000001 4|10 4|10 4|10 4|"));
    EXPECT_TRUE(fine.header.assumed.empty());
    EXPECT_TRUE(collect(columns + "1,4,,\n1,4,,\n").header.assumed.empty()); // too few to tell
}

TEST(WholeSeconds, MarksOfSuchACaptureCanBeRewritten) {
    const TempFolder folder;
    const std::string path = folder / "a.csv";
    std::string rows;
    for (int i = 0; i < 12; ++i) rows += std::to_string(i / 3) + ",4,,\n" + (i == 4 ? "1,,,pose:left\n" : "");
    writeFile(path, kColumns + rows);
    auto capture = loadCapture(path);
    ASSERT_TRUE(capture);
    EXPECT_EQ(capture->marks.at(0).time, Time(1'333'333));
    ASSERT_TRUE(rewriteMarks(path, capture->marks).ok());
    EXPECT_THAT(readFile(path), testing::EndsWith(kColumns + rows));
}

TEST(WholeSeconds, MoreThanIsKeptOfOneSecondIsLeftAsWritten) {
    const std::size_t many = SecondSpreader::kMost + 10;
    std::string bytes = "Elapsed (s),Voltage (V)\n0,1\n0,1\n";
    for (std::size_t i = 0; i < many; ++i) bytes += "1,2\n";
    const Read read = collect(bytes + "2,3\n2,3\n");
    EXPECT_EQ(std::count(read.text.begin(), read.text.end(), '|'), static_cast<std::ptrdiff_t>(many + 4));
    EXPECT_EQ(read.text.substr(0, 18), "0 1|0.5 1|1 2|1 2|");
    EXPECT_EQ(endOf(read).substr(46), "|1 2|1 2|2 3|2.5 3|");
}

} // namespace stillwire
