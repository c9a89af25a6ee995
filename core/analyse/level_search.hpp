// SPDX-License-Identifier: GPL-3.0-or-later
// Looks for the level that a wire on the move settles at: two readings that lie together.
#pragma once

#include "core/findings/findings.hpp"

#include <optional>

namespace stillwire {

class LevelSearch {
public:
    struct Start {
        std::optional<double> left_V; // the level left, if any
        Time lastHeld{0};             // of the last reading at it
        Time first{0};                // of the first off it
        double extreme_V = 0;         // of the readings off it so far
        double newest_V = 0;          // of them
        Time newest{0};
        int readings = 1;         // so many
        bool surelyMoved = false; // and coming back to the level left is a movement too
        bool slowly = false;      // two near readings are no rest yet
        bool unjudged = false;    // nothing was judged as it left
        bool byGrace = false;     // no mark asked for this movement by itself: it may come back
    };

    LevelSearch() = default; // from nowhere: the first two that lie together
    explicit LevelSearch(const Start& start);

    // True with the reading that lies together with the one before: settled.
    bool push(Time time, double volts_V, double tolerance_V);
    void blind() { before_V_.reset(); } // readings before and after do not touch
    void forgetLeft() { start_.left_V.reset(); }

    [[nodiscard]] const Start& start() const { return start_; }
    [[nodiscard]] std::optional<double> left_V() const { return start_.left_V; }
    // The first of the readings that lie together.
    [[nodiscard]] double before_V() const { return *before_V_; }
    [[nodiscard]] Time before() const { return beforeTime_; }
    // All since the level was left, had it been an excursion.
    [[nodiscard]] Excursion asExcursion(double threshold_V) const;

private:
    Start start_; // extreme and newest as they are now
    std::optional<double> before_V_;
    Time beforeTime_{0};
    Time awayTo_{0}; // the reading before it
    int awayReadings_ = 0;
};

} // namespace stillwire
