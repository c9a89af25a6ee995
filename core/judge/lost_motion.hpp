// SPDX-License-Identifier: GPL-3.0-or-later
// "Compare the same place from both directions" (common practice, no source): lost motion of a linkage leaves a gap
// that repeats. The signal is the only measure of where the pedal is, so only a position between two others can tell.
#pragma once

#include "core/judge/levels.hpp"

#include <vector>

namespace stillwire {

// One arrival at a position, from the position before it: both are indices of the sheet.
struct Arrival {
    int from = -1, at = -1;
    double level_V = 0; // nominal
};

// A gap wider than limit_V between arrivals from either side, two or more each, that lie together by themselves.
[[nodiscard]] std::optional<LostMotion> findLostMotion(const Sheet& sheet, const std::vector<Arrival>& arrivals,
                                                       double limit_V);

} // namespace stillwire
