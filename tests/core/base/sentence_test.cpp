// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/result.hpp"
#include "core/base/sentence.hpp"

#include <gtest/gtest.h>

namespace stillwire {

TEST(Sentence, PutsArgumentsInTheirPlaces) {
    EXPECT_EQ((Sentence{"%2 fell to %1, 100 %% sure", {"1.98 V", "4.12 V"}}.english()),
              "4.12 V fell to 1.98 V, 100 % sure");
}

TEST(Sentence, KeepsAPlaceholderWithoutItsArgument) { EXPECT_EQ(fill("%1 and %2", {"a"}), "a and %2"); }

TEST(Sentence, HoldsNamesAndWholeSentences) {
    const Sentence inner{"%1 is missing", {"max_V"}};
    EXPECT_EQ((Sentence{"header: %1 in %2", {inner, byName("pressed")}}.english()),
              "header: max_V is missing in pressed");
    EXPECT_EQ(verbatim("50 %").english(), "50 %");
}

TEST(Sentence, ErrorsArePlaceWhatAndMend) {
    const Error error{Error::Kind::badInput, "a.csv", 12, {"times go back from %1 s", {"3.2"}}, "split the file"};
    EXPECT_EQ(error.text(), "a.csv:12: times go back from 3.2 s; split the file");
    EXPECT_EQ((Error{Error::Kind::badInput, {}, 0, "no meter is chosen", {}}.text()), "no meter is chosen");
}

// The point is the decimal sign whatever the desktop's locale; std::locale of the process is the C library's too.
TEST(Sentence, FiguresAreRoundedTheSameEverywhere) {
    EXPECT_EQ(plain(4.2134, 2), "4.21");
    EXPECT_EQ(plain(-0.0005, 3), "-0.001"); // to the nearest of the double, which lies just below
    EXPECT_EQ(plain(12, 0), "12");
    EXPECT_EQ(seconds(0.0512), "0.05 s");
}

TEST(Sentence, NeverWritesMinusZero) {
    EXPECT_EQ(volts(-0.001), "0.00 V");
    EXPECT_EQ(volts(-0.01), "-0.01 V");
}

} // namespace stillwire
