// SPDX-License-Identifier: GPL-3.0-or-later
// The verdict against the truth of the fault bench: twelve fault kinds, good sensors that look worse than they are,
// five meters.
#include "core/examination.hpp"
#include "tests/support/bench_runs.hpp"
#include "tests/support/long_run.hpp"

#include <cmath>
#include <cstdio>
#include <map>
#include <string>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

Findings judged(const Simulation& simulation, const Sheet& sheet, MeterKind meter) {
    ExaminationSetup setup;
    setup.sheet = sheet;
    setup.meter = meterTraits(meter);
    setup.probe = simulation.capture.header.probe;
    setup.black = simulation.capture.header.black;
    Examination examination(setup);
    for (const Capture::Row& row : simulation.capture.rows) {
        if (row.isMark)
            examination.push(simulation.capture.marks[row.index]);
        else
            examination.push(simulation.capture.readings[row.index]);
    }
    return examination.findings();
}

constexpr double kTellable_V = 0.10;

const char* meterName(MeterKind kind) {
    const char* names[] = {"fair", "brisk", "slow", "coarse", "ranging"};
    return names[static_cast<int>(kind)];
}

struct Tally {
    int right = 0, all = 0, keptInSight = 0;
    int unseen =
        0;        // kept, and the fault never showed in a reading: the bound that is printed says what that is worth
    int held = 0; // cannot-tell where this meter could not see or did not settle: right, and counted apart
    std::map<std::string, int> wrong;
    std::string firstWrong;
};

void print(const std::string& name, const Tally& tally) {
    std::printf("%-26s %4d of %4d right", name.c_str(), tally.right, tally.all);
    if (tally.held > 0) std::printf(" (%d could not see)", tally.held);
    if (tally.unseen > 0) std::printf(" (%d never showed)", tally.unseen);
    for (const auto& [decision, count] : tally.wrong) std::printf("  %s %d", decision.c_str(), count);
    std::printf("%s%s\n", tally.firstWrong.empty() ? "" : "  e.g. ", tally.firstWrong.c_str());
}

// Poses lost to a meter that changed its range, or releases over before its display had settled.
bool couldNotSee(const Findings& f) {
    int blind = 0;
    for (const StepCoverage& step : f.steps) blind += step.blindPoses;
    int settled = 0;
    for (const Visit& visit : f.positions.front().visits) settled += visit.step == Step::release ? 1 : 0;
    return blind >= 5 || settled < 3;
}

// Did any event reach a reading deeply enough to be told from play? What never showed cannot be held against a keep.
bool showed(const Simulation& simulation) {
    for (const TruthEvent& event : simulation.truth.events)
        for (const TruthTouch& touch : event.touched)
            if (std::abs(touch.depth_V) > kTellable_V) return true;
    return false;
}

void add(Tally& tally, const Simulation& simulation, const Findings& f, const std::string& label) {
    ++tally.all;
    if (f.verdict.decision == simulation.truth.verdict) {
        ++tally.right;
        return;
    }
    if (f.verdict.decision == Decision::cannotTell && couldNotSee(f)) {
        ++tally.right;
        ++tally.held;
        return;
    }
    if (f.verdict.decision == Decision::keep && !showed(simulation)) {
        ++tally.right;
        ++tally.unseen;
        return;
    }
    ++tally.wrong[decisionName(f.verdict.decision)];
    if (tally.firstWrong.empty()) tally.firstWrong = label + ": " + f.verdict.reasons.front().english();
    if (f.verdict.decision == Decision::keep) ++tally.keptInSight;
}

TEST(BenchVerdict, IsTheTruthsForEveryFaultAndMeter) {
    const int seeds = scaled(4, 100);
    int right = 0, all = 0, kept = 0, held = 0;
    for (int kind = 0; kind <= bench::kFaultKinds; ++kind) {
        Tally tally;
        const bool good = kind == bench::kFaultKinds;
        for (const MeterKind meter : kMeterKinds) {
            for (int seed = 1; seed <= seeds; ++seed) {
                const auto fault = good ? std::nullopt : std::optional(static_cast<bench::FaultKind>(kind));
                const Simulation run = benchRun(fault, static_cast<std::uint64_t>(seed), meter);
                add(tally, run, judged(run, pedalSheet(), meter),
                    std::string(meterName(meter)) + " " + std::to_string(seed));
            }
        }
        print(good ? "good sensor" : std::string(bench::faultName(static_cast<bench::FaultKind>(kind))), tally);
        right += tally.right;
        all += tally.all;
        kept += tally.keptInSight;
        held += tally.held;
    }
    std::printf("%d of %d right, %d of them could not see\n", right, all, held);
    EXPECT_LE(held, 0.05 * all);
    EXPECT_GE(right, 0.99 * all);
    EXPECT_EQ(kept, 0);
}

TEST(BenchVerdict, PlayAndTremorAreNoFault) {
    const int seeds = scaled(4, 100);
    for (const double volts_V : {0.005, 0.015, 0.025, 0.040}) {
        for (const bool tremor : {false, true}) {
            Tally tally;
            for (const MeterKind meter : kMeterKinds) {
                for (int seed = 1; seed <= seeds; ++seed) {
                    const BenchScript script = tremor ? withTremor(volts_V) : withPlay(volts_V);
                    const Simulation run = benchRun(script, pedalSheet(), static_cast<std::uint64_t>(seed), meter);
                    add(tally, run, judged(run, pedalSheet(), meter),
                        std::string(meterName(meter)) + " " + std::to_string(seed));
                }
            }
            print((tremor ? "tremor " : "play ") + std::to_string(volts_V), tally);
            EXPECT_GE(tally.right, 0.98 * tally.all) << volts_V << (tremor ? " tremor" : " play");
        }
    }
}

} // namespace
} // namespace stillwire::test
