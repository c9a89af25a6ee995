// SPDX-License-Identifier: GPL-3.0-or-later
// What an analyser has to reach in every row, in one place.
#pragma once

#include "tests/core/families/score.hpp"

#include <string>

namespace stillwire::families {

struct PassMarks {
    double seen_percent = 99.5;  // of readings clearly off, at least
    double moves_percent = 99.5; // with their edges
    double sweeps_percent = 98;  // of their time under travel
    double wiggles_percent = 99;
    double calm_percent = 99;
    double plateaus_percent = 99; // with their level
    double blind_percent = 99;
    double falseFlags_per50h = 10;  // at most
    double falseTravel_per50h = 10; // travel and jumps together
    double falseWiggles_per50h = 10;
    double falseBlind_per50h = 10;
    int lawsBroken = 0;
};

// What a score falls short of, in words; empty: of nothing. A few cases may fall short by chance: a row fails only by
// more than an analyser exactly as good as the marks would show in one run of a thousand.
[[nodiscard]] std::string shortOf(const PassMarks& marks, const Score& score);

} // namespace stillwire::families
