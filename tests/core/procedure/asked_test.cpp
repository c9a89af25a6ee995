// SPDX-License-Identifier: GPL-3.0-or-later
// What the procedure asks and stops at, and what it does when it is told.
#include "tests/core/procedure/driver.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire::testing {

using ::testing::HasSubstr;

TEST(Procedure, StopsAtABadReferenceBeforeTheSensorIsTouched) {
    Driver d(pedalSheet(), kPedal);
    d.reference_V = 4.3;
    while (d.procedure.prompt().question == Question::none && toSeconds(d.now) < 60) d.read();
    EXPECT_THAT(d.procedure.prompt().instruction.english(), HasSubstr("4.30 V"));
    d.press(Command::next);
    EXPECT_EQ(d.procedure.prompt().step, Step::putBack);
    EXPECT_EQ(d.count("step:cold-start"), 0);
    EXPECT_EQ(d.count("pose:"), 0);
}

TEST(Procedure, StopsByItselfAtABadGround) {
    Driver d(pedalSheet(), kPedal);
    d.ground_V = 0.4;
    EXPECT_TRUE(d.readUntil(Step::putBack, 120));
    EXPECT_EQ(d.count("step:cold-start"), 0);
}

TEST(Procedure, GoesOnAfterABadGroundOnlyWhenTold) {
    Driver d(pedalSheet(), kPedal);
    d.ground_V = 0.4;
    while (d.procedure.prompt().question == Question::none && toSeconds(d.now) < 60) d.read();
    d.press(Command::offerNo);
    EXPECT_EQ(d.procedure.prompt().step, Step::coldStart);
}

TEST(Procedure, AfterAShaftDropoutConnectorLeadsAndSupplyWiresComeUnasked) {
    Driver d(pedalSheet(), kPedal);
    d.dropoutsInShaft = 2;
    EXPECT_TRUE(d.readUntil(Step::connectorHeld));
    EXPECT_TRUE(d.readUntil(Step::wiggleHarness));
    EXPECT_EQ(d.count("step:lead-check"), 2);
    EXPECT_EQ(d.count("step:wiggle-reference"), 1);
    EXPECT_EQ(d.count("step:wiggle-ground"), 1);
}

TEST(Procedure, AGoodShaftIsFollowedByTheHarness) {
    Driver d(pedalSheet(), kPedal);
    EXPECT_TRUE(d.readUntil(Step::wiggleHarness));
    EXPECT_EQ(d.count("step:connector-held"), 0);
    EXPECT_EQ(d.count("step:lead-check"), 1);
}

TEST(Procedure, OffersToFinishOnceWhereNoStepLeftWouldChangeTheVerdict) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::wiggleHarness);
    d.findings.verdict.decision = Decision::checkWiring;
    d.findings.verdict.settled = true;
    while (d.procedure.prompt().question == Question::none && !d.procedure.prompt().finished) d.read();
    EXPECT_EQ(d.procedure.prompt().question, Question::finish);
    EXPECT_EQ(d.procedure.prompt().step, Step::wiggleHarness);
    d.press(Command::offerNo);
    EXPECT_EQ(d.procedure.prompt().step, Step::fullPress);
    d.readUntil(Step::sweep);
    EXPECT_EQ(d.procedure.prompt().question, Question::none); // asked once
}

// The step whose evidence is missing is asked for again at once, with the reason, and not for ever.
TEST(Procedure, AStepWithoutItsEvidenceIsAskedForAgain) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::coldStart);
    d.findings.verdict.decision = Decision::cannotTell;
    d.findings.verdict.again = {Step::coldStart};
    d.findings.verdict.reasons = {{ReasonKind::cause, {"A dropout with nobody touching.", {}}}};
    d.readUntil(Step::leadCheck);
    EXPECT_EQ(d.count("step:cold-start"), 3);
    EXPECT_EQ(d.procedure.path()[4].because.english(), "A dropout with nobody touching.");
}

TEST(Procedure, WhatIsMissingInTheEndIsAskedForBeforeTheLongWait) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::lift);
    d.findings.verdict.decision = Decision::cannotTell;
    d.findings.verdict.again = {Step::reference, Step::fullPress};
    d.readUntil(Step::reference);
    EXPECT_TRUE(d.procedure.prompt().movingLead);
    d.findings.verdict.again.clear();
    d.readUntil(Step::fullPress);
    EXPECT_EQ(d.procedure.prompt().step, Step::fullPress);
    EXPECT_EQ(d.count("step:warm-repeat"), 0);
}

TEST(Procedure, WhatThePersonLeftOutIsNotAskedForAgain) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::fullPress);
    d.press(Command::skip);
    d.findings.verdict.decision = Decision::cannotTell;
    d.findings.verdict.again = {Step::fullPress};
    d.readUntil(Step::warmRepeat);
    EXPECT_EQ(d.count("step:full-press"), 1);
}

TEST(Procedure, AnArmThatLeansIsPushedAgainWhileItIsHeld) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::wiggleShaft);
    d.findings.holdTheArm = true;
    d.readUntil(Step::wiggleHarness);
    EXPECT_EQ(d.count("step:wiggle-shaft"), 2);
    EXPECT_EQ(d.count("arm:held"), 1);
    EXPECT_EQ(d.count("pose:left") + d.count("pose:right"), 24 + 6);
}

TEST(Procedure, StopsAtOnceOverFiveAndAHalfVolts) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::fullPress);
    d.level_V["pressed"] = d.level_V["released"] = 12.4;
    d.read();
    EXPECT_TRUE(d.procedure.prompt().stopNow);
    EXPECT_THAT(d.procedure.prompt().instruction.english(), HasSubstr("Key off"));
    EXPECT_EQ(d.marks.back().text(), "step:end");
    d.press(Command::next);
    EXPECT_EQ(d.marks.back().text(), "key:off");
    EXPECT_TRUE(d.procedure.prompt().finished);
}

TEST(Procedure, SkippingLeavesItsMarkAndGoesOn) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::wiggleShaft);
    d.press(Command::skip);
    EXPECT_EQ(d.count("skip:wiggle-shaft"), 1);
    EXPECT_EQ(d.procedure.prompt().step, Step::wiggleHarness);
    EXPECT_EQ(d.procedure.path()[5].outcome, StepOutcome::skipped);
}

TEST(Procedure, LeftEarlyAStepIsEndedAndNotSkipped) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::wiggleShaft);
    for (int i = 0; i < 10; ++i) d.read();
    d.press(Command::skip);
    EXPECT_EQ(d.count("skip:wiggle-shaft"), 0);
    EXPECT_EQ(d.procedure.prompt().step, Step::wiggleHarness);
    EXPECT_EQ(d.procedure.path()[5].outcome, StepOutcome::done);
}

TEST(Procedure, ALeadCheckThatShowsSomethingIsRepeatedAndThenTheWiggle) {
    Driver d(pedalSheet(), kPedal);
    d.dropoutsInShaft = 2;
    d.readUntil(Step::connectorHeld);
    d.readUntil(Step::leadCheck);
    d.findings.leadsFailed = true;
    d.findings.verdict.again = {Step::leadCheck};
    const int before = d.count("step:lead-check");
    while (d.count("step:lead-check") == before && !d.procedure.prompt().finished) d.read();
    EXPECT_EQ(d.procedure.prompt().step, Step::leadCheck);
    d.findings.leadsFailed = false;
    d.findings.verdict.again.clear();
    d.coverage(Step::wiggleShaft, "").posesFor95 = 29; // what was seen before does not count
    while (d.procedure.prompt().step == Step::leadCheck) d.read();
    EXPECT_EQ(d.procedure.prompt().step, Step::wiggleShaft);
}

TEST(Procedure, BackToAWireThatTheLeadHasLeftAsksForTheMove) {
    Driver d(pedalSheet(), kPedal);
    ASSERT_TRUE(d.readUntil(Step::ground));
    ASSERT_TRUE(d.procedure.prompt().movingLead);
    d.press(Command::back);
    EXPECT_EQ(d.procedure.prompt().step, Step::reference);
    EXPECT_TRUE(d.procedure.prompt().movingLead);
}

TEST(Procedure, BackSoonAfterAStepEndedUndoesThatStep) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::leadCheck);
    d.press(Command::back);
    EXPECT_EQ(d.count("undo:cold-start"), 1);
    EXPECT_EQ(d.procedure.prompt().step, Step::coldStart);
    EXPECT_EQ(d.count("step:cold-start"), 2);
}

TEST(Procedure, BackLaterStartsTheStepAgain) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::wiggleShaft);
    for (int i = 0; i < 50; ++i) d.read();
    d.press(Command::back);
    EXPECT_EQ(d.marks[d.marks.size() - 4].text(), "undo:wiggle-shaft");
    EXPECT_EQ(d.procedure.prompt().step, Step::wiggleShaft);
}

TEST(Procedure, NextNeverEndsAWiggleShort) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::wiggleShaft);
    const int before = d.count("pose:");
    d.press(Command::next);
    EXPECT_EQ(d.procedure.prompt().step, Step::wiggleShaft);
    EXPECT_EQ(d.count("pose:"), before + 1); // it hurries the pose on
}

TEST(Procedure, TheLiftQuestionTakesItsAnswer) {
    Driver d(pedalSheet(), kPedal);
    d.readUntil(Step::lift);
    d.press(Command::liftOffStop);
    EXPECT_EQ(d.count("arm:off-stop"), 1);
    EXPECT_EQ(d.count("skip:lift"), 0);
    EXPECT_EQ(d.procedure.prompt().step, Step::warmRepeat);
}

} // namespace stillwire::testing
