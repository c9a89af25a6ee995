// SPDX-License-Identifier: GPL-3.0-or-later
// How much a wiggle step looked at, and what it can therefore claim.
#pragma once

#include "core/judge/tally.hpp"

#include <vector>

namespace stillwire {

// Of what a step shook of shaft or harness; how many poses were wanted is not asked.
[[nodiscard]] StepCoverage coverStep(const CoverageEvidence& evidence, Step step, Wiggled shaken);
// Every wiggle step done, and the two required ones; after wiggle-harness its sections, if the capture names them.
[[nodiscard]] std::vector<StepCoverage> coverSteps(const CoverageEvidence& evidence, const Tallies& tallies);
// Shaft and harness together: the bound is that of the worst place.
[[nodiscard]] StepCoverage coverAll(const std::vector<StepCoverage>& steps);

} // namespace stillwire
