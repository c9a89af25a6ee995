// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/cold_warm.hpp"

#include "core/stats/exact.hpp"

namespace stillwire {

namespace {
constexpr double kSignificant = 0.05;
}

std::optional<ColdWarm> compareColdWarm(const CoverageEvidence& evidence) {
    if (!evidence.places->did(Step::warmRepeat)) return std::nullopt;
    ColdWarm result;
    for (const Step step : {Step::wiggleShaft, Step::wiggleHarness}) {
        const StepCoverage cold = coverStep(evidence, step);
        result.coldPoses += cold.poses;
        result.coldDropouts += cold.dropouts;
    }
    const StepCoverage warm = coverStep(evidence, Step::warmRepeat);
    result.warmPoses = warm.poses;
    result.warmDropouts = warm.dropouts;
    if (result.warmPoses == 0 || result.coldPoses == 0) return std::nullopt;
    result.p = equalRatesTest(result.coldDropouts, result.coldPoses, result.warmDropouts, result.warmPoses);
    result.significant = result.p < kSignificant;
    return result;
}

} // namespace stillwire
