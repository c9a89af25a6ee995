// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/faults.hpp"
#include "meters/bench/script.hpp"
#include "meters/bench/simulate.hpp"
#include "tests/support/bench_runs.hpp"
#include "tests/support/source_folder.hpp"

#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

std::string textOf(const std::filesystem::path& path) {
    std::ostringstream out;
    out << std::ifstream(path).rdbuf();
    return out.str();
}

TEST(BenchScript, ReadsWhatAFileSays) {
    auto script = parseBenchScript(R"(format = 1
name = "Trial"
started = 2026-03-01T08:00:00+01:00
probe = "controller-side"
[sensor]
levels_V = [0.8, 4.2]
track_ohm = 4700
[controller]
bias = "up"
capacitance_nF = 47
[[fault]]
kind = "dirty-spot"
width = 0.03
duration_s = [0.2, 0.4]
[[fault]]
place = "ground-wire"
cause = "loose lug"
side = "left"
[plan]
steps = ["hook-up", "wiggle-shaft"]
turns = [1, -2]
[hand]
sweep_s = 12
)",
                                   "trial.toml");
    ASSERT_TRUE(script.ok()) << script.error().text();
    EXPECT_EQ(script->name, "Trial");
    EXPECT_EQ(script->started, "2026-03-01T08:00:00+01:00");
    EXPECT_EQ(script->setup.side, ProbeSide::controllerSide);
    EXPECT_EQ(script->setup.track.ohm, 4700);
    EXPECT_TRUE(script->setup.controller.biasUp);
    EXPECT_DOUBLE_EQ(script->setup.controller.capacitance_F, 47e-9);
    EXPECT_EQ(script->plan.turns, (std::vector<int>{1, -2}));
    EXPECT_EQ(script->plan.steps, (std::vector<Step>{Step::hookUp, Step::wiggleShaft}));
    EXPECT_EQ(script->habits.sweep_s, 12);

    auto setup = prepare(script.value(), test::pedalSheet());
    ASSERT_TRUE(setup.ok());
    ASSERT_EQ(setup->faults.size(), 2u);
    EXPECT_EQ(setup->faults[0].place, bench::Place::wiper);
    EXPECT_EQ(setup->faults[0].width, 0.03);
    EXPECT_EQ(setup->faults[0].durationMax_s, 0.4);
    EXPECT_NEAR(setup->faults[0].share, 0.16, 1e-12); // where it rests: 0.8 V of 5 V
    EXPECT_EQ(setup->faults[1].cause, "loose lug");
    EXPECT_EQ(setup->faults[1].side, -1);
}

TEST(BenchScript, NamesTheLineOfWhatIsWrong) {
    const std::map<std::string, int> broken = {{"name = \"x\"\n[sensor]\ntrak_ohm = 1\n", 3}, // a misspelt figure
                                               {"[[fault]]\nkind = \"moth\"\n", 1},
                                               {"[controller]\nbias = \"sideways\"\n", 2},
                                               {"[plan]\nsteps = [\"dance\"]\n", 2},
                                               {"\n[[fault]]\nplace = \"wiper\"\nohm = [5, 2]\n", 4},
                                               {"format = 2\n", 1},
                                               {"[sensor\n", 1}};
    for (const auto& [text, line] : broken) {
        auto script = parseBenchScript(text, "broken.toml");
        ASSERT_FALSE(script.ok()) << text;
        EXPECT_EQ(script.error().where, "broken.toml");
        EXPECT_NEAR(script.error().line, line, text.back() == '\n' && line == 1 ? 1 : 0) << text;
    }
}

TEST(BenchScript, ABreakBeyondTheProbeMovesTheProbe) {
    auto script = parseBenchScript("[[fault]]\nkind = \"harness-open\"\n", "open.toml");
    ASSERT_TRUE(script.ok()) << script.error().text();
    EXPECT_EQ(script->setup.side, ProbeSide::controllerSide);
}

TEST(BenchScript, EveryFaultHasItsName) {
    for (int i = 0; i < bench::kFaultKinds; ++i) {
        const auto kind = static_cast<bench::FaultKind>(i);
        EXPECT_EQ(bench::faultByName(bench::faultName(kind)), kind);
    }
}

// Every script that is shipped reads, runs on its sheet, and asks for the verdict its story tells.
TEST(BenchScript, ShippedOnesRun) {
    const std::filesystem::path resources = test::sourceFile("resources");
    const std::map<std::string, Decision> wanted = {{"good-pedal", Decision::keep},
                                                    {"wants-turning", Decision::adjust},
                                                    {"worn-cold", Decision::replace},
                                                    {"chafed-harness", Decision::checkWiring},
                                                    {"sagging-reference", Decision::checkSupply},
                                                    {"wiggled-too-little", Decision::cannotTell},
                                                    {"depth-lever", Decision::checkWiring},
                                                    {"two-way-lever", Decision::checkLinkage}};
    const std::map<std::string, Sheet> sheets = {{"resurfacer-drive-pedal", test::pedalSheet()},
                                                 {"cleaner-depth-lever", test::depthSheet()},
                                                 {"trolley-two-way-lever", test::twoWaySheet()}};
    std::size_t found = 0;
    for (const auto& file : std::filesystem::directory_iterator(resources / "bench")) {
        const std::string name = file.path().stem().string();
        auto script = parseBenchScript(textOf(file.path()), file.path().filename().string());
        ASSERT_TRUE(script.ok()) << script.error().text();
        ASSERT_TRUE(sheets.count(script->sheet)) << script->sheet;
        const Sheet& sheet = sheets.at(script->sheet);
        auto meter = parseMeterTraits(textOf(resources / "meters" / (script->meter + ".toml")), script->meter);
        ASSERT_TRUE(meter.ok()) << meter.error().text();
        auto run = simulate(script.value(), sheet, meter.value(), 7);
        ASSERT_TRUE(run.ok()) << run.error().text();
        ASSERT_TRUE(wanted.count(name)) << name;
        EXPECT_EQ(run->truth.verdict, wanted.at(name)) << name;
        ++found;
    }
    EXPECT_EQ(found, wanted.size());
}

} // namespace
} // namespace stillwire
