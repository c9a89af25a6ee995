// SPDX-License-Identifier: GPL-3.0-or-later
// The trade's table of findings, row by row (common practice, no source; voltage patterns from the circuit): each
// finding made on the fault bench, its verdict, and the action that comes first. tests/support/trade_findings.hpp
// names the rows, and what is out of reach.
#include "tests/meters/bench/verdict_runs.hpp"
#include "tests/support/trade_findings.hpp"

#include <functional>
#include <ostream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using bench::FaultKind;
using testing::HasSubstr;

struct Row {
    const char* finding;
    Decision decision;
    const char* cause;  // of the verdict
    const char* action; // what comes next
    std::function<BenchScript()> script;
    MeterKind meter = MeterKind::fair;
    // A wire that reads nothing: the lead is clipped again before a wire is opened. Common practice, no source.
    bool leadFirst = false;
};

BenchScript with(FaultKind kind, const std::function<void(BenchScript&)>& change = {}) {
    BenchScript script = benchScript(kind);
    if (change) change(script);
    return script;
}
BenchScript plain(const std::function<void(BenchScript&)>& change) {
    BenchScript script = benchScript(std::nullopt);
    change(script);
    return script;
}

const Row kRows[] = {
    {"Spike at one shaft position", Decision::replace, "poses of the shaft, and came back",
     "the reference and the ground wire under the same wiggle", [] { return with(FaultKind::dirtySpot); }},
    {"Jumps on connector touch", Decision::checkWiring, "poses of the harness", "pin grip and seal",
     [] {
         return with(FaultKind::connectorFretting, [](BenchScript& s) {
             s.faults[0].tuned = {{&bench::Intermittent::shaft_per_s, 0.0},
                                  {&bench::Intermittent::wipesToClear, 0.0}};
         });
     }},
    {"Jumps on one harness span", Decision::checkWiring, "poses of the harness", "open the harness at section 2",
     [] { return with(FaultKind::harnessShortToGround); }},
    {"Low end up, high end nearly same", Decision::checkWiring, "above battery negative",
     "drop along the ground wire", [] { return with(FaultKind::groundResistance); }},
    {"Both ends same %", Decision::checkSupply, "The reference is 4.", "measure it at the controller",
     [] { return with(FaultKind::referenceSag); }},
    {"Whole trace shifted, same span", Decision::adjust, "turn the sensor until it reads",
     "Loosen, turn until the meter shows", [] { return with(FaultKind::mountRotated); }},
    {"Rest level scattered, no spikes", Decision::checkLinkage, "spring and linkage first", "return spring",
     [] { return with(FaultKind::weakSpring); }},
    {"Span short, ends smooth", Decision::checkLinkage, "no turn of the sensor brings every end",
     "the stops, the lever and the part number", [] { return with(FaultKind::wrongSpan); }},
    {"Stuck ~0: open signal", Decision::checkWiring, "stays near 0 V wherever the pedal is",
     "isolate the three wires",
     [] {
         return plain([](BenchScript& s) {
             s.setup.side = ProbeSide::controllerSide;
             s.setup.harness_ohm = 1e9;
         });
     },
     MeterKind::fair, true},
    {"Stuck ~0: open reference", Decision::checkSupply, "The reference is ", "one by one, key off each time",
     [] { return plain([](BenchScript& s) { s.setup.reference.path_ohm = 1e9; }); }, MeterKind::fair, true},
    {"Stuck ~5: open ground", Decision::checkWiring, "above battery negative", "drop along the ground wire",
     [] {
         return plain([](BenchScript& s) {
             s.setup.ground.path_ohm = 1e9;
             s.setup.ground.otherCurrent_A = 0;
         });
     },
     MeterKind::fair, true},
    {"Stuck ~5: pull-up, open signal", Decision::checkWiring, "stays near the reference wherever the pedal is",
     "the ground first",
     [] {
         return plain([](BenchScript& s) {
             s.setup.side = ProbeSide::controllerSide;
             s.setup.controller.biasUp = true;
             s.setup.harness_ohm = 1e9;
         });
     },
     MeterKind::fair, true},
    {"> 5.5 V", Decision::checkWiring, "Stop, key off", "chafe to a battery feed",
     [] {
         return with(FaultKind::harnessShortToSupply, [](BenchScript& s) {
             s.setup.supply_V = 13.8;
             s.faults[0].tuned = {{&bench::Intermittent::durationMin_s, 1.0}}; // for two successive readings
         });
     },
     MeterKind::coarse}, // its range goes that far
    {"Several sensors low", Decision::checkSupply, "The reference is 4.", "Unplug the other sensors",
     [] { return plain([](BenchScript& s) { s.setup.reference.drop_V = 0.6; }); }},
    {"Good at sensor, bad at controller: probed there", Decision::checkWiring, "poses of the harness",
     "open the harness at section 2", [] { return with(FaultKind::harnessOpen); }},
    {"Bad cold, good warm", Decision::replace, "poses of the shaft, and came back",
     "the reference and the ground wire under the same wiggle", [] {
         return with(FaultKind::wornTrack, [](BenchScript& s) {
             s.faults[0].tuned = {{&bench::Intermittent::warm, 0.0}};
             s.plan.steps.push_back(Step::warmRepeat);
             s.plan.warmWait_s = 720;
         });
     }}};

template <class Kind> std::string allOf(const std::vector<Said<Kind>>& all) {
    std::string out;
    for (const Said<Kind>& one : all) out += one.says.english() + "\n";
    return out;
}

void PrintTo(const Row& row, std::ostream* out) { *out << row.finding; }

class TradeTable : public testing::TestWithParam<Row> {};

TEST_P(TradeTable, LeadsToItsAction) {
    const Row& row = GetParam();
    BenchScript script = row.script();
    script.setup.meter = meterQuirks(row.meter);
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const Simulation run = benchRun(script, pedalSheet(), seed, row.meter);
        const Findings f = judged(run);
        const std::size_t at = row.leadFirst ? 1 : 0;
        ASSERT_GT(f.verdict.causes.size(), at) << row.finding << " " << seed << "\n" << allOf(f.verdict.reasons);
        const Cause& cause = f.verdict.causes[at];
        EXPECT_EQ(cause.decision, row.decision) << row.finding << " " << seed << "\n" << allOf(f.verdict.reasons);
        EXPECT_THAT(cause.says.english(), HasSubstr(row.cause)) << row.finding << " " << seed;
        EXPECT_THAT(cause.nextTest.english(), HasSubstr(row.action)) << row.finding << " " << seed;
        if (!row.leadFirst) continue;
        EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << row.finding << " " << seed;
        EXPECT_THAT(f.verdict.next.front().says.english(), HasSubstr("Clip the lead")) << row.finding << " " << seed;
    }
}
INSTANTIATE_TEST_SUITE_P(Rows, TradeTable, testing::ValuesIn(kRows),
                         [](const auto& row) { return "Row" + std::to_string(row.index + 1); });

// Good at the sensor, bad at the controller: probed at the sensor nothing shows, and it is said that it would not.
TEST(TradeTable, WhatIsGoodAtTheSensorIsNotSaidToBeGoodBeyond) {
    BenchScript script = benchScript(FaultKind::harnessOpen);
    script.faults[0].kind.clear();
    script.faults[0].place = bench::Place::signalWire;
    script.faults[0].section = 2;
    script.faults[0].tuned = {{&bench::Intermittent::harness_per_s, 1.0}};
    const Findings f = judged(benchRun(script, pedalSheet(), 1));
    EXPECT_EQ(f.verdict.decision, Decision::keep);
    EXPECT_THAT(allOf(f.verdict.notTested), HasSubstr("between there and the controller would not show"));
}

// All good, code stays: keep, with how short a dropout could have hidden.
TEST(TradeTable, AllGoodSaysHowShortADropoutCouldHide) {
    const Findings f = judged(benchRun(std::nullopt, 1));
    EXPECT_EQ(f.verdict.decision, Decision::keep);
    // 0.33 s - 0.10 s + 2 · 0.10 s · 0.051 V / 0.5 V, rounded up: what two readings share has to show more than play.
    EXPECT_THAT(allOf(f.verdict.notTested), HasSubstr("Dropouts shorter than 0.26 s"));
}

// Bad cold, good warm: significant or not, the cold finding stands.
TEST(TradeTable, AWarmPassClearsNothing) {
    BenchScript script = benchScript(FaultKind::wornTrack);
    script.faults[0].tuned = {{&bench::Intermittent::warm, 0.0}};
    script.plan.steps.push_back(Step::warmRepeat);
    script.plan.warmWait_s = 720;
    const Findings f = judged(benchRun(script, pedalSheet(), 1));
    ASSERT_TRUE(f.coldWarm);
    EXPECT_EQ(f.coldWarm->warmDropouts, 0);
    EXPECT_EQ(f.verdict.decision, Decision::replace);
}

} // namespace
} // namespace stillwire::test
