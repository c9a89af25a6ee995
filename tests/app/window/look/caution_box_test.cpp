// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/caution_box.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

constexpr int kWide = 4000; // nothing wraps in it

TEST(CautionBox, EachCautionHasALineOfItsOwn) {
    const Look look;
    CautionBox two(look), four(look);
    two.show({QStringLiteral("Chock the wheels."), QStringLiteral("Lower it.")}, false);
    four.show({QStringLiteral("Chock the wheels."), QStringLiteral("Lower it."), QStringLiteral("Keep clear."),
               QStringLiteral("Unplug nothing.")},
              false);
    const double line = QFontMetricsF(look.font(TextSize::small)).height();
    EXPECT_GE(four.heightForWidth(kWide) - two.heightForWidth(kWide), 2 * line - 2);
}

TEST(CautionBox, LargerWordsKeepMoreRoom) {
    const Look look;
    CautionBox box(look);
    box.show({QStringLiteral("Chock the wheels."), QStringLiteral("Lower it.")}, false);
    const int before = box.heightForWidth(kWide);
    box.setSize(TextSize::text);
    EXPECT_GT(box.heightForWidth(kWide), before);
    EXPECT_EQ(box.minimumHeight(), box.heightForWidth(box.width()));
}

} // namespace
} // namespace stillwire
