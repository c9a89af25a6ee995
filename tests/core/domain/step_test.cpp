// SPDX-License-Identifier: GPL-3.0-or-later
// Every step is in every table of core.
#include "core/domain/step.hpp"
#include "core/domain/timeline.hpp"
#include "core/procedure/activity.hpp"
#include "core/procedure/path.hpp"
#include "core/procedure/texts.hpp"

#include <algorithm>
#include <set>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

TEST(StepTable, EveryNameIsItsOwnAndIsFoundAgain) {
    std::set<std::string_view> names;
    for (const StepTraits& t : kStepTable) {
        EXPECT_FALSE(t.name.empty());
        EXPECT_TRUE(names.insert(t.name).second) << t.name;
        EXPECT_EQ(stepByName(t.name), t.step);
        EXPECT_EQ(stepName(t.step), t.name);
    }
    EXPECT_EQ(stepByName("dance"), std::nullopt);
    EXPECT_EQ(stepByName("end"), std::nullopt); // step:end is a mark of its own
}

TEST(StepTable, EveryStepHasItsWordsAndWhatGoesOnInIt) {
    for (const StepTraits& t : kStepTable) {
        const StepText& text = stepText(t.step);
        EXPECT_EQ(text.step, t.step);
        EXPECT_TRUE(text.title && text.instruction && text.why) << t.name;
        EXPECT_FALSE(text.cautions.empty()) << t.name;
        EXPECT_TRUE(makeActivity({t.step}, ProcedureOptions{})) << t.name;
    }
}

TEST(StepTable, EveryStepIsInTheOrderOnceOrIsOffered) {
    Path path;
    const auto times = [&](Step step) {
        return std::count_if(path.entries().begin(), path.entries().end(),
                             [&](const PathEntry& e) { return e.step == step; });
    };
    for (const StepTraits& t : kStepTable) EXPECT_EQ(times(t.step), t.need == Need::offered ? 0 : 1) << t.name;
    path.addAfterShaft();
    for (const StepTraits& t : kStepTable) EXPECT_EQ(times(t.step), t.step == Step::leadCheck ? 2 : 1) << t.name;
}

TEST(StepTable, EveryStepPutsTheTimelineWhereItsRowSays) {
    Sheet sheet;
    sheet.positions.resize(2);
    sheet.positions[0].rest = true;
    for (const StepTraits& t : kStepTable) {
        Timeline line(sheet);
        EXPECT_TRUE(line.push({Time(0), StepMark{t.step}}));
        EXPECT_EQ(line.now().step, t.step);
        EXPECT_EQ(line.now().wire, t.wire);
        EXPECT_EQ(line.now().motion, t.motion);
        EXPECT_EQ(line.now().warm, t.warmth == Warmth::warm);
        line.push({Time(1), PoseMark{PosePlace::at(Side::left)}});
        EXPECT_EQ(line.poses().size(), t.wiggles() ? 1U : 0U) << t.name;
    }
}

// What keep asks for, as the design lists it.
TEST(StepTable, KeepAsksForTheseSteps) {
    std::set<Step> required;
    for (const StepTraits& t : kStepTable)
        if (t.need == Need::required) required.insert(t.step);
    EXPECT_EQ(required, (std::set{Step::reference, Step::ground, Step::coldStart, Step::wiggleShaft,
                                  Step::wiggleHarness, Step::fullPress, Step::release}));
}

} // namespace
} // namespace stillwire::test
