// SPDX-License-Identifier: GPL-3.0-or-later
// Exit statuses, help and what goes where.
#include "tests/app/cli/program.hpp"

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
                         ::testing::Values("analyse", "record", "replay", "report", "simulate", "ports", "meters",
                                           "sheets"),
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

TEST(Lists, PortsIsDoneWhetherThereAreAnyOrNot) { EXPECT_EQ(run({"ports"}).status, 0); }

} // namespace stillwire::testing
