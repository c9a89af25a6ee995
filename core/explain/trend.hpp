// SPDX-License-Identifier: GPL-3.0-or-later
// The line that a movement follows, from its newest readings, and how evenly it is followed. Least squares with a
// growing memory, then a fading one (Morrison 1969, the gains from memory): a hand changes its pace.
#pragma once

#include "core/explain/level_estimate.hpp"

namespace stillwire {

class Trend {
public:
    Trend() = default;
    Trend(Time time, double volts_V)
        : last_(time), then_(time), newest_V_(volts_V), on_V_(volts_V), then_V_(volts_V) {}
    // The next reading of the movement; off the line, and the pace has changed: the line begins anew.
    void add(const Tuning& tuning, const MeterAt& meter, Time time, double volts_V);

    [[nodiscard]] int readings() const { return readings_; } // of the line
    [[nodiscard]] double newest_V() const { return newest_V_; }
    [[nodiscard]] double slope_V_per_s() const { return slope_V_per_s_; }
    [[nodiscard]] double interval_s() const { return interval_s_; } // from reading to reading of it
    // It has hardly moved for about a second.
    [[nodiscard]] bool paused() const { return paused_; }
    [[nodiscard]] double at(Time time) const { return on_V_ + slope_V_per_s_ * toSeconds(time - last_); }
    // Standard deviation of a reading about that. Precondition: two readings.
    [[nodiscard]] double spread_V(Time time) const;
    // A reading further off is not on the line.
    [[nodiscard]] double reach_V(const Tuning& tuning, const MeterAt& meter, Time time) const;

private:
    void look(const Tuning& tuning, const MeterAt& meter, Time time); // whether it moved

    Time last_{0}, then_{0};
    double newest_V_ = 0, on_V_ = 0; // the newest reading, and the line there
    double slope_V_per_s_ = 0;
    double interval_s_ = 0;
    double uneven_V2_ = 0; // variance of a reading about the line
    double weight_ = 0;    // readings behind it
    double then_V_ = 0;    // about a second ago
    int readings_ = 1;
    bool paused_ = false;
};

} // namespace stillwire
