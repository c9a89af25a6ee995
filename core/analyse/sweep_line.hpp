// SPDX-License-Identifier: GPL-3.0-or-later
// Dropouts while the shaft is swept: a reading off the robust line through its neighbours.
#pragma once

#include "core/findings/findings.hpp"

#include <array>
#include <optional>

namespace stillwire {

// Looks at seven readings and judges the one in the middle, three readings late.
class SweepLine {
public:
    static constexpr int kWindow = 7;

    explicit SweepLine(double resolution_V) : resolution_V_(resolution_V) {}

    // The excursion that ended with the reading just judged, if one did.
    std::optional<Excursion> push(Time time, double volts_V, double threshold_V);
    // The readings about the excursion that has just ended, `readings` of them, moved on evenly, as a slow sweep does
    // and a press does not.
    [[nodiscard]] bool even(int readings) const;
    void reset();

private:
    [[nodiscard]] bool bends(double limit_V) const;

    double resolution_V_;
    std::array<double, kWindow> time_s_{}, volts_V_{};
    std::array<Time, kWindow> time_{};
    int count_ = 0;
    std::optional<Excursion> open_;
    bool bend_ = false; // where the hand changed its pace, the open excursion's first reading
};

} // namespace stillwire
