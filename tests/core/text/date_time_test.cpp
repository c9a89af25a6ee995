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

} // namespace stillwire
