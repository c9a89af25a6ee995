// SPDX-License-Identifier: GPL-3.0-or-later
// Releases that hang, and releases that scatter. Trade's table: "rest level scattered, no spikes: spring, binding,
// slack: mechanical repair first" (common practice, no source).
#include "tests/support/guided_run.hpp"

#include <algorithm>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

Findings released(std::vector<double> returns_V, const Sheet& sheet = risingSheet()) {
    GuidedRun run;
    run.rest_V = 0.82;
    run.pressed_V = 4.1;
    run.arm = "on-stop";
    run.returns_V = std::move(returns_V);
    return examine(guided(run, 2), sheet);
}

TEST(Releases, ThatScatterInsideTheWindowAreMechanical) {
    Dice dice(7);
    for (const double scatter_V : {0.06, 0.08, 0.11})
        for (int i = 0; i < 6; ++i) {
            std::vector<double> returns_V;
            for (int k = 0; k < 10; ++k) returns_V.push_back(0.825 + dice.between(-scatter_V, scatter_V));
            const Findings f = released(returns_V);
            EXPECT_EQ(f.verdict.decision, Decision::checkLinkage) << whatItSaid(f);
            EXPECT_GT(*f.positions[0].spread_V, 0.9 * scatter_V) << "one that stands apart is left out, two are not";
        }
}

TEST(Releases, ThatHangOutsideAmongGoodOnesAreTheSensor) {
    EXPECT_EQ(released({0.82, 1.3, 0.82, 0.82, 1.35}).verdict.decision, Decision::replace);
}

// Two plain heaps inside one wide window are good releases and bad ones.
TEST(Releases, ThatPartPlainlyHangInsideToo) {
    Sheet wide = risingSheet();
    wide.positions[0].window = {0.5, 1.5};
    EXPECT_EQ(released({0.82, 1.30, 0.83, 0.82, 0.82, 1.31}, wide).verdict.decision, Decision::replace);
    EXPECT_EQ(released({0.82, 0.95, 1.08, 0.88, 1.02, 1.14}, wide).verdict.decision, Decision::checkLinkage);
}

TEST(Releases, ASpreadWithinPlayIsNone) {
    EXPECT_EQ(released({0.82, 0.85, 0.83, 0.81, 0.84}).verdict.decision, Decision::keep);
}

} // namespace
} // namespace stillwire::test
