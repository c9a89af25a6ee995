// SPDX-License-Identifier: GPL-3.0-or-later
// An invented serial-logging meter: how it looks, how far it is off, and what its description says of it.
#pragma once

#include "tests/core/families/dice.hpp"

#include <string>
#include <vector>

namespace stillwire::hands {

using families::Dice;

struct Range {
    double fullScale_V = 6, resolution_V = 0.001;
    double gain = 1, offset_V = 0; // how far this one is off, within its accuracy
};

enum class Described { whole, withoutAperture, not_at_all };

struct Meter {
    double interval_s = 0.33, aperture_s = 0.1;
    std::vector<Range> ranges; // ascending; two: it changes by itself and is blind for deadTime_s
    double deadTime_s = 1;
    bool deadRows = false; // the blind time has rows with a flag; else no rows
    double percent = 0.5;  // of reading, as described or as assumed for one that is not
    double counts = 2;
    double noise_counts = 0.5; // sd of a reading
    double follow = 1;         // display filter: how much of the way to the newest value; 1: none
    Described described = Described::whole;

    [[nodiscard]] const Range& rangeFor(double v_V) const;
    [[nodiscard]] double noise_V(const Range& range) const { return noise_counts * range.resolution_V; }
    // The contract's u of one wire's reading, k = 1. `shared`: the percent term cancels.
    [[nodiscard]] double u_V(double v_V, bool shared) const;
    // How long a display filter takes from one end of the travel to the other's last digit.
    [[nodiscard]] double settles_s() const;
    [[nodiscard]] std::string toml() const; // empty: not described
    [[nodiscard]] std::string words() const;
};

[[nodiscard]] Meter anyMeter(Dice& dice);

} // namespace stillwire::hands
