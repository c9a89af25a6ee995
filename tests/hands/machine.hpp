// SPDX-License-Identifier: GPL-3.0-or-later
// Invented machines with a three-wire sensor each, and the sheet that a mechanic would have of it.
#pragma once

#include "tests/core/families/dice.hpp"

#include <string>
#include <vector>

namespace stillwire::hands {

using families::Dice;

struct Place { // a position of the lever
    std::string name;
    double min_V = 0, max_V = 0; // nominal
    bool rest = false;
    [[nodiscard]] double middle_V() const { return 0.5 * (min_V + max_V); }
};

struct Machine {
    std::string name;
    std::vector<Place> places;         // in the order of travel
    std::vector<std::string> sections; // of the harness, from the sensor
    double nominal_V = 5;
    double drift_V = 0.05; // allowance of the sheet; every mount here can be turned
    double play_V = 0.05;
    double maxDrop_V = 0.10;

    [[nodiscard]] std::size_t rest() const;
    [[nodiscard]] std::vector<std::size_t> working() const;
    [[nodiscard]] std::string sheetToml() const;
};

// `leastHalf_V`: no window is narrower, so that a meter of its accuracy can tell a good level inside.
[[nodiscard]] Machine anyMachine(Dice& dice, double leastHalf_V);

} // namespace stillwire::hands
