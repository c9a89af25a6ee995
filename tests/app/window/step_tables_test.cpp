// SPDX-License-Identifier: GPL-3.0-or-later
// Every step is in every table outside core: drawings, the window's words, the simulated hand.
#include "app/window/words.hpp"
#include "core/domain/step.hpp"
#include "meters/bench/simulate.hpp"

#include <algorithm>
#include <set>
#include <string>

#include <QFile>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

Sheet pedal() {
    Sheet sheet;
    sheet.positions.resize(2);
    sheet.positions[0] = {.name = "released", .window = {0.70, 0.95}, .aim_V = 0.82, .rest = true};
    sheet.positions[1] = {.name = "pressed", .window = {3.90, 4.30}, .aim_V = 4.10, .rest = false};
    return sheet;
}

TEST(StepTables, EveryStepHasADrawingOfItsName) {
    for (const StepTraits& t : kStepTable) {
        const std::string name(t.name);
        EXPECT_TRUE(QFile::exists(QString::fromStdString(":/drawings/" + name + ".svg"))) << name;
        EXPECT_TRUE(QFile::exists(QString::fromStdString(STILLWIRE_SOURCE "/resources/drawings/" + name + ".svg")))
            << name;
    }
}

TEST(StepTables, EveryStepHasAShortNameOfItsOwn) {
    std::set<QString> words;
    for (const StepTraits& t : kStepTable) {
        EXPECT_FALSE(shortStepName(t.step).isEmpty()) << t.name;
        EXPECT_TRUE(words.insert(shortStepName(t.step)).second) << t.name;
    }
}

TEST(StepTables, TheSimulatedHandPlaysEveryStepAndMarksIt) {
    MeterTraits meter;
    meter.interval_s = 0.33;
    meter.ranges.emplace_back();
    for (const StepTraits& t : kStepTable) {
        BenchScript script;
        script.plan.steps = {t.step};
        script.plan.turns = {1};
        Result<Simulation> run = simulate(script, pedal(), meter, 1);
        ASSERT_TRUE(run) << t.name;
        const std::vector<Mark>& marks = run->capture.marks;
        EXPECT_EQ(std::count_if(marks.begin(), marks.end(), [&](const Mark& m) { return m.opens(t.step); }), 1);
        const bool posed = std::any_of(marks.begin(), marks.end(), [](const Mark& m) { return m.as<PoseMark>(); });
        EXPECT_EQ(posed, t.wiggles()) << t.name;
        EXPECT_FALSE(run->capture.readings.empty()) << t.name;
    }
}

} // namespace
} // namespace stillwire
