// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/capture/collect.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

using testing::HasSubstr;

std::string imported(const std::string& bytes, const ImportOptions& options = {}) {
    const auto read = collect(bytes, options);
    EXPECT_EQ(read.error, "");
    EXPECT_TRUE(read.summary.imported);
    return read.text;
}

} // namespace

TEST(Import, CountsTimesFromTheFirstRow) {
    EXPECT_EQ(imported("Time (s),Voltage (V)\n10.5,4.5\n10.83,4.497\n"), "0 4.5|0.33 4.497|");
    EXPECT_EQ(imported("t,u\n-2,1\n-1,2\n"), "0 1|1 2|");
}

TEST(Import, RecognisesUnits) {
    EXPECT_EQ(imported("elapsed [ms],signal [mV]\n0,4500\n330,4497.5\n"), "0 4.5|0.33 4.4975|");
    EXPECT_EQ(imported("time_min,v\n0,1\n0.5,2\n"), "0 1|30 2|");
    EXPECT_EQ(imported("time_us\tvolts\n5\t1\n6\t2\n"), "0 1|0.000001 2|");
    EXPECT_EQ(imported("t/s,U/mV\n0,812.5\n1,-3\n"), "0 0.8125|1 -0.003|");
    EXPECT_EQ(imported("Time,Value,Unit\n0,4.5,V DC\n1,812,mV\n2,55,Ohm\n"), "0 4.5|1 0.812|2 - unit|");
    EXPECT_EQ(imported("Time,Reading\n0,4.5 V\n1,812.5mV\n2,12 V AC\n"), "0 4.5|1 0.8125|2 - unit|");
}

TEST(Import, RecognisesDelimitersAndDecimalCommas) {
    EXPECT_EQ(imported("Zeit;Spannung\n0,0;4,5\n0,33;4,497\n"), "0 4.5|0.33 4.497|");
    EXPECT_EQ(imported("time,voltage\n\"0,5\",\"4,5\"\n\"1,5\",\"4,25\"\n"), "0 4.5|1 4.25|");
    EXPECT_EQ(imported("time|voltage|more\n0|4.5|x\n1|4|y\n"), "0 4.5|1 4|");
    EXPECT_EQ(imported("time;voltage [mV]\n0;\"1.234,5\"\n1;2\n"), "0 1.2345|1 0.002|");
    // Decimal commas between delimiting commas cannot be told apart, and are not guessed at.
    EXPECT_THAT(collect("time,voltage\n0,0,4,5\n0,33,4,497\n").error, HasSubstr("more fields than"));
}

TEST(Import, RecognisesDatesAndTimesOfDay) {
    EXPECT_EQ(imported("timestamp,voltage\n2026-03-01T10:00:00+01:00,1\n2026-03-01T09:00:00.25Z,2\n"), "0 1|0.25 2|");
    EXPECT_EQ(imported("datetime;voltage\n28.02.2026 23:59:59,5;1,5\n01.03.2026 00:00:00,0;2\n"), "0 1.5|0.5 2|");
    EXPECT_EQ(imported("date/time,voltage\n3/1/2026 11:59:59 AM,1\n3/1/2026 12:00:00 PM,2\n"), "0 1|1 2|");
    EXPECT_EQ(imported("date/time,voltage\n12/03/2026 23:59:59,1\n13/03/2026 00:00:00,2\n"), "0 1|1 2|");
    EXPECT_EQ(imported("Date,Time,Voltage\n2026-03-01,23:59:59,1\n2026-03-02,00:00:01,2\n"), "0 1|2 2|");
    EXPECT_EQ(imported("Time,Voltage\n23:59:59,1\n00:00:01,2\n"), "0 1|2 2|"); // over midnight
    EXPECT_EQ(imported("Elapsed,Voltage\n00:59.5,1\n01:00.0,2\n"), "0 1|0.5 2|");
    EXPECT_EQ(imported("timestamp,voltage\n1772355600000,1\n1772355600330,2\n"), "0 1|0.33 2|"); // ms since 1970
    EXPECT_THAT(collect("time,voltage\n00:01,1\n").error,
                HasSubstr("test.csv:2: time \"00:01\" may be hours and minutes or minutes and seconds"));
}

TEST(Import, TakesOverloadAndGapsAsLoggersWriteThem) {
    EXPECT_EQ(imported("time,voltage\n0,OL\n1,-O.L\n2,overload\n3,inf\n4,9.9E37\n5,9.91E37\n6,----\n7,NaN\n8,\n"),
              "0 - overload|1 - overload|2 - overload|3 - overload|4 - overload|"); // the rest is silence
    EXPECT_THAT(collect("time,voltage\n0,soup\n").error, HasSubstr("test.csv:2: volts \"soup\" is no number"));
}

TEST(Import, SkipsAPreambleAndHashes) {
    EXPECT_EQ(imported("# exported somewhere = [\nLogger 3\nSerial,0042\n\nTime,Voltage\n0,1\n1,2\n"), "0 1|1 2|");
}

TEST(Import, ChoosesAmongColumnsAsAPersonWould) {
    EXPECT_EQ(imported("No,Time,Max (V),Voltage,Note\n1,0,9,1,a\n2,1,9,2,b\n"), "0 1|1 2|");
    EXPECT_EQ(imported("No,s,Channel 1 (V)\n1,0,9\n2,1,8\n"), "0 9|1 8|");
}

TEST(Import, OptionsComeFirst) {
    ImportOptions options;
    options.timeColumn = "When";
    options.voltsColumn = "B";
    EXPECT_EQ(imported("A,B,when\n1,2,3\n4,5,4\n", options), "0 2|1 5|");
    options.timeColumn = "2";
    options.voltsColumn = "1";
    options.delimiter = ':';
    EXPECT_EQ(imported("4.5:0\n4.4:1\n", options), "0 4.5|1 4.4|"); // no names at all
    options.delimiter = ';';
    options.decimalComma = true;
    EXPECT_EQ(imported("V;T\n4,5;0\n4;1\n", options), "0 4.5|1 4|");
    options.voltsColumn = "nowhere";
    EXPECT_THAT(collect("A,B\n1,2\n", options).error, HasSubstr("named are not there"));
}

TEST(Import, TimesThatGoBackAreAnErrorHereToo) {
    EXPECT_THAT(collect("time,voltage\n5,1\n4,1\n").error, HasSubstr("test.csv:3: times go back"));
}

} // namespace stillwire
