// SPDX-License-Identifier: GPL-3.0-or-later
// Watches the shaft being swept: finds dropouts short and long, and keeps the readings in which the signal has leapt
// off the sweep from whoever follows the level, until it is known what they were.
#pragma once

#include "core/analyse/sweep_bridge.hpp"
#include "core/analyse/sweep_leap.hpp"
#include "core/analyse/sweep_line.hpp"

#include <vector>

namespace stillwire {

class SweepWatch {
public:
    struct Point {
        Time time{0};
        double volts_V = 0;
    };

    SweepWatch(double resolution_V, Window rest) : line_(resolution_V), leap_(rest) {}

    // `asked`: a step asks for a sweep; else only a shaft that moves on evenly counts as swept.
    void push(Time time, double volts_V, double threshold_V, bool asked);
    // What the last push has released for following, oldest first: usually its own reading; none while it is not
    // known what a leap will be.
    [[nodiscard]] const std::vector<Point>& onward() const { return onward_; }
    // The excursions that the last push has settled.
    [[nodiscard]] const std::vector<Excursion>& dropouts() const { return dropouts_; }
    [[nodiscard]] bool withholds() const { return !withheld_.empty(); }
    // A mark ends the sweep: whatever is withheld is let go.
    [[nodiscard]] std::vector<Point> end();

private:
    void tell(const Excursion& excursion);

    SweepLine line_;
    SweepLeap leap_;
    SweepBridge bridge_;
    std::vector<Excursion> undecided_; // until it is known whether a leap covers them
    Time toldTo_{-1};                  // the end of the newest told
    std::vector<Excursion> dropouts_;
    std::vector<Point> withheld_, onward_;
};

} // namespace stillwire
