// SPDX-License-Identifier: GPL-3.0-or-later
// Releases that stop short of rest while others do not.
#pragma once

#include "core/judge/levels.hpp"

#include <vector>

namespace stillwire {

// Marks the hanging visits of `levels.positions[rest]` and fills levels.hangs, hangLevel_V and goodRest_V.
// `returned`: which of its visits came from a working position. A visit hangs that lies further towards the working
// positions than max(play, 6·noise, 3 counts) from those that came back furthest (from the median, with the rest
// between two positions).
void findHangs(const Sheet& sheet, const MeterTraits& meter, std::size_t rest, const std::vector<bool>& returned,
               double noise_V, Levels& levels);

} // namespace stillwire
