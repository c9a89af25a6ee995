// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/date_time.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

std::int64_t seconds(const char* text, bool dayFirst = false) {
    const auto moment = parseMoment(text, dayFirst ? DateOrder::dayMonthYear : DateOrder::monthDayYear);
    return moment ? moment->time.count() / 1'000'000 : -1;
}

} // namespace

TEST(DateTime, AgreesWithKnownMoments) {
    // RFC 3339, section 5.8, and the second billion of POSIX time (2001-09-09T01:46:40Z), a widely known figure.
    EXPECT_EQ(parseMoment("1985-04-12T23:20:50.52Z", DateOrder::dayMonthYear)->time.count(), 482'196'050'520'000);
    EXPECT_EQ(seconds("1996-12-19T16:39:57-08:00"), seconds("1996-12-20T00:39:57Z"));
    EXPECT_EQ(seconds("2001-09-09T01:46:40Z"), 1'000'000'000);
    EXPECT_EQ(seconds("2001-09-09 01:46:40"), 1'000'000'000);
    EXPECT_EQ(seconds("09.09.2001 1:46:40"), 1'000'000'000);
    EXPECT_EQ(seconds("9/8/2001 12:00:00 AM"), seconds("2001-09-08"));
    EXPECT_EQ(seconds("9/8/2001", true), seconds("2001-08-09"));
    EXPECT_EQ(seconds("2001-09-09T01:46:40+0530"), 1'000'000'000 - 19'800);
}

TEST(DateTime, RefusesWhatIsNone) {
    for (const char* text :
         {"", "now", "2026-13-01", "2026-02-30", "2026-03-01T", "2026-03-01T10", "10:61:00", "1:2:3:4", "12:30",
          "2026-03-01T10:00:00+1", "1.2", "13/13/2026", "10:00:00 XM", "2026-03-01T25:00:00"}) {
        EXPECT_FALSE(parseMoment(text, DateOrder::dayMonthYear).has_value()) << text;
    }
}

TEST(DateTime, TakesMonthsInLetters) {
    const std::int64_t day = seconds("2025-11-27");
    for (const char* text : {"27-Nov-2025", "27 Nov 2025", "27. November 2025", "Nov 27, 2025", "27 noviembre 2025",
                             "27-nov.-2025", "27/NOV/25"})
        EXPECT_EQ(seconds(text), day) << text;
    EXPECT_EQ(seconds("05-Mrz-2026"), seconds("2026-03-05"));
    EXPECT_EQ(seconds("05 m\xC3\xA4rz 2026"), seconds("2026-03-05"));
    EXPECT_EQ(seconds("05 juin 2026"), seconds("2026-06-05"));
    EXPECT_EQ(seconds("05 juil. 2026"), seconds("2026-07-05"));
    EXPECT_EQ(seconds("05 Foo 2026"), -1);
}

TEST(DateTime, TakesHalvesOfTheDayAndMillisecondsBehindAColon) {
    EXPECT_EQ(seconds("12:00:01 a.m."), 1);
    EXPECT_EQ(seconds("1:00:00 p. m."), 13 * 3600);
    EXPECT_EQ(seconds("13:00:00 p.m."), -1);
    EXPECT_EQ(parseMoment("00:00:01:250", DateOrder::dayMonthYear)->time.count(), 1'250'000);
    EXPECT_FALSE(parseMoment("00:00:01:25", DateOrder::dayMonthYear).has_value());
}

TEST(DateTime, TakesFiguresWithNothingBetween) {
    EXPECT_EQ(parseStamp("20010909014640")->time.count(), 1'000'000'000'000'000);
    EXPECT_EQ(parseStamp("20010909T014640.25")->time.count(), 1'000'000'000'250'000);
    EXPECT_EQ(parseStamp("20010909014640500")->time.count(), 1'000'000'000'500'000);
    EXPECT_EQ(parseStamp("010909014640")->time.count(), 1'000'000'000'000'000);
    EXPECT_EQ(parseClockFigures("100001")->time.count(), 36'001'000'000);
    EXPECT_EQ(parseClockFigures("90001.5")->time.count(), 32'401'500'000);
    for (const char* text : {"", "2001", "20011309014640", "20010909250000", "20010909", "200109090146"})
        EXPECT_FALSE(parseStamp(text).has_value()) << text;
    for (const char* text : {"", "1000", "106101", "100061", "1000000"})
        EXPECT_FALSE(parseClockFigures(text).has_value()) << text;
}

TEST(DateTime, ADateOnlyFitsAnOrderItCanHave) {
    EXPECT_TRUE(parseMoment("13/03/2026", DateOrder::dayMonthYear).has_value());
    EXPECT_FALSE(parseMoment("13/03/2026", DateOrder::monthDayYear).has_value());
    EXPECT_FALSE(parseMoment("13/03/2026", DateOrder::yearMonthDay).has_value());
    EXPECT_EQ(parseMoment("26-03-13", DateOrder::yearMonthDay)->time, parseMoment("2026-03-13", {})->time);
}

} // namespace stillwire
