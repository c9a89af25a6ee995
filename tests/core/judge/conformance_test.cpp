// SPDX-License-Identifier: GPL-3.0-or-later
// Inside, outside or too close to call: the rule of JCGM 106 against guard bands and the decision rule of ISO
// 14253-1.
#include "core/judge/levels.hpp"
#include "core/judge/ratiometric.hpp"
#include "core/stats/exact.hpp"

#include <cmath>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

// ISO 14253-1:2017 asks for 95 %: with one limit near, a guard band of 1.645 u (by a secondary text; own construction
// of limits 0.480 to 0.520 V and a guard band of 5 mV, in whole millivolts).
TEST(ConformanceOf, FollowsTheDecisionRuleAtItsBoundaries) {
    const double u = 5.0 / 1.6448536269514722;
    const auto at = [&](double y_mV) { return conformanceOf(probabilityInside(y_mV, u, 480, 520) + 1e-12); };
    EXPECT_EQ(at(485), Conformance::inside);
    EXPECT_EQ(at(484), Conformance::undecided);
    EXPECT_EQ(at(476), Conformance::undecided);
    EXPECT_EQ(conformanceOf(probabilityInside(475, u, 480, 520) - 1e-12), Conformance::outside);
    EXPECT_EQ(at(515), Conformance::inside);
    EXPECT_EQ(at(516), Conformance::undecided);
    EXPECT_EQ(conformanceOf(probabilityInside(525, u, 480, 520) - 1e-12), Conformance::outside);
}

// ILAC-G8:09/2019, 4.2: risk of a false accept with y at the edge of a guard band w.
TEST(ProbabilityInside, GivesTheRiskOfAGuardBand) {
    const auto risk = [](double bandInU) { return 1 - probabilityInside(-bandInU, 1, -1e9, 0); };
    EXPECT_NEAR(risk(1.66), 0.0484572263, 1e-9); // 0.83 U
    EXPECT_NEAR(risk(1.65), 0.0494714680, 1e-9);
    EXPECT_NEAR(risk(6.0) / 9.8659e-10, 1, 1e-4); // 3 U
}

// JCGM 106:2012, 8.3.3.2 Example 1: a limit of 100, 2 % relative uncertainty, rejected only at 99.9 %: published 107.
TEST(ProbabilityInside, GivesTheAcceptanceLimitOfAGuardedRejection) {
    constexpr double limit = 106.5876; // 100/(1 - 0.02·3.0902), recomputed
    EXPECT_NEAR(probabilityInside(limit, 0.02 * limit, -1e9, 100), 0.001, 1e-6);
    EXPECT_NEAR(limit, 107, 0.5);
}

// EA-4/02, Example S9: a hand-held multimeter at 100 V; source 1 mV normal and ±11 mV rectangular, display steps of
// 0.1 V. Published: u = 0.030 V, k = 1.65, U = 0.05 V.
TEST(AccuracyStatement, AgreesWithTheHandHeldMultimeter) {
    MeterTraits meter;
    meter.ranges.push_back({1000, 0.1, 0, 0});
    const double resolution_V = independentUncertainty_V(meter, {100, 0, 1});
    EXPECT_NEAR(resolution_V, 0.0289, 5e-5);
    const double u_V = std::hypot(0.001, 0.011 / std::sqrt(3.0), resolution_V);
    EXPECT_NEAR(u_V, 0.02957, 1e-5);
    EXPECT_NEAR(1.65 * u_V, 0.05, 0.005);
}

} // namespace
} // namespace stillwire
