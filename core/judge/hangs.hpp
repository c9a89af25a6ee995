// SPDX-License-Identifier: GPL-3.0-or-later
// Releases that stop short of rest while others do not.
#pragma once

#include "core/judge/levels.hpp"

#include <optional>
#include <vector>

namespace stillwire {

struct Releases {
    std::size_t rest = 0;           // index of the position
    std::vector<bool> returned;     // which of its visits came from a working position
    std::optional<double> before_V; // where it stood before anything was pressed, nominal
    std::optional<bool> armOnStop;  // as answered
    Time answered{0};
};

// Marks the hanging visits of `levels.positions[rest]` and fills levels.hangs, hangLevel_V, goodRest_V, hungOnStop.
// A visit hangs that lies further towards the working positions than limit_V, max(play, 6·noise, 3 counts), from
// those that came back furthest (from the median, with the rest between two positions). None may have come back: then
// they are held against the level before the first press, if they scatter or the arm was seen off its stop; a level
// that moved once and is steady there is a mount that slipped.
void findHangs(const Sheet& sheet, double limit_V, const Releases& releases, Levels& levels);

} // namespace stillwire
