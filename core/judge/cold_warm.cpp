// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/cold_warm.hpp"

#include "core/stats/exact.hpp"

namespace stillwire {

namespace {
constexpr double kSignificant = 0.05;
}

std::optional<ColdWarm> compareColdWarm(const CoverageEvidence& evidence) {
    if (!evidence.timeline->did(Step::warmRepeat)) return std::nullopt;
    ColdWarm result;
    // Like with like: the shaft against the shaft, the harness against the harness, where warm poses shook it.
    for (const Wiggled shaken : {Wiggled::shaft, Wiggled::harness}) {
        const StepCoverage warm = coverStep(evidence, Step::warmRepeat, shaken);
        if (warm.poses == 0) continue;
        const StepCoverage cold =
            coverStep(evidence, shaken == Wiggled::shaft ? Step::wiggleShaft : Step::wiggleHarness, shaken);
        result.coldPoses += cold.poses;
        result.coldDropouts += cold.dropouts;
        result.warmPoses += warm.poses;
        result.warmDropouts += warm.dropouts;
    }
    if (result.warmPoses == 0 || result.coldPoses == 0) return std::nullopt;
    result.p = equalRatesTest(result.coldDropouts, result.coldPoses, result.warmDropouts, result.warmPoses);
    result.significant = result.p < kSignificant;
    return result;
}

} // namespace stillwire
