// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of the judgement table: what must hold, what it means, how it is said, and the test that would split it
// from the others. Each in the order of rank; wires come before dropouts, dropouts before levels.
#pragma once

#include "core/judge/judgement.hpp"
#include "core/judge/phrases.hpp"

#include <algorithm>
#include <span>
#include <string>

namespace stillwire {

[[nodiscard]] std::span<const JudgementRow> rowsOfWires();
[[nodiscard]] std::span<const JudgementRow> rowsOfDropouts();
[[nodiscard]] std::span<const JudgementRow> rowsOfLevels();

// "3" of "32 poses".
[[nodiscard]] inline std::string faults(const ShakenTally& tally) { return std::to_string(tally.faultPoses); }
[[nodiscard]] inline Sentence poses(const ShakenTally& tally) {
    return countedPoses(std::max(tally.poses, tally.faultPoses));
}

} // namespace stillwire
