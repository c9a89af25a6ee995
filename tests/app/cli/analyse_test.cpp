// SPDX-License-Identifier: GPL-3.0-or-later
// The shape of the JSON and the verdicts of small captures made by hand.
#include "tests/app/cli/made_capture.hpp"
#include "tests/app/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace stillwire::testing {

using Json = nlohmann::ordered_json;
using ::testing::ElementsAre;
using ::testing::HasSubstr;

namespace {

Json analysed(const std::string& capture, std::vector<std::string> more = {}) {
    const Folder f;
    std::vector<std::string> arguments{"analyse", f.write("c.csv", capture), "--json"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const Ran r = run(arguments);
    EXPECT_EQ(r.status, 0) << r.err;
    EXPECT_EQ(r.err, "");
    return Json::parse(r.out, nullptr, false);
}

std::vector<std::string> firstKeys(const Json& object, std::size_t count) {
    std::vector<std::string> out;
    for (const auto& [key, value] : object.items())
        if (out.size() < count) out.push_back(key);
    return out;
}

} // namespace

TEST(AnalyseJson, HasEveryMemberInTheContractsOrder) {
    Wanted dropping;
    dropping.dropoutsInShaft = true;
    const Json j = analysed(madeCapture(dropping));
    EXPECT_THAT(firstKeys(j, 17), ElementsAre("schema", "readings", "duration_s", "interval_s", "assumed", "blind",
                                              "phases", "dropouts", "play", "jumps", "aside", "plateaus", "positions",
                                              "wiggle", "adjustment", "machine", "verdict"));
    EXPECT_EQ(j["schema"], 1);
    ASSERT_FALSE(j["dropouts"].empty());
    EXPECT_THAT(firstKeys(j["dropouts"][0], 8),
                ElementsAre("from_s", "to_s", "held_V", "extreme_V", "direction", "kind", "readings", "step"));
    ASSERT_FALSE(j["phases"].empty());
    EXPECT_THAT(firstKeys(j["phases"][0], 5), ElementsAre("kind", "from_s", "to_s", "level_V", "noise_V"));
    ASSERT_EQ(j["positions"].size(), 2U);
    EXPECT_THAT(firstKeys(j["positions"][0], 10),
                ElementsAre("name", "level_V", "raw_V", "u_V", "window_V", "probability_inside", "conformance",
                            "cold_level_V", "spread_V", "visits"));
    EXPECT_THAT(firstKeys(j["wiggle"], 5),
                ElementsAre("poses", "dropouts", "rate_upper_95", "poses_for_95", "shortest_visible_s"));
    EXPECT_TRUE(j["wiggle"]["by_step"].is_array());
    EXPECT_THAT(firstKeys(j["adjustment"], 6),
                ElementsAre("wanted", "feasible", "shift_V", "target_raw_V", "after", "margin"));
    EXPECT_THAT(firstKeys(j["machine"], 2), ElementsAre("stops", "stops_possible"));
    EXPECT_THAT(firstKeys(j["verdict"], 5), ElementsAre("decision", "reasons", "causes", "not_tested", "next"));
}

TEST(AnalyseJson, WhatWasNotMeasuredIsNull) {
    const Json j = analysed("time_s,volts,flags,mark\n", {"--sheet", "trolley-two-way-lever"});
    ASSERT_EQ(j["positions"].size(), 3U);
    EXPECT_EQ(j["positions"][1]["name"], "middle");
    EXPECT_TRUE(j["positions"][1]["level_V"].is_null());
    EXPECT_TRUE(j["positions"][1]["conformance"].is_null());
    EXPECT_EQ(j["positions"][1]["visits"], 0);
    EXPECT_TRUE(j["machine"]["stops"].is_null()); // that sheet has no drive curve
    EXPECT_TRUE(j["adjustment"]["target_raw_V"]["middle"].is_null());
    EXPECT_EQ(j["verdict"]["decision"], "cannot-tell");
}

TEST(AnalyseJson, PhasesTileTheCapture) {
    const Json j = analysed(madeCapture());
    const Json& phases = j["phases"];
    ASSERT_FALSE(phases.empty());
    for (std::size_t i = 1; i < phases.size(); ++i) EXPECT_EQ(phases[i]["from_s"], phases[i - 1]["to_s"]);
}

TEST(AnalyseJson, LevelsFollowTheRatiometricFormula) {
    Wanted w;
    w.reference_V = 4.9;
    w.ground_V = 0.05;
    const Json j = analysed(madeCapture(w));
    // (raw - G) · nominal / (R - G), by hand.
    EXPECT_NEAR(j["positions"][0]["level_V"].get<double>(), (0.82 - 0.05) * 5 / (4.9 - 0.05), 0.002);
    EXPECT_NEAR(j["positions"][1]["level_V"].get<double>(), (4.10 - 0.05) * 5 / (4.9 - 0.05), 0.002);
    EXPECT_NEAR(j["positions"][1]["raw_V"].get<double>(), 4.10, 0.002);
}

TEST(Analyse, KeepsAGoodSensor) { EXPECT_EQ(analysed(madeCapture())["verdict"]["decision"], "keep"); }

TEST(Analyse, ReplacesOneThatDropsUnderTheShaft) {
    Wanted w;
    w.dropoutsInShaft = true;
    EXPECT_EQ(analysed(madeCapture(w))["verdict"]["decision"], "replace");
}

TEST(Analyse, ChecksTheSupplyFirst) {
    Wanted w;
    w.reference_V = 4.3;
    w.dropoutsInShaft = true;
    EXPECT_EQ(analysed(madeCapture(w))["verdict"]["decision"], "check-supply");
}

TEST(Analyse, ChecksTheGroundBeforeTheSensor) {
    Wanted w;
    w.ground_V = 0.4;
    EXPECT_EQ(analysed(madeCapture(w))["verdict"]["decision"], "check-wiring");
}

TEST(Analyse, TurnsOneThatOnlyWantsTurning) {
    Wanted w;
    w.released_V = 0.97;
    w.pressed_V = 4.27;
    const Json j = analysed(madeCapture(w));
    EXPECT_EQ(j["verdict"]["decision"], "adjust");
    EXPECT_TRUE(j["adjustment"]["wanted"].get<bool>());
    EXPECT_TRUE(j["adjustment"]["feasible"].get<bool>());
    EXPECT_LT(j["adjustment"]["shift_V"].get<double>(), 0);
}

TEST(Analyse, CannotTellAfterTooFewPoses) {
    Wanted w;
    w.poses = 6;
    const Json j = analysed(madeCapture(w));
    EXPECT_EQ(j["verdict"]["decision"], "cannot-tell");
    EXPECT_GT(j["wiggle"]["poses_for_95"].get<int>(), 0);
}

TEST(Analyse, AnOptionGoesBeforeTheHeader) {
    const Folder f;
    const Ran r = run({"analyse", f.write("c.csv", madeCapture()), "--sheet", "cleaner-depth-lever", "--json"});
    EXPECT_EQ(Json::parse(r.out)["positions"][0]["name"], "lifted");
}

TEST(Analyse, WithoutAMeterTheAccuracyIsAssumedAndSaid) {
    Wanted w;
    w.meter = false;
    const Json j = analysed(madeCapture(w));
    EXPECT_NEAR(j["interval_s"].get<double>(), 0.33, 0.01);
    EXPECT_THAT(j["verdict"]["reasons"].dump(), HasSubstr("1 %"));
}

TEST(Analyse, TakesAnotherProgramsFile) {
    const Folder f;
    std::string foreign = "Zeit;Spannung [V]\n";
    for (int i = 0; i < 60; ++i) foreign += std::to_string(i) + ",5;0,82" + std::to_string(i % 3) + "\n";
    const Ran r =
        run({"analyse", f.write("f.csv", foreign), "--sheet", "resurfacer-drive-pedal", "--json", "--time-column",
             "Zeit", "--volts-column", "Spannung [V]", "--delimiter", ";", "--decimal-comma"});
    ASSERT_EQ(r.status, 0) << r.err;
    const Json j = Json::parse(r.out);
    EXPECT_EQ(j["readings"], 60);
    EXPECT_EQ(j["verdict"]["decision"], "cannot-tell");
}

TEST(AnalyseText, CanBeReadAloud) {
    const Folder f;
    Wanted w;
    w.dropoutsInShaft = true;
    const Ran r = run({"analyse", f.write("c.csv", madeCapture(w))});
    EXPECT_EQ(r.status, 0);
    EXPECT_THAT(r.out, HasSubstr("Replace the sensor, if it drops out with the connector held, and the "
                                 "lead is ruled out."));
    EXPECT_THAT(r.out, HasSubstr("at least"));
    EXPECT_THAT(r.out, HasSubstr("good to"));
    EXPECT_THAT(r.out, HasSubstr("Not tested"));
}

TEST(AnalyseText, NeverClaimsMoreThanWasSeen) {
    const Folder f;
    const Ran r = run({"analyse", f.write("c.csv", madeCapture())});
    for (const char* never : {"no dropouts", "sensor good", "passed", "safe", "fault cleared", "the controller saw"})
        EXPECT_THAT(r.out, Not(HasSubstr(never)));
    EXPECT_THAT(r.out, HasSubstr("or longer in 34 poses"));
}

TEST(Replay, EndsWithTheSameVerdict) {
    const Folder f;
    Wanted w;
    w.dropoutsInShaft = true;
    const std::string capture = f.write("c.csv", madeCapture(w));
    const Ran replayed = run({"replay", capture}), judged = run({"analyse", capture});
    EXPECT_EQ(replayed.status, 0);
    EXPECT_THAT(replayed.out, HasSubstr("dropped"));
    const auto tail = judged.out.substr(judged.out.find("Verdict\n"));
    EXPECT_THAT(replayed.out, HasSubstr(tail));
}

TEST(Report, IsOnePageThatFetchesNothing) {
    const Folder f;
    Wanted w;
    w.dropoutsInShaft = true;
    const Ran r = run({"report", f.write("c.csv", madeCapture(w)), "-o", f.path("r.html")});
    ASSERT_EQ(r.status, 0) << r.err;
    const std::string html = f.read("r.html");
    EXPECT_THAT(html, HasSubstr("Replace the sensor, if it drops out with the connector held, and the "
                                "lead is ruled out."));
    EXPECT_THAT(html, HasSubstr("<svg"));
    EXPECT_THAT(html, HasSubstr("class=\"dropout\""));
    for (const char* fetched : {"<script", "<img", "<link", "http:", "https:"})
        EXPECT_THAT(html, Not(HasSubstr(fetched)));
}

TEST(Report, EscapesWhatTheSheetSays) {
    const Folder f;
    std::string sheet = test::kPedalSheet;
    sheet.replace(sheet.find("Resurfacer"), 10, "<b>&Pedal");
    const Ran r =
        run({"report", f.write("c.csv", madeCapture()), "--sheet", f.write("s.toml", sheet), "-o", f.path("r.html")});
    ASSERT_EQ(r.status, 0) << r.err;
    EXPECT_THAT(f.read("r.html"), HasSubstr("&lt;b&gt;&amp;Pedal"));
}

} // namespace stillwire::testing
