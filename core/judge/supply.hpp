// SPDX-License-Identifier: GPL-3.0-or-later
// The reference and the ground wire: measured, or assumed.
#pragma once

#include "core/judge/levels.hpp"

#include <vector>

namespace stillwire {

[[nodiscard]] Settled settledOf(const Plateau& plateau);

// Fills levels.reference and levels.ground from the stays on those wires and says what levels are measured against.
[[nodiscard]] Supply weighSupply(const LevelEvidence& evidence, const std::vector<Plateau>& stays, Levels& levels);

} // namespace stillwire
