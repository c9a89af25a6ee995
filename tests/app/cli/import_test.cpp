// SPDX-License-Identifier: GPL-3.0-or-later
// Another program's file on the command line: what was taken of it is said, in words and as JSON, and how to mend it.
#include "tests/app/cli/made_capture.hpp"
#include "tests/app/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace stillwire::testing {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;
using Json = nlohmann::json;

namespace {

// A pedal that is pressed once, as a logger saves it.
std::string logged(const std::string& names, const std::string& delimiter, double low_V = 0.82, double high_V = 4.1) {
    std::string out = names + "\n";
    for (int i = 0; i < 60; ++i) {
        char row[64];
        std::snprintf(row, sizeof row, "%.2f%s%.3f\n", i * 0.33, delimiter.c_str(),
                      (i / 20 == 1 ? high_V : low_V) + 0.001 * (i % 2));
        out += row;
    }
    return out;
}

// In which only the first minute is marked, and dropouts come later.
std::string partlyMarked() {
    std::string out = "time_s,volts,flags,mark\n0,,,step:cold-start\n0,,,position:released\n";
    for (int i = 0; i < 600; ++i) {
        char row[64];
        if (i == 100) out += "33,,,step:end\n";
        std::snprintf(row, sizeof row, "%.2f,%.3f,,\n", i * 0.33, 0.82 + 0.001 * (i % 2) - (i % 100 == 50 ? 0.4 : 0));
        if (i > 100 || i % 100 != 50) out += row;
    }
    return out;
}

const std::string kSheet = "resurfacer-drive-pedal";

} // namespace

TEST(ImportText, SaysWhatWasTaken) {
    const Folder f;
    const std::string file = f.write("a.csv", "Logger 7\n" + logged("Zeit (s);Max (V);Spannung (V)", ";9.000;"));
    const Ran r = run({"analyse", file, "--sheet", kSheet});
    ASSERT_EQ(r.status, 0) << r.err;
    EXPECT_THAT(r.out, HasSubstr("Its columns are named on line 2 and lie between semicolons."));
    EXPECT_THAT(r.out, HasSubstr("Time: column \"Zeit (s)\", taken as seconds."));
    EXPECT_THAT(r.out, HasSubstr("Signal: column \"Spannung (V)\", taken as V."));
    EXPECT_THAT(r.out, HasSubstr("Its numbers have a decimal point."));
    EXPECT_THAT(r.out, HasSubstr("one every 0.33 s"));
}

TEST(ImportText, SaysWhatWasAssumed) {
    const Folder f;
    const Ran r = run({"analyse", f.write("a.csv", logged("t,u", ",")), "--sheet", kSheet});
    EXPECT_THAT(r.out, HasSubstr("Assumed: times without a unit are seconds"));
    EXPECT_THAT(r.out, HasSubstr("Assumed: values without a unit are volts"));
}

TEST(ImportJson, SaysWhatWasTaken) {
    const Folder f;
    std::string dates = "Date;Hora;Voltaje (mV)\n";
    for (int i = 0; i < 30; ++i)
        dates += (i < 15 ? "03/04/2026;23:59:" : "04/04/2026;00:00:") + std::to_string((i < 15 ? 45 : -5) + i) +
                 ";820,5\n";
    const Ran r = run({"analyse", f.write("a.csv", dates), "--sheet", kSheet, "--json"});
    ASSERT_EQ(r.status, 0) << r.err;
    const Json j = Json::parse(r.out)["import"];
    EXPECT_EQ(j["time_column"], "Hora");
    EXPECT_EQ(j["date_column"], "Date");
    EXPECT_EQ(j["volts_column"], "Voltaje (mV)");
    EXPECT_TRUE(j["reference_column"].is_null());
    EXPECT_EQ(j["columns_line"], 1);
    EXPECT_EQ(j["delimiter"], ";");
    EXPECT_EQ(j["encoding"], "UTF-8");
    EXPECT_EQ(j["decimal_sign"], ",");
    EXPECT_EQ(j["time_as"], "clock");
    EXPECT_EQ(j["date_order"], "dmy");
    EXPECT_EQ(j["volts_unit"], "mV");
    EXPECT_EQ(j["without_number"], 0);
}

TEST(ImportJson, IsThereAndEmptyForACapture) {
    const Folder f;
    const Json j = Json::parse(run({"analyse", f.write("a.csv", madeCapture()), "--json"}).out)["import"];
    EXPECT_TRUE(j.is_object());
    for (const auto& [name, value] : j.items()) EXPECT_TRUE(value.is_null()) << name;
}

TEST(ImportJson, TwoChannelsAreJudgedAsARatio) {
    const Folder f;
    std::string rows = "Time (s),Signal (V),Reference (V)\n";
    for (int i = 0; i < 60; ++i) rows += std::to_string(i) + ",0.820,4.500\n";
    const Json j = Json::parse(run({"analyse", f.write("a.csv", rows), "--sheet", kSheet, "--json"}).out);
    EXPECT_EQ(j["import"]["reference_column"], "Reference (V)");
    EXPECT_NEAR(j["reference"]["level_V"].get<double>(), 4.5, 1e-6);
    EXPECT_THAT(j["assumed"].dump(), Not(HasSubstr("the nominal, not measured")));
}

TEST(Explain, SaysHowAFileIsReadWithoutASheet) {
    const Folder f;
    const Ran r = run({"analyse", f.write("a.csv", logged("Time (s),Voltage (V)", ",")), "--explain"});
    ASSERT_EQ(r.status, 0) << r.err;
    EXPECT_THAT(r.out, HasSubstr("The file begins\n  Time (s),Voltage (V)\n  0.00,0.820\n"));
    EXPECT_THAT(r.out, HasSubstr("Time: column \"Time (s)\", taken as seconds."));
    EXPECT_THAT(r.out, HasSubstr("60 readings over 19.5 s, one every 0.33 s\n  0 s  0.82 V\n  0.33 s  0.821 V\n"));
    EXPECT_THAT(r.out, HasSubstr("Sheets that its levels fit\n  resurfacer-drive-pedal\n"));
    EXPECT_THAT(r.out, Not(HasSubstr("Verdict")));
}

TEST(Explain, RefusesAsAnalyseDoes) {
    const Folder f;
    const Ran r = run({"analyse", f.write("a.csv", "Time,Amps\n0,1\n"), "--explain"});
    EXPECT_EQ(r.status, 3);
    EXPECT_EQ(r.errLines(), 1);
    EXPECT_THAT(r.err, HasSubstr("a.csv:1: no volts column is found in \"Time,Amps\"; give it with --volts-column"));
}

TEST(FittingSheets, AreOfferedWhereNoneIsGiven) {
    const Folder f;
    const Ran r = run({"analyse", f.write("a.csv", logged("Time (s),Voltage (V)", ","))});
    EXPECT_EQ(r.status, 3);
    EXPECT_EQ(r.errLines(), 1);
    EXPECT_THAT(r.err, HasSubstr("the levels fit resurfacer-drive-pedal"));
    EXPECT_THAT(r.err, Not(HasSubstr("cleaner-depth-lever")));
}

TEST(FittingSheets, AreOfferedWhereTheOneGivenDoesNotFit) {
    const Folder f;
    const std::string file = f.write("a.csv", logged("Time (s),Voltage (V)", ",", 2.5, 2.5));
    const Ran r = run({"analyse", file, "--sheet", kSheet});
    EXPECT_THAT(r.out,
                HasSubstr("No level of it lies in a window of this sheet. They would fit: trolley-two-way-lever."));
    const Json j = Json::parse(run({"analyse", file, "--sheet", kSheet, "--json"}).out);
    EXPECT_THAT(j["sheets_that_fit"], ElementsAre("trolley-two-way-lever"));
    EXPECT_THAT(
        Json::parse(run({"analyse", file, "--sheet", "trolley-two-way-lever", "--json"}).out)["sheets_that_fit"],
        ElementsAre());
}

TEST(PartlyMarked, ListsTheDropoutsOutsideTheSteps) {
    const Folder f;
    const std::string file = f.write("a.csv", partlyMarked());
    const Ran r = run({"analyse", file, "--sheet", kSheet});
    EXPECT_THAT(r.out, HasSubstr("Dropouts outside the steps, which no step counts\n  At 49.5 s"));
    const Json j = Json::parse(run({"analyse", file, "--sheet", kSheet, "--json"}).out);
    EXPECT_EQ(j["dropouts"].size(), 0U);
    EXPECT_EQ(j["dropouts_outside_steps"].size(), 5U);
}

TEST(PartlyMarked, ALedRunHasNone) {
    const Json j = Json::parse(run({"analyse", sourceFile("demo-sessions/worn-cold-pedal.csv"), "--json"}).out);
    EXPECT_EQ(j["dropouts_outside_steps"].size(), 0U);
}

} // namespace stillwire::testing
