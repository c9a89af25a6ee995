// SPDX-License-Identifier: GPL-3.0-or-later
// The steps of a run: their order, what ends each, and what it asks of the person.
#include "core/procedure/texts.hpp"
#include "tests/core/procedure/driver.hpp"

#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire::testing {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

TEST(Procedure, RunsFromHookUpToPutBackByEvidenceAlone) {
    Driver d(pedalSheet(), kPedal);
    ASSERT_TRUE(d.readUntil(Step::putBack));
    d.keyOn = false; // the person turns the key off, as asked
    ASSERT_TRUE(d.readToTheEnd(120));
    std::vector<std::string> steps = d.texts("step:");
    EXPECT_EQ(std::count(steps.begin(), steps.end(), "step:end"), 3); // twice the lead moves to another wire

    std::erase(steps, "step:end");
    EXPECT_THAT(steps, ElementsAre("step:hook-up", "step:reference", "step:ground", "step:cold-start",
                                   "step:lead-check", "step:wiggle-shaft", "step:wiggle-harness", "step:full-press",
                                   "step:sweep", "step:release", "step:lift", "step:warm-repeat", "step:put-back"));
    EXPECT_EQ(d.count("key:on"), 1);
    EXPECT_EQ(d.count("key:off"), 1);
    EXPECT_EQ(d.count("skip:lift"), 1); // nobody answered, said as left out
}

TEST(Procedure, MarksNeverGoBackInTime) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::putBack);
    EXPECT_TRUE(
        std::is_sorted(d.marks.begin(), d.marks.end(), [](const Mark& a, const Mark& b) { return a.time < b.time; }));
}

TEST(Procedure, DoesNotTakeALeadInTheAirForAGround) {
    Driver d(pedalSheet(), kPedal);
    d.ground_V = 0; // what an open lead shows too
    ASSERT_TRUE(d.readUntil(Step::ground));
    EXPECT_FALSE(d.readUntil(Step::coldStart, 60));
    EXPECT_TRUE(d.procedure.prompt().movingLead);
    EXPECT_EQ(d.count("step:ground"), 0);
    d.press(Command::next); // the person says it sits
    EXPECT_EQ(d.count("step:ground"), 1);
    EXPECT_TRUE(d.readUntil(Step::coldStart, 60));
}

TEST(Procedure, WaitsForTheLeadToLeaveTheWireItWasOn) {
    Driver d(pedalSheet(), kPedal);
    ASSERT_TRUE(d.readUntil(Step::ground));
    d.leadFollows = false;
    EXPECT_FALSE(d.readUntil(Step::coldStart, 60));
    EXPECT_EQ(d.count("step:ground"), 0);
}

TEST(Procedure, WatchesColdForThirtySeconds) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::leadCheck);
    Time begun{0}, over{0};
    for (const Mark& m : d.marks) {
        if (m.text() == "step:cold-start") begun = m.time;
        if (m.text() == "step:lead-check") over = m.time;
    }
    EXPECT_GE(toSeconds(over - begun), 30.0);
    EXPECT_LT(toSeconds(over - begun), 32.0);
}

TEST(Procedure, AsksForAsManyPosesAsTheFindingsWant) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::wiggleHarness);
    EXPECT_EQ(d.count("pose:left") + d.count("pose:right"), 24);
    EXPECT_EQ(d.count("pose:in") + d.count("pose:out") + d.count("pose:tap"), 5); // along it, and the body
    const auto poses = d.texts("pose:");
    EXPECT_EQ(poses[0], "pose:red-lead/left");
    EXPECT_EQ(poses[5], "pose:black-lead/right");
    EXPECT_EQ(poses[10], "pose:left");
    EXPECT_EQ(poses[11], "pose:right");
    d.readUntil(Step::fullPress);
    const auto all = d.texts("pose:section-");
    EXPECT_EQ(all.size(), 32U); // eight in each of four sections
    EXPECT_EQ(all.front(), "pose:section-1/left");
    EXPECT_EQ(all[8], "pose:section-2/left");
    EXPECT_EQ(all.back(), "pose:section-4/right");
}

TEST(Procedure, HoldsEachPoseThreeReadingsAndNeverInStepWithTheMeter) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::wiggleShaft);
    std::vector<double> holds;
    while (d.procedure.prompt().step == Step::wiggleShaft) {
        holds.push_back(d.procedure.prompt().asked->for_s);
        d.read();
    }
    EXPECT_GE(*std::min_element(holds.begin(), holds.end()), 0.9);
    EXPECT_GT(*std::max_element(holds.begin(), holds.end()) - *std::min_element(holds.begin(), holds.end()), 0.2);
}

TEST(Procedure, EndsTheWiggleOfAMeterThatCannotSeeAndSaysSo) {
    Driver d(pedalSheet(), kPedal);
    d.cannotSee = true;
    d.readUntil(Step::wiggleShaft);
    for (int i = 0; i < 10; ++i) d.read();
    EXPECT_EQ(d.procedure.prompt().detail.english(), phrases::kCannotSee);
    EXPECT_TRUE(d.readUntil(Step::wiggleHarness, 120));
}

TEST(Procedure, VisitsBothSidesOfALeverThatRestsInTheMiddle) {
    Driver d(twoWaySheet(), {{"back", 0.6}, {"middle", 2.5}, {"forward", 4.4}});
    d.readUntil(Step::fullPress);
    const std::size_t before = d.texts("position:").size() - 1;
    d.readUntil(Step::sweep);
    auto visited = d.texts("position:");
    visited.erase(visited.begin(), visited.begin() + static_cast<std::ptrdiff_t>(before));
    EXPECT_THAT(visited, ElementsAre("position:back", "position:middle", "position:forward", "position:middle",
                                     "position:back", "position:middle", "position:forward", "position:middle"));
}

TEST(Procedure, ReleasesAtLeastThreeTimes) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::release);
    const auto before = d.texts("position:released").size();
    d.readUntil(Step::lift);
    EXPECT_GE(d.texts("position:released").size() - before, 3U);
}

TEST(Procedure, TheSecondLookWaitsTenMinutesFromKeyOn) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::warmRepeat);
    const auto before = d.texts("pose:").size();
    d.readUntil(Step::putBack);
    Time keyOn{0}, first{0};
    std::size_t poses = 0;
    for (const Mark& m : d.marks) {
        if (m.text() == "key:on") keyOn = m.time;
        if (m.text().starts_with("pose:") && ++poses == before + 1) first = m.time;
    }
    EXPECT_GE(toSeconds(first - keyOn), 600.0);
}

TEST(Procedure, ShowsCautionsFirstInEveryStep) {
    Sheet sheet = pedalSheet();
    sheet.cautions = {"Blade guard on."};
    Driver d(sheet, kPedal);
    EXPECT_THAT(d.procedure.prompt().cautions.front().english(), HasSubstr("engine off"));
    EXPECT_EQ(d.procedure.prompt().cautions.back().english(), "Blade guard on.");
    for (int i = 0; i < kStepCount; ++i) {
        const StepText& text = stepText(static_cast<Step>(i));
        EXPECT_EQ(text.step, static_cast<Step>(i));
        EXPECT_FALSE(text.cautions.empty()) << text.title;
        EXPECT_STRNE(text.instruction, "");
        EXPECT_STRNE(text.why, "");
    }
}

TEST(Procedure, ASameSeedLeadsTheSameWay) {
    Driver a(pedalSheet(), kPedal, {.seed = 5}), b(pedalSheet(), kPedal, {.seed = 5}),
        c(pedalSheet(), kPedal, {.seed = 6});
    for (Driver* d : {&a, &b, &c}) d->readUntil(Step::putBack);
    const auto times = [](const Driver& d) {
        std::vector<std::int64_t> out;
        for (const Mark& m : d.marks) out.push_back(m.time.count());
        return out;
    };
    EXPECT_EQ(times(a), times(b));
    EXPECT_NE(times(a), times(c));
}

} // namespace stillwire::testing
