// SPDX-License-Identifier: GPL-3.0-or-later
// The maker of runs, not who judges them: its truth has to hold.
#include "tests/hands/judged.hpp"
#include "tests/hands/levels.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include <gtest/gtest.h>

namespace stillwire::hands {
namespace {

LedRun made(const std::string& kind, const std::string& step, Fault fault, std::uint64_t seed) {
    Request request;
    request.kind = kind;
    request.step = step;
    request.fault = fault;
    request.seed = seed;
    std::optional<LedRun> run = makeRun(request);
    EXPECT_TRUE(run) << nameOf(request);
    return run ? std::move(*run) : LedRun{};
}

LedRun plain(std::uint64_t seed) { return made("none", "", Fault::none, seed); }

TEST(HandsMaker, TheSameSeedMakesTheSameBytes) {
    for (const char* kind : {"none", "several", "phone"}) {
        EXPECT_EQ(made(kind, "", Fault::shaft, 3).capture, made(kind, "", Fault::shaft, 3).capture);
        EXPECT_NE(made(kind, "", Fault::shaft, 3).capture, made(kind, "", Fault::shaft, 4).capture);
    }
}

TEST(HandsMaker, TimesNeverGoBack) {
    for (const auto& [kind, step] : whatCanHappen(false)) {
        const LedRun run = made(std::string(row(kind).name), step, Fault::none, 1);
        const auto earlier = [](const auto& a, const auto& b) { return a.time < b.time; };
        EXPECT_TRUE(std::is_sorted(run.marks.begin(), run.marks.end(), earlier)) << nameOf(run.request);
        EXPECT_TRUE(std::is_sorted(run.readings.begin(), run.readings.end(), earlier)) << nameOf(run.request);
        EXPECT_TRUE(judge(run).error.empty()) << judge(run).error;
        const auto before = [](const Key& a, const Key& b) { return a.at_s < b.at_s; };
        EXPECT_TRUE(std::is_sorted(run.scene.way.begin(), run.scene.way.end(), before)) << nameOf(run.request);
    }
}

// Levels stand inside their windows, with the sheet's allowance to spare, but while the hand is on its way.
TEST(HandsMaker, WithNothingInItTheLeverStaysInsideItsWindows) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const LedRun run = plain(seed);
        Wires wires(run.scene);
        for (double t = 0; t < run.scene.end_s; t += 0.05) {
            const double v_V = wires.lever_V(t);
            const auto& way = run.scene.way;
            const auto next = std::find_if(way.begin(), way.end(), [&](const Key& k) { return k.at_s > t; });
            if (next != way.end() && std::abs(next->level_V - (next - 1)->level_V) > 0.001) continue;
            const Machine& m = run.subject.machine;
            EXPECT_TRUE(
                std::any_of(m.places.begin(), m.places.end(),
                            [&](const Place& p) { return v_V > p.min_V + m.drift_V && v_V < p.max_V - m.drift_V; }))
                << "seed " << seed << " at " << t << " s: " << v_V << " V";
        }
    }
}

TEST(HandsMaker, PosesAndVisitsAreAsManyAsAskedFor) {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        const LedRun run = plain(seed);
        std::string step;
        std::map<std::string, int> poses, visits;
        for (const Mark& m : run.marks) {
            if (m.text().rfind("step:", 0) == 0) step = m.text().substr(5);
            if (const auto* pose = m.as<PoseMark>()) ++poses[step + " " + pose->place.area];
            if (const auto* to = m.as<PositionMark>()) ++visits[step + " " + to->name];
        }
        EXPECT_GE(poses["wiggle-shaft "], 29);
        EXPECT_GE(poses["lead-check red-lead"] + poses["lead-check black-lead"], 10);
        for (const std::string& section : run.subject.machine.sections)
            EXPECT_GE(poses["wiggle-harness " + section], 8) << section;
        for (const Place& p : run.subject.machine.places)
            EXPECT_GE(visits["full-press " + p.name], p.rest ? 3 : 2) << p.name;
        EXPECT_GE(visits["release " + run.subject.machine.places[run.subject.machine.rest()].name], 6);
    }
}

TEST(HandsMaker, AnActHappensInItsStepAndOnce) {
    std::set<Kind> seen;
    for (const auto& [kind, step] : whatCanHappen(false)) {
        seen.insert(kind);
        for (std::uint64_t seed = 1; seed <= 2; ++seed) {
            const LedRun run = made(std::string(row(kind).name), step, Fault::none, seed);
            ASSERT_EQ(run.acts.size(), 1U) << nameOf(run.request);
            const Act& act = run.acts.front();
            EXPECT_EQ(act.kind, kind);
            EXPECT_EQ(act.step, step);
            EXPECT_GE(act.to_s, act.from_s) << nameOf(run.request);
        }
    }
    EXPECT_EQ(seen.size(), kKinds.size());
}

TEST(HandsMaker, WithoutItsActARunIsAPlainOne) {
    Request request;
    request.kind = "tap";
    request.step = "wiggle-shaft";
    request.withoutAct = true;
    const std::optional<LedRun> run = makeRun(request);
    ASSERT_TRUE(run);
    EXPECT_TRUE(run->acts.empty());
}

TEST(HandsMaker, LevelsToTurnAreOutsideAndCanBeMended) {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        const LedRun turned = made("none", "", Fault::adjust, seed), wrong = made("none", "", Fault::span, seed);
        const Machine& m = turned.subject.machine;
        bool outside = false;
        for (std::size_t i = 0; i < m.places.size(); ++i) {
            const double v_V = turned.subject.levels_V[i];
            outside = outside || v_V < m.places[i].min_V || v_V > m.places[i].max_V;
        }
        EXPECT_TRUE(outside) << seed;
        const Shifts can = mendingShifts(m, turned.subject.levels_V, m.drift_V);
        EXPECT_LT(can.least_V, can.most_V) << seed;
        const Shifts cannot = mendingShifts(wrong.subject.machine, wrong.subject.levels_V, 0);
        EXPECT_GT(cannot.least_V, cannot.most_V) << seed;
    }
}

TEST(HandsMaker, TheOlderShapeKnowsNothingNewer) {
    Request request;
    request.oldSteps = true;
    request.fault = Fault::shaft;
    const std::optional<LedRun> run = makeRun(request);
    ASSERT_TRUE(run);
    EXPECT_EQ(run->capture.find("lead-check"), std::string::npos);
    EXPECT_EQ(run->capture.find("connector-held"), std::string::npos);
    EXPECT_NE(run->capture.find("wiggle-ground"), std::string::npos);
}

} // namespace
} // namespace stillwire::hands
