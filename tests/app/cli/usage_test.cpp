// SPDX-License-Identifier: GPL-3.0-or-later
// Exit statuses, help and what goes where.
#include "tests/app/cli/program.hpp"

#include <iterator>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire::testing {

using ::testing::HasSubstr;

class Help : public ::testing::TestWithParam<std::string> {};

TEST_P(Help, HasAnExampleOfItsVerbAndGoesToStdout) {
    const Ran r = run({GetParam(), "--help"});
    EXPECT_EQ(r.status, 0);
    EXPECT_EQ(r.err, "");
    EXPECT_THAT(r.out, HasSubstr("Example:"));
    EXPECT_THAT(r.out, HasSubstr("stillwire " + GetParam()));
}

INSTANTIATE_TEST_SUITE_P(EachVerb, Help,
                         ::testing::Values("analyse", "record", "replay", "report", "simulate", "listen", "find",
                                           "ports", "meters", "sheets"),
                         [](const auto& each) { return each.param; });

TEST(Usage, TheProgramsOwnHelpHasAnExample) {
    const Ran r = run({"--help"});
    EXPECT_EQ(r.status, 0);
    EXPECT_THAT(r.out, HasSubstr("stillwire analyse demo-sessions/"));
}

class WrongUsage : public ::testing::TestWithParam<std::vector<std::string>> {};

TEST_P(WrongUsage, IsTwoWithOneLine) {
    const Ran r = run(GetParam());
    EXPECT_EQ(r.status, 2);
    EXPECT_EQ(r.errLines(), 1) << r.err;
    EXPECT_THAT(r.err, HasSubstr("--help"));
    EXPECT_EQ(r.out, "");
}

INSTANTIATE_TEST_SUITE_P(
    Some, WrongUsage,
    ::testing::Values(std::vector<std::string>{"frobnicate"}, std::vector<std::string>{"analyse"},
                      std::vector<std::string>{"analyse", "a.csv", "--frob"},
                      std::vector<std::string>{"analyse", "a.csv", "b.csv"},
                      std::vector<std::string>{"report", "a.csv"}, std::vector<std::string>{"record"},
                      std::vector<std::string>{"record", "--port", "p", "-o", "x", "--duration", "-3"},
                      std::vector<std::string>{"record", "--port", "p", "-o", "x", "--reference-meter", "m"},
                      std::vector<std::string>{"record", "--port", "p", "-o", ""},
                      std::vector<std::string>{"record", "--port", "p", "-o", "x", "--duration", "nan"},
                      std::vector<std::string>{"record", "--port", "p", "-o", "x"}, // no sheet
                      std::vector<std::string>{"report", "a.csv", "-o", "a.pdf"},
                      std::vector<std::string>{"simulate"}, std::vector<std::string>{"listen"},
                      std::vector<std::string>{"simulate", "--script", "good-pedal", "-o", "a", "--truth", "a"},
                      std::vector<std::string>{"analyse", ""},
                      std::vector<std::string>{"analyse", "a.csv", "--json", "--explain"},
                      std::vector<std::string>{"analyse", "a.csv", "--time-as", "fortnights"},
                      std::vector<std::string>{"analyse", "a.csv", "--date-order", "ydm"},
                      std::vector<std::string>{"analyse", "a.csv", "--volts-unit", "A"},
                      std::vector<std::string>{"analyse", "a.csv", "--interval", "nan"},
                      std::vector<std::string>{"analyse", "a.csv", "--delimiter", "semi"},
                      std::vector<std::string>{"analyse", "a.csv", "--decimal-comma", "--decimal-point"},
                      std::vector<std::string>{"analyse", "a.csv", "--last-line", "-4"},
                      std::vector<std::string>{"listen", "bytes.bin", "--port", "p"},
                      std::vector<std::string>{"simulate", "--seed", "many"}));

TEST(Lists, SheetsAndMetersHaveNamesThatAnalyseTakes) {
    const Ran sheets = run({"sheets"}), meters = run({"meters"});
    EXPECT_EQ(sheets.status, 0);
    EXPECT_EQ(meters.status, 0);
    for (const char* name : {"resurfacer-drive-pedal", "cleaner-depth-lever", "trolley-two-way-lever"})
        EXPECT_THAT(sheets.out, HasSubstr(name));
    EXPECT_THAT(meters.out, HasSubstr("text-line-logger"));
    EXPECT_THAT(sheets.out + meters.out, Not(HasSubstr("unreadable")));
}

TEST(Lists, SheetsShowTheirWindowsAndMetersTheirRateAndRanges) {
    EXPECT_THAT(run({"sheets"}).out, HasSubstr("    released: 0.70 to 0.95 V, at rest\n"));
    const std::string meters = run({"meters"}).out;
    EXPECT_THAT(meters, HasSubstr("    a reading every 0.33 s\n"));
    EXPECT_THAT(meters, HasSubstr("    to 6.0 V in steps of 0.0010 V\n"));
}

TEST(Usage, SaysItsVersion) {
    const Ran r = run({"--version"});
    EXPECT_EQ(r.status, 0);
    EXPECT_THAT(r.out, ::testing::MatchesRegex("stillwire [0-9]+\\.[0-9]+\\.[0-9]+\n"));
}

// Of the commands that need no meter: what stands in the help is run as it stands, in a folder of its own.
class Example : public ::testing::TestWithParam<std::string> {};

TEST_P(Example, RunsFromAnywhere) {
    const Folder elsewhere;
    const Ran help = run({GetParam(), "--help"});
    const std::string mark = "Example:\n  stillwire ";
    const std::size_t at = help.out.find(mark);
    ASSERT_NE(at, std::string::npos);
    std::istringstream words(
        help.out.substr(at + mark.size(), help.out.find('\n', at + mark.size()) - at - mark.size()));
    std::vector<std::string> arguments{std::istream_iterator<std::string>(words), {}};
    const Ran r = run(arguments, "sh -c 'cd " + elsewhere.path("") + "; exec \"$@\"' sh");
    EXPECT_EQ(r.status, 0) << r.err;
    EXPECT_NE(r.out, "");
}

INSTANTIATE_TEST_SUITE_P(WithoutAMeter, Example,
                         ::testing::Values("analyse", "replay", "report", "simulate", "ports", "meters", "sheets"),
                         [](const auto& each) { return each.param; });

TEST(Lists, PortsIsDoneWhetherThereAreAnyOrNot) { EXPECT_EQ(run({"ports"}).status, 0); }

// A file of bytes as they came, tried with a description: no sheet, no port.
TEST(Listen, ShowsAFilesBytesBesideItsReadings) {
    const Folder folder;
    const std::string file = folder.write("bytes.bin", "+0.812 V DC\r\n-.-- V\r\nOL V DC\r\n+0.813 V DC HOLD\r\n");
    const Ran r = run({"listen", file, "--meter", "text-line-logger"});
    EXPECT_EQ(r.status, 0) << r.err;
    EXPECT_EQ(r.err, "");
    EXPECT_THAT(r.out, HasSubstr("2b 30 2e 38 31 32 20 56 20 44 43 0d 0a"));
    EXPECT_THAT(r.out, HasSubstr("+0.812 V DC..     0.812 V\n"));
    EXPECT_THAT(r.out, HasSubstr("dropped: no number in \"-.-- V\""));
    EXPECT_THAT(r.out, HasSubstr("no number: overload"));
    EXPECT_THAT(r.out, HasSubstr("0.813 V hold"));
    EXPECT_THAT(r.out, HasSubstr("48 bytes, 3 readings, 6 bytes dropped. It looks like text lines, such as"));
    const Ran bare = run({"listen", file});
    EXPECT_EQ(bare.status, 0);
    EXPECT_THAT(bare.out, HasSubstr("48 bytes, 0 readings"));
}

TEST(Listen, WantsSomethingToListenTo) {
    for (const std::vector<std::string>& words :
         {std::vector<std::string>{"listen", "/no/such/file"},
          std::vector<std::string>{"listen", "--port", "/dev/ttyNOSUCH7"},
          std::vector<std::string>{"listen", "/etc/hostname", "--meter", "no-such-meter"}}) {
        const Ran r = run(words);
        EXPECT_EQ(r.status, 3);
        EXPECT_EQ(r.errLines(), 1) << r.err;
    }
}

TEST(Find, SaysWhyAPortCannotBeSearched) {
    const Ran r = run({"find", "--port", "/dev/ttyNOSUCH7"});
    EXPECT_EQ(r.status, 0) << r.err;
    EXPECT_THAT(r.out, HasSubstr("/dev/ttyNOSUCH7: there is no such port"));
}

} // namespace stillwire::testing
