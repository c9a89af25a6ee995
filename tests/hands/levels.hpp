// SPDX-License-Identifier: GPL-3.0-or-later
// True levels of a sensor at its positions, so far from every limit that the truth is beyond a meter's doubt.
#pragma once

#include "tests/hands/machine.hpp"
#include "tests/hands/meter.hpp"

#include <vector>

namespace stillwire::hands {

// How far from a limit a level has to be for that: the meter.s own error and a good deal of the contract's u.
[[nodiscard]] double doubt_V(const Meter& meter);
[[nodiscard]] std::vector<double> goodLevels(const Machine& machine, double doubt_V, Dice& dice);
[[nodiscard]] std::vector<double> turnedLevels(const Machine& machine, double doubt_V, Dice& dice);
[[nodiscard]] std::vector<double> shortLevels(const Machine& machine, double doubt_V, Dice& dice);

// The shifts that bring all levels inside, `margin_V` from every limit: a range, crossed if there is none.
struct Shifts {
    double least_V, most_V;
};
[[nodiscard]] Shifts mendingShifts(const Machine& machine, const std::vector<double>& levels_V, double margin_V);

} // namespace stillwire::hands
