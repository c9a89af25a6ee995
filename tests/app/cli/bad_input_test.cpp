// SPDX-License-Identifier: GPL-3.0-or-later
// Every bad input: status 3, one line on stderr that names the file, the line where there is one, and the mend.
#include "tests/app/cli/made_capture.hpp"
#include "tests/app/cli/program.hpp"

#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire::testing {

using ::testing::HasSubstr;

namespace {

void expectBad(const Ran& r, const std::string& names) {
    EXPECT_EQ(r.status, 3) << r.err << r.out;
    EXPECT_EQ(r.errLines(), 1) << r.err;
    EXPECT_THAT(r.err, HasSubstr(names));
    EXPECT_THAT(r.err, HasSubstr("; ")); // the mend
    EXPECT_EQ(r.out, "");
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    if (at == std::string::npos)
        ADD_FAILURE() << from << " is not there";
    else
        text.replace(at, from.size(), to);
    return text;
}

} // namespace

TEST(BadInput, MissingFile) { expectBad(run({"analyse", "/nowhere/at-all.csv"}), "/nowhere/at-all.csv"); }

TEST(BadInput, AFolderIsNoCapture) {
    const Folder f;
    expectBad(run({"analyse", f.path("")}), f.path(""));
}

TEST(BadInput, EmptyFile) {
    const Folder f;
    expectBad(run({"analyse", f.write("e.csv", "")}), "e.csv");
}

TEST(BadInput, BinaryFile) {
    const Folder f;
    std::string bytes;
    for (int i = 0; i < 4096; ++i) bytes += static_cast<char>(i * 37 % 256);
    expectBad(run({"analyse", f.write("b.csv", bytes)}), "b.csv");
}

TEST(BadInput, NoKnownColumns) {
    const Folder f;
    expectBad(run({"analyse", f.write("c.csv", "colour,shape\nred,round\n"), "--sheet",
                   sourceFile("resources/sheets/resurfacer-drive-pedal.toml")}),
              "c.csv");
}

TEST(BadInput, TimesThatGoBackNameTheLine) {
    const Folder f;
    const std::string good = madeCapture();
    const auto line = std::count(good.begin(), good.end(), '\n') + 1;
    expectBad(run({"analyse", f.write("t.csv", good + "0.01,0.82,,\n")}), "t.csv:" + std::to_string(line));
}

TEST(BadInput, VoltsThatAreNoNumberNameTheLine) {
    const Folder f;
    const std::string good = madeCapture();
    const auto line = std::count(good.begin(), good.end(), '\n') + 1;
    expectBad(run({"analyse", f.write("v.csv", good + "999.0,zero,,\n")}), "v.csv:" + std::to_string(line));
}

TEST(BadInput, NoSheetAtAll) {
    const Folder f;
    Wanted bare;
    bare.sheet = false;
    const Ran r = run({"analyse", f.write("n.csv", madeCapture(bare))});
    expectBad(r, "n.csv");
    EXPECT_THAT(r.err, HasSubstr("--sheet"));
}

TEST(BadInput, CrossedWindowsNameTheSheetAndTheLine) {
    const Folder f;
    const std::string sheet = f.write("s.toml", replaced(test::kPedalSheet, "min_V = 0.70", "min_V = 1.70"));
    expectBad(run({"analyse", f.write("c.csv", madeCapture()), "--sheet", sheet}), "s.toml:");
}

TEST(BadInput, CrossedWindowsInTheHeader) {
    const Folder f;
    expectBad(run({"analyse", f.write("c.csv", replaced(madeCapture(), "# min_V = 0.70", "# min_V = 1.70"))}),
              "c.csv:");
}

TEST(BadInput, ASheetOfANewerFormat) {
    const Folder f;
    const std::string sheet = f.write("s.toml", replaced(test::kPedalSheet, "format = 1", "format = 2"));
    expectBad(run({"analyse", f.write("c.csv", madeCapture()), "--sheet", sheet}), "s.toml");
}

TEST(BadInput, AMeterOfANewerFormat) {
    const Folder f;
    const std::string meter = f.write("m.toml", replaced(kMeterToml, "format = 1", "format = 7"));
    expectBad(run({"analyse", f.write("c.csv", madeCapture()), "--meter", meter}), "m.toml");
}

TEST(BadInput, ASheetThatIsNoToml) {
    const Folder f;
    expectBad(run({"analyse", f.write("c.csv", madeCapture()), "--sheet", f.write("s.toml", "a = [1,\nb")}),
              "s.toml:");
}

TEST(BadInput, UnknownNamesTellTheKnownOnes) {
    const Folder f;
    const std::string capture = f.write("c.csv", madeCapture());
    Ran r = run({"analyse", capture, "--sheet", "no-such-lever"});
    expectBad(r, "no-such-lever");
    EXPECT_THAT(r.err, HasSubstr("cleaner-depth-lever"));
    r = run({"analyse", capture, "--meter", "no-such-meter"});
    expectBad(r, "no-such-meter");
    EXPECT_THAT(r.err, HasSubstr("text-line-logger"));
}

TEST(BadInput, ControlCharactersOfAFileNameDoNotBreakTheLine) {
    expectBad(run({"analyse", "no\nsuch\tfile.csv"}), "such");
}

TEST(BadInput, IsTheSameForReplayAndReport) {
    const Folder f;
    expectBad(run({"replay", "/nowhere/x.csv"}), "/nowhere/x.csv");
    expectBad(run({"report", "/nowhere/x.csv", "-o", f.path("r.html")}), "/nowhere/x.csv");
    EXPECT_EQ(f.read("r.html"), "");
}

TEST(BadInput, AMissingPortLeavesNoFile) {
    const Folder f;
    expectBad(run({"record", "--port", "/dev/ttyNowhere0", "--meter", "text-line-logger", "--sheet",
                   "resurfacer-drive-pedal", "-o", f.path("r.csv")}),
              "/dev/ttyNowhere0");
    EXPECT_EQ(f.read("r.csv"), "");
}

TEST(BadInput, RecordSaysWhichOptionItLacks) {
    const Folder f;
    const Ran r = run({"record", "--port", "/dev/null", "-o", f.path("r.csv")});
    EXPECT_EQ(r.status, 2);
    EXPECT_EQ(r.errLines(), 1) << r.err;
    EXPECT_THAT(r.err, HasSubstr("--sheet"));
}

TEST(GoodInput, ATornLastLineIsAWarningNotAnError) {
    const Folder f;
    const Ran r = run({"analyse", f.write("t.csv", madeCapture() + "999.0,0.8")});
    EXPECT_EQ(r.status, 0) << r.err;
    EXPECT_EQ(r.err, "");
    EXPECT_THAT(r.out, HasSubstr("Warning"));
}

TEST(GoodInput, ANewerCaptureIsReadWithAWarning) {
    const Folder f;
    const Ran r = run({"analyse", f.write("t.csv", replaced(madeCapture(), "format = 1", "format = 9"))});
    EXPECT_EQ(r.status, 0) << r.err;
    EXPECT_EQ(r.err, "");
    EXPECT_THAT(r.out, HasSubstr("Warning"));
}

TEST(GoodInput, ColumnsWithoutReadingsCannotTell) {
    const Folder f;
    const Ran r = run(
        {"analyse", f.write("t.csv", "time_s,volts,flags,mark\n"), "--sheet", "resurfacer-drive-pedal", "--json"});
    EXPECT_EQ(r.status, 0) << r.err;
    EXPECT_THAT(r.out, HasSubstr("\"cannot-tell\""));
}

} // namespace stillwire::testing
