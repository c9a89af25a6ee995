// SPDX-License-Identifier: GPL-3.0-or-later
// Each demo session replays to the verdict that seeds.txt promises, and the seed makes the same bytes again.
#include "tests/app/cli/program.hpp"

#include <fstream>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace stillwire::testing {

using ::testing::HasSubstr;

namespace {

struct Demo {
    std::string capture, script, seed, verdict;
};

std::vector<Demo> demos() {
    std::ifstream in(sourceFile("demo-sessions/seeds.txt"));
    std::vector<Demo> out;
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line.front() == '#') continue;
        std::istringstream fields(line);
        Demo d;
        fields >> d.capture >> d.script >> d.seed >> d.verdict;
        out.push_back(d);
    }
    return out;
}

std::string bytesOf(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

} // namespace

TEST(DemoSessions, ThereAreSixOrMoreInThreeScenarios) {
    const auto all = demos();
    EXPECT_GE(all.size(), 6U);
    std::vector<std::string> sheets;
    for (const Demo& d : all) {
        const std::string text = bytesOf(sourceFile("demo-sessions/" + d.capture));
        for (const char* name : {"Resurfacer", "Beach cleaner", "Marking trolley"})
            if (text.find(std::string("name = \"") + name) != std::string::npos) sheets.emplace_back(name);
    }
    EXPECT_THAT(sheets, ::testing::IsSupersetOf({"Resurfacer", "Beach cleaner", "Marking trolley"}));
}

TEST(DemoSessions, ReplayToTheirVerdicts) {
    for (const Demo& d : demos()) {
        const Ran r = run({"analyse", sourceFile("demo-sessions/" + d.capture), "--json"});
        ASSERT_EQ(r.status, 0) << d.capture << r.err;
        EXPECT_EQ(nlohmann::json::parse(r.out)["verdict"]["decision"], d.verdict) << d.capture;
    }
}

TEST(DemoSessions, AreMadeBySimulateToTheLastByte) {
    for (const Demo& d : demos()) {
        const Folder f;
        const Ran r = run({"simulate", "--script", d.script, "--seed", d.seed, "-o", f.path("again.csv")});
        ASSERT_EQ(r.status, 0) << d.capture << r.err;
        EXPECT_EQ(f.read("again.csv"), bytesOf(sourceFile("demo-sessions/" + d.capture))) << d.capture;
    }
}

TEST(Simulate, NeverOverwritesACapture) {
    const Folder f;
    f.write("c.csv", "precious");
    const Ran r = run({"simulate", "--script", "good-pedal", "-o", f.path("c.csv")});
    EXPECT_EQ(r.status, 3);
    EXPECT_EQ(r.errLines(), 1) << r.err;
    EXPECT_EQ(f.read("c.csv"), "precious");
}

TEST(Simulate, TellsTheTruth) {
    const Folder f;
    const Ran r = run(
        {"simulate", "--script", "worn-cold", "--seed", "13", "-o", f.path("c.csv"), "--truth", f.path("t.json")});
    ASSERT_EQ(r.status, 0) << r.err;
    const auto truth = nlohmann::json::parse(f.read("t.json"), nullptr, false);
    ASSERT_TRUE(truth.is_object());
    EXPECT_FALSE(truth["events"].empty());
}

TEST(Simulate, LedThroughTheProcedureItEndsWithAVerdictAndItsCaptureReplaysToTheSame) {
    const Folder f;
    const Ran led = run({"simulate", "--guided", "--script", "good-pedal", "--seed", "3", "-o", f.path("c.csv")});
    ASSERT_EQ(led.status, 0) << led.err;
    EXPECT_THAT(led.out, HasSubstr("Watch it cold"));
    EXPECT_THAT(led.out, HasSubstr("Put it back"));
    const auto tail = led.out.substr(led.out.find("Verdict\n"));
    EXPECT_THAT(run({"replay", f.path("c.csv")}).out, HasSubstr(tail));
}

TEST(Simulate, LedThroughTheProcedureASlippedSensorIsTurnedConfirmedAndKept) {
    const Folder f;
    const Ran led = run({"simulate", "--guided", "--script", "wants-turning", "--seed", "1", "-o", f.path("c.csv")});
    ASSERT_EQ(led.status, 0) << led.err;
    EXPECT_THAT(led.out, HasSubstr("turn:-1"));
    EXPECT_THAT(led.out, HasSubstr("Confirm the ends"));
    EXPECT_THAT(led.out, HasSubstr("Keep the sensor."));
}

TEST(Simulate, AnUnknownScriptTellsTheKnownOnes) {
    const Ran r = run({"simulate", "--script", "no-such", "-o", "/nowhere/x.csv"});
    EXPECT_EQ(r.status, 3);
    EXPECT_THAT(r.err, HasSubstr("good-pedal"));
}

} // namespace stillwire::testing
