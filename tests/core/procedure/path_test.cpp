// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/path.hpp"

#include <algorithm>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

std::size_t indexOf(const Path& path, Step step) {
    const auto& all = path.entries();
    const auto at = std::find_if(all.begin(), all.end(), [&](const PathEntry& e) { return e.step == step; });
    return static_cast<std::size_t>(at - all.begin());
}

Findings toTurn() {
    Findings f;
    f.verdict.decision = Decision::adjust;
    f.adjustment.wanted = f.adjustment.feasible = true;
    return f;
}

Path doneUpTo(Step step) {
    Path path;
    for (std::size_t i = 0; i <= indexOf(path, step); ++i) {
        path.go(i);
        path.set(StepOutcome::done);
    }
    return path;
}

TEST(Path, BeginsWithHookUpAndEndsWithPutBack) {
    const Path path;
    EXPECT_EQ(path.step(), Step::hookUp);
    EXPECT_EQ(path.entries()[path.last()].step, Step::putBack);
}

TEST(Path, LeavesTurningOutWhereNothingIsToBeTurned) {
    Path path = doneUpTo(Step::warmRepeat);
    path.go(path.next(Findings{}));
    EXPECT_EQ(path.step(), Step::putBack);
    EXPECT_EQ(indexOf(path, Step::adjust), path.entries().size());
    EXPECT_EQ(indexOf(path, Step::confirm), path.entries().size());
}

TEST(Path, ASensorThatMustGoIsNotTurned) {
    Findings f = toTurn();
    f.verdict.decision = Decision::replace;
    Path path = doneUpTo(Step::warmRepeat);
    path.go(path.next(f));
    EXPECT_EQ(path.step(), Step::putBack);
}

TEST(Path, TurnsAgainWhereTheEndsConfirmedAreNotRightFourTimesAtMost) {
    Path path = doneUpTo(Step::warmRepeat);
    int rounds = 0;
    path.go(path.next(toTurn()));
    while (path.step() == Step::adjust) {
        ++rounds;
        path.set(StepOutcome::done);
        path.go(path.next(toTurn()));
        ASSERT_EQ(path.step(), Step::confirm);
        path.set(StepOutcome::done);
        path.go(path.next(toTurn()));
    }
    EXPECT_EQ(rounds, 4);
    EXPECT_EQ(path.step(), Step::putBack);
}

TEST(Path, NothingIsConfirmedOfAnAdjustmentThatWasSkipped) {
    Path path = doneUpTo(Step::warmRepeat);
    path.go(path.next(toTurn()));
    path.set(StepOutcome::skipped);
    path.dropConfirm();
    path.go(path.next(toTurn()));
    EXPECT_EQ(path.step(), Step::putBack);
}

TEST(Path, WhatTellsTheShaftFromItsLikeComesRightAfterIt) {
    Path path = doneUpTo(Step::wiggleShaft);
    path.addAfterShaft();
    for (const Step wanted :
         {Step::connectorHeld, Step::leadCheck, Step::wiggleReference, Step::wiggleGround, Step::wiggleHarness}) {
        path.go(path.next(Findings{}));
        EXPECT_EQ(path.step(), wanted);
        path.set(StepOutcome::done);
    }
}

} // namespace
} // namespace stillwire::test
