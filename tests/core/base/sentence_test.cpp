// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/sentence.hpp"

#include <gtest/gtest.h>

namespace stillwire {

TEST(Sentence, PutsArgumentsInTheirPlaces) {
    EXPECT_EQ((Sentence{"%2 fell to %1, 100 %% sure", {"1.98 V", "4.12 V"}}.english()),
              "4.12 V fell to 1.98 V, 100 % sure");
}

TEST(Sentence, KeepsAPlaceholderWithoutItsArgument) { EXPECT_EQ(fill("%1 and %2", {"a"}), "a and %2"); }

TEST(Sentence, NeverWritesMinusZero) {
    EXPECT_EQ(volts(-0.001), "0.00 V");
    EXPECT_EQ(volts(-0.01), "-0.01 V");
}

} // namespace stillwire
