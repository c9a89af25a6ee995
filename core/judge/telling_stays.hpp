// SPDX-License-Identifier: GPL-3.0-or-later
// Which stays at a level say something of their wire.
#pragma once

#include "core/analyse/plateau_book.hpp"
#include "core/domain/timeline.hpp"
#include "core/sheet/sheet.hpp"

#include <vector>

namespace stillwire {

inline constexpr double kRailShare = 0.04; // of the nominal: this near to a rail is on it. Own rule, no source

// A reference at 0 V, a ground above half of the reference, a signal at 0 V: what a lead reads that is off its wire,
// or with the key off. So near to 0 V (shown, with its sign) it is at 0 V.
[[nodiscard]] bool readsNothing(Wire wire, double level_V, const Sheet& sheet);

// Without those taken while the key was off, and without those that read nothing where others of the same wire, at
// the same position, read something: the tip was off it for a while.
[[nodiscard]] std::vector<Plateau> tellingStays(std::vector<Plateau> stays, const Sheet& sheet);

} // namespace stillwire
