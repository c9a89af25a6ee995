// SPDX-License-Identifier: GPL-3.0-or-later
// What drops out as a worn sensor does, and is told from it before the money is spent: the leads, the connector, the
// sections of the harness. The counts are of the binomial law: 0.9^29 and (2/3)^8 are the last below 0.05, so 29
// poses show what shows in one of ten, and 8 what shows in one of three.
#include "tests/support/guided_run.hpp"

#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using ::testing::HasSubstr;

struct Part {
    int section, poses, every;
};
struct Led {
    int leadEvery = 0, shaftEvery = 0, heldEvery = 0; // a dropout in every so many poses; 0: none
    int heldPoses = 0;
    std::vector<Part> harness = {{1, 8, 0}, {2, 8, 0}, {3, 8, 0}, {4, 8, 0}};
    bool leads = true;
    bool leadsAgain = false; // a good lead check after the shaft, and the shaft once more
};

Findings examined(const Led& run) {
    TraceMaker trace(MakerMeter{}, 1);
    trace.set(4.4);
    trace.guidedStart();
    const auto wiggle = [&](const char* step, const std::string& where, int poses, int every) {
        trace.wiggle(step, where, poses, every, -2.0, 0.6);
    };
    if (run.leads) wiggle("lead-check", "red-lead/", 10, run.leadEvery);
    wiggle("wiggle-shaft", "", 30, run.shaftEvery);
    if (run.heldPoses > 0) wiggle("connector-held", "", run.heldPoses, run.heldEvery);
    if (run.leadsAgain) wiggle("lead-check", "red-lead/", 10, 0);
    for (const Part& part : run.harness)
        wiggle("wiggle-harness", "section-" + std::to_string(part.section) + "/", part.poses, part.every);
    trace.guidedEnds(0.9, 2);
    return examine(trace.rows(), {.sheet = fallingSheet(), .meter = trace.traits(), .sections = usualSections()});
}

TEST(Sections, EightPosesInEachAreEnough) {
    const Findings f = examined({});
    EXPECT_EQ(f.verdict.decision, Decision::keep) << whatItSaid(f);
    EXPECT_EQ(f.wiggle.poses, 62);
    ASSERT_TRUE(f.wiggle.rateUpper95);
    EXPECT_NEAR(*f.wiggle.rateUpper95, 0.312, 0.001); // Clopper and Pearson: 1 - 0.05^(1/8)
}

TEST(Sections, OneThatWasNotLookedAtIsNamed) {
    Led run;
    run.harness[2].poses = 5;
    const Findings f = examined(run);
    EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << whatItSaid(f);
    EXPECT_EQ(f.wiggle.posesFor95, 3);
    ASSERT_FALSE(f.verdict.next.empty());
    EXPECT_THAT(f.verdict.next.front().says.english(), HasSubstr("wire-2"));
}

TEST(Sections, TwoPosesOfOneDecideAndOneInEachOfTwoDoesNot) {
    Led run;
    run.harness[1].every = 4;
    EXPECT_EQ(examined(run).verdict.decision, Decision::checkWiring);
    EXPECT_TRUE(examined(run).verdict.settled);
    run.harness[1].every = run.harness[2].every = 8;
    const Findings f = examined(run);
    EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << whatItSaid(f);
}

TEST(Sections, OneAloneIsAskedForAgainThereAndThenHoldsNothingBack) {
    Led run;
    run.harness[1].every = 8; // in the last of its eight
    Findings f = examined(run);
    EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << whatItSaid(f);
    for (const StepCoverage& one : f.steps)
        EXPECT_EQ(one.again,
                  one.section == "wire-1" || (one.section.empty() && one.step == Step::wiggleHarness) ? 8 : 0);
    run.harness.push_back({2, 7, 0});
    f = examined(run);
    EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << whatItSaid(f);
    run.harness.back().poses = 8;
    f = examined(run);
    EXPECT_EQ(f.verdict.decision, Decision::keep) << whatItSaid(f);
    EXPECT_TRUE(std::any_of(f.verdict.reasons.begin(), f.verdict.reasons.end(),
                            [](const auto& reason) { return reason.kind == ReasonKind::seenOnce; }));
}

TEST(Shaft, IsSuspectOnlyUntilEverySectionWasLookedAt) {
    Led run;
    run.shaftEvery = 3;
    run.heldPoses = 12;
    run.heldEvery = 3;
    EXPECT_EQ(examined(run).verdict.decision, Decision::replace);
    EXPECT_TRUE(examined(run).verdict.condition.empty());
    EXPECT_FALSE(examined(run).verdict.settled); // the supply wires could still speak
    run.harness.pop_back();
    const Findings f = examined(run);
    EXPECT_EQ(f.verdict.decision, Decision::cannotTell);
    EXPECT_THAT(f.verdict.reasons.front().says.english(), HasSubstr("suspect"));
}

TEST(Shaft, CleanWithTheConnectorHeldItIsTheConnector) {
    Led run;
    run.shaftEvery = 3; // 10 of 30
    run.heldPoses = 8;  // (2/3)^8 = 0.04: it would have shown
    const Findings f = examined(run);
    EXPECT_EQ(f.verdict.decision, Decision::checkWiring) << whatItSaid(f);
    EXPECT_THAT(f.verdict.reasons.front().says.english(), HasSubstr("the connector at the sensor"));
    run.heldPoses = 5; // too few to tell
    EXPECT_EQ(examined(run).verdict.decision, Decision::cannotTell);
}

TEST(Shaft, WhatWasNotRuledOutStandsBesideTheWord) {
    Led run;
    run.shaftEvery = 3;
    EXPECT_EQ(examined(run).verdict.condition.english(), "if it drops out with the connector held");
    run.leads = false;
    EXPECT_EQ(examined(run).verdict.condition.english(),
              "if it drops out with the connector held, and the lead is ruled out");
    run.heldPoses = 12;
    run.heldEvery = 3;
    EXPECT_EQ(examined(run).verdict.condition.english(), "if the lead is ruled out");
}

TEST(Leads, WhatTheyShowIsToldOfThemAndWhatCameBeforeDoesNotCount) {
    Led run;
    run.leadEvery = 5;
    run.shaftEvery = 3;
    run.heldPoses = 12;
    run.heldEvery = 3;
    const Findings f = examined(run);
    EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << whatItSaid(f);
    EXPECT_TRUE(f.leadsFailed);
    EXPECT_THAT(f.verdict.reasons.front().says.english(), HasSubstr("the lead, or the pin it touches"));
}

TEST(Leads, ClippedAgainAndCleanTheyLeaveThePosesAfterTheFailureToSpeak) {
    Led run;
    run.leadEvery = 5;
    run.leadsAgain = true;
    const Findings f = examined(run);
    EXPECT_EQ(f.verdict.decision, Decision::keep) << whatItSaid(f);
    EXPECT_FALSE(f.leadsFailed);
}

} // namespace
} // namespace stillwire::test
