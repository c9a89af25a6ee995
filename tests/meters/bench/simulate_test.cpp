// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/simulate.hpp"
#include "tests/support/bench_runs.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using bench::FaultKind;
using test::benchRun;

// Every bit that a recording would hold.
std::string bytes(const Simulation& run) {
    std::string out;
    for (const Capture::Row& row : run.capture.rows) {
        if (row.isMark) {
            const Mark& mark = run.capture.marks[row.index];
            out += std::to_string(mark.time.count()) + mark.text() + "\n";
        } else {
            const Reading& reading = run.capture.readings[row.index];
            char volts[sizeof(double)];
            std::memcpy(volts, &reading.volts_V, sizeof volts);
            out += std::to_string(reading.time.count());
            out.append(volts, sizeof volts);
        }
    }
    return out;
}

TEST(Simulate, SameSeedSameBytes) {
    for (const test::MeterKind meter : test::kMeterKinds) {
        const std::string first = bytes(benchRun(FaultKind::wornTrack, 42, meter));
        EXPECT_EQ(first, bytes(benchRun(FaultKind::wornTrack, 42, meter)));
        EXPECT_NE(first, bytes(benchRun(FaultKind::wornTrack, 43, meter)));
    }
}

TEST(Simulate, TimesNeverGoBack) {
    for (int kind = 0; kind < bench::kFaultKinds; ++kind) {
        const Simulation run = benchRun(static_cast<FaultKind>(kind), 7);
        Time last{0};
        for (const Capture::Row& row : run.capture.rows) {
            const Time now = row.isMark ? run.capture.marks[row.index].time : run.capture.readings[row.index].time;
            ASSERT_GE(now.count(), last.count());
            last = now;
        }
        EXPECT_GT(run.capture.readings.size(), 600u);
    }
}

TEST(Simulate, TellsTheRightVerdict) {
    const auto verdict = [](std::optional<FaultKind> kind) { return benchRun(kind, 5).truth.verdict; };
    EXPECT_EQ(verdict(std::nullopt), Decision::keep);
    EXPECT_EQ(verdict(FaultKind::wornTrack), Decision::replace);
    EXPECT_EQ(verdict(FaultKind::dirtySpot), Decision::replace);
    EXPECT_EQ(verdict(FaultKind::connectorFretting), Decision::checkWiring);
    EXPECT_EQ(verdict(FaultKind::harnessOpen), Decision::checkWiring);
    EXPECT_EQ(verdict(FaultKind::harnessShortToGround), Decision::checkWiring);
    EXPECT_EQ(verdict(FaultKind::harnessShortToSupply), Decision::checkWiring);
    EXPECT_EQ(verdict(FaultKind::brokenStrand), Decision::checkWiring);
    EXPECT_EQ(verdict(FaultKind::referenceSag), Decision::checkSupply);
    EXPECT_EQ(verdict(FaultKind::groundResistance), Decision::checkWiring);
    EXPECT_EQ(verdict(FaultKind::mountRotated), Decision::adjust);
    EXPECT_EQ(verdict(FaultKind::weakSpring), Decision::checkLinkage);
    EXPECT_EQ(verdict(FaultKind::wrongSpan), Decision::checkLinkage);
    EXPECT_EQ(benchRun(test::withPlay(0.04), test::pedalSheet(), 5).truth.verdict, Decision::keep);
    EXPECT_EQ(benchRun(test::unmarked(test::benchScript(std::nullopt)), test::pedalSheet(), 5).truth.verdict,
              Decision::cannotTell);
}

// Every fault that comes and goes must come, in most runs in two poses at least, or tests on it prove nothing.
TEST(Simulate, FaultsShowThemselves) {
    for (const FaultKind kind :
         {FaultKind::wornTrack, FaultKind::dirtySpot, FaultKind::connectorFretting, FaultKind::harnessOpen,
          FaultKind::harnessShortToGround, FaultKind::harnessShortToSupply, FaultKind::brokenStrand}) {
        int plain = 0;
        for (std::uint64_t seed = 0; seed < 20; ++seed) {
            const Simulation run = benchRun(kind, seed);
            int seen = 0;
            for (const TruthEvent& event : run.truth.events) {
                seen += std::any_of(event.touched.begin(), event.touched.end(),
                                    [](const TruthTouch& touch) { return std::abs(touch.depth_V) > 0.1; });
            }
            plain += seen >= 2;
        }
        EXPECT_GE(plain, 18) << bench::faultName(kind);
    }
}

// Settled readings stand where the truth says, within the meter's accuracy.
TEST(Simulate, VisitsStandAtTheirTrueLevel) {
    const Sheet sheet = test::twoWaySheet();
    const Simulation run = benchRun(test::benchScript(std::nullopt), sheet, 9);
    int checked = 0;
    for (std::size_t v = 0; v + 1 < run.truth.visits.size(); ++v) {
        const TruthVisit& visit = run.truth.visits[v];
        for (const Reading& reading : run.capture.readings) {
            const double t = toSeconds(reading.time);
            if (t < visit.from_s + 0.6 || t > std::min(visit.from_s + 1.5, run.truth.visits[v + 1].from_s - 1.2))
                continue;
            EXPECT_NEAR(reading.volts_V, visit.level_V, 0.005 * visit.level_V + 0.002 + 0.022) << visit.position;
            ++checked;
        }
    }
    EXPECT_GT(checked, 20);
}

TEST(Simulate, SpansTileTheCapture) {
    const Simulation run = benchRun(FaultKind::dirtySpot, 3);
    double at_s = 0;
    for (const TruthSpan& span : run.truth.spans) {
        EXPECT_EQ(span.from_s, at_s);
        at_s = span.to_s;
    }
    EXPECT_GE(at_s, toSeconds(run.capture.readings.back().time) - 1e-9);
}

// Nothing that was planned for one step happens in another: the sweep is over before the releases begin.
TEST(Simulate, SweepIsOverBeforeTheNextStep) {
    for (const Sheet& sheet : {test::pedalSheet(), test::depthSheet(), test::twoWaySheet()}) {
        const Simulation run = benchRun(test::benchScript(std::nullopt), sheet, 2);
        double sweep_s = 0, next_s = 0;
        for (const Mark& mark : run.capture.marks) {
            if (mark.text() == "step:sweep") sweep_s = toSeconds(mark.time);
            if (mark.text() == "step:release") next_s = toSeconds(mark.time);
        }
        double lowest_V = 9, highest_V = 0;
        for (const Reading& reading : run.capture.readings) {
            const double t = toSeconds(reading.time);
            if (t < sweep_s || t > next_s) continue;
            lowest_V = std::min(lowest_V, reading.volts_V);
            highest_V = std::max(highest_V, reading.volts_V);
        }
        for (const double level_V : run.truth.level_V) { // every position was passed
            EXPECT_GT(level_V, lowest_V - 0.05) << sheet.name;
            EXPECT_LT(level_V, highest_V + 0.05) << sheet.name;
        }
        for (const TruthSpan& span : run.truth.spans) {
            if (span.kind == "travel" && span.from_s > sweep_s && span.from_s < next_s) {
                EXPECT_LT(span.to_s, next_s) << sheet.name;
            }
        }
    }
}

TEST(Simulate, RefusesWhatDoesNotFit) {
    BenchScript script = test::benchScript(std::nullopt);
    script.setup.mechanics.level_V = {1, 2, 3};
    EXPECT_FALSE(simulate(script, test::pedalSheet(), {}, 1).ok());
    script = test::benchScript(std::nullopt);
    script.faults.emplace_back().kind = "moth";
    EXPECT_FALSE(simulate(script, test::pedalSheet(), {}, 1).ok());
}

} // namespace
} // namespace stillwire
