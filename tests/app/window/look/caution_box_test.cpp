// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/caution_box.hpp"
#include "app/window/look/caution_memory.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

constexpr int kWide = 4000; // nothing wraps in it

static void showNew(CautionBox& box, const QStringList& cautions) { box.show(cautions, cautions, false); }

// What a step before showed is a line; whoever cannot see it still hears all of it.
TEST(CautionBox, WhatIsNotNewIsFoldedToALine) {
    const Look look;
    CautionBox box(look);
    const QStringList all{QStringLiteral("Chock the wheels."), QStringLiteral("Lower it."),
                          QStringLiteral("Keep clear.")};
    showNew(box, all);
    const int whole = box.heightForWidth(300);
    box.show(all, {}, false);
    EXPECT_LT(box.heightForWidth(300), whole);
    EXPECT_TRUE(box.accessibleDescription().contains("Keep clear."));
    box.show(all, {}, true); // a stop folds nothing
    EXPECT_GE(box.heightForWidth(300), whole);
}

TEST(CautionMemory, KnowsWhatAnEarlierStepShowed) {
    CautionMemory memory;
    memory.take(Step::reference, {"key", "leads"});
    memory.take(Step::reference, {"key", "leads"}); // the same step goes on
    EXPECT_EQ(memory.fresh(), QStringList({"key", "leads"}));
    memory.take(Step::ground, {"key", "brake"});
    EXPECT_EQ(memory.fresh(), QStringList({"brake"}));
    memory.take(Step::coldStart, {"key", "brake"});
    EXPECT_TRUE(memory.fresh().isEmpty());
    EXPECT_EQ(memory.all().size(), 2);
    memory.reset();
    memory.take(Step::reference, {"key"});
    EXPECT_EQ(memory.fresh().size(), 1);
}

TEST(CautionBox, EachCautionHasALineOfItsOwn) {
    const Look look;
    CautionBox two(look), four(look);
    showNew(two, {QStringLiteral("Chock the wheels."), QStringLiteral("Lower it.")});
    showNew(four, {QStringLiteral("Chock the wheels."), QStringLiteral("Lower it."), QStringLiteral("Keep clear."),
                   QStringLiteral("Unplug nothing.")});
    const double line = QFontMetricsF(look.font(TextSize::small)).height();
    EXPECT_GE(four.heightForWidth(kWide) - two.heightForWidth(kWide), 2 * line - 2);
}

TEST(CautionBox, LargerWordsKeepMoreRoom) {
    const Look look;
    CautionBox box(look);
    showNew(box, {QStringLiteral("Chock the wheels."), QStringLiteral("Lower it.")});
    const int before = box.heightForWidth(kWide);
    box.setSize(TextSize::text);
    EXPECT_GT(box.heightForWidth(kWide), before);
    EXPECT_EQ(box.minimumHeight(), box.heightForWidth(box.width()));
}

} // namespace
} // namespace stillwire
