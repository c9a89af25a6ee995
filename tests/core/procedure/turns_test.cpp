// SPDX-License-Identifier: GPL-3.0-or-later
// Turning the sensor on its mount: when it is asked for, what counts as a turn, and when it is over.
#include "tests/core/procedure/driver.hpp"

#include <gtest/gtest.h>

namespace stillwire::testing {
namespace {

// Turning would mend the pedal, to this at its rest.
void wantTurning(Driver& d, double aim_V) {
    d.findings.adjustment.wanted = d.findings.adjustment.feasible = true;
    d.findings.adjustment.targetRaw_V["released"] = aim_V;
}

} // namespace

TEST(Procedure, TurnsTheSensorOnlyWhenTurningHelps) {
    Driver d(pedalSheet(), kPedal);
    wantTurning(d, 0.84);
    d.findings.verdict.decision = Decision::adjust;
    ASSERT_TRUE(d.readUntil(Step::adjust));
    EXPECT_DOUBLE_EQ(*d.procedure.prompt().aim_V, 0.84);
    d.press(Command::turnIn);
    EXPECT_EQ(d.count("turn:+1"), 1);
    d.findings.adjustment.targetRaw_V["released"] = 0.70; // what half a turn makes of the advice is not the aim
    d.read();
    EXPECT_DOUBLE_EQ(*d.procedure.prompt().aim_V, 0.84);
    d.level_V["released"] = 0.84; // the hand has found the aim
    d.findings.adjustment.wanted = false;
    ASSERT_TRUE(d.readUntil(Step::confirm, 60));
    EXPECT_TRUE(d.readUntil(Step::putBack, 120));
}

TEST(Procedure, ATurnThatNobodyCountedIsMarkedAsOne) {
    Driver d(pedalSheet(), kPedal);
    wantTurning(d, 0.92);
    ASSERT_TRUE(d.readUntil(Step::adjust));
    d.read();
    d.level_V["released"] = 0.92; // no key: both hands are on the sensor
    ASSERT_TRUE(d.readUntil(Step::confirm, 60));
    EXPECT_EQ(d.count("turn:+0"), 1);
}

TEST(Procedure, ACountedTurnIsNotMarkedTwice) {
    Driver d(pedalSheet(), kPedal);
    wantTurning(d, 0.92);
    ASSERT_TRUE(d.readUntil(Step::adjust));
    d.read();
    d.press(Command::turnIn);
    d.level_V["released"] = 0.92;
    ASSERT_TRUE(d.readUntil(Step::confirm, 60));
    EXPECT_EQ(d.count("turn:"), 1);
}

TEST(Procedure, DoesNotTurnASensorThatMustGo) {
    Driver d(pedalSheet(), kPedal);
    wantTurning(d, 0.92);
    d.findings.verdict.decision = Decision::replace;
    EXPECT_TRUE(d.readUntil(Step::putBack));
    EXPECT_EQ(d.count("step:adjust"), 0);
}

TEST(Procedure, TurnsAgainWhenTighteningMovedIt) {
    Driver d(pedalSheet(), kPedal);
    wantTurning(d, 0.82);
    ASSERT_TRUE(d.readUntil(Step::confirm));
    EXPECT_TRUE(d.readUntil(Step::adjust, 120));
    EXPECT_TRUE(d.readUntil(Step::putBack, 3600)); // and gives up some time
}

} // namespace stillwire::testing
