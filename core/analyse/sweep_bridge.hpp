// SPDX-License-Identifier: GPL-3.0-or-later
// Dropouts in a sweep that a hand alone could just have made, but for one thing: before and after them lies one line.
// Told late, once some readings after them are in.
#pragma once

#include "core/findings/findings.hpp"

#include <array>
#include <optional>

namespace stillwire {

class SweepBridge {
public:
    static constexpr std::size_t kSide = 4; // readings on the line on either side
    static constexpr std::size_t kMostOff = 12;

    // The excursion that the readings so far show, with the newest `kSide` back on the line.
    std::optional<Excursion> push(Time time, double volts_V, double threshold_V);
    void reset() { count_ = 0; }

private:
    struct Point {
        Time time{0};
        double volts_V = 0;
    };
    [[nodiscard]] std::optional<Excursion> across(std::size_t off, double threshold_V) const;

    std::array<Point, 2 * kSide + kMostOff> points_; // oldest first
    std::size_t count_ = 0;
};

} // namespace stillwire
