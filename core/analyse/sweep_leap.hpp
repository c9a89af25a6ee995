// SPDX-License-Identifier: GPL-3.0-or-later
// Dropouts while the shaft is swept, as leaps: the reading leaves the sweep at once, stays off it, and leaps back to
// where a hand could have swept meanwhile. Of any length up to some seconds, where a line through a few neighbours
// would follow it.
#pragma once

#include "core/findings/findings.hpp"

#include <array>
#include <optional>

namespace stillwire {

class SweepLeap {
public:
    // The window of the rest position, as the meter would about show it: a stop there is a hand that let go.
    explicit SweepLeap(Window rest) : rest_(rest) {}

    // The excursion that this reading, back on the sweep, has ended. `evenOnly`: leave only a sweep that goes on
    // evenly; else a shaft at rest, too.
    std::optional<Excursion> push(Time time, double volts_V, double threshold_V, bool evenOnly);
    void reset();
    [[nodiscard]] bool off() const { return off_.readings > 0; }
    // Of the newest excursion told, with its neighbours; nothing else may be made of what lies in it.
    [[nodiscard]] bool covers(const Excursion& excursion) const;

private:
    struct Point {
        Time time{0};
        double volts_V = 0;
    };
    void remember(Point point);
    [[nodiscard]] bool wasLeaving() const;
    [[nodiscard]] bool leaptInTwo(Point point, double limit_V) const;
    void leave(Point point, double limit_V);
    void giveUp(Point point);                             // whatever it was, it is no dropout
    [[nodiscard]] double ahead_V(double seconds_s) const; // where the sweep would be, that long after the last point
    [[nodiscard]] bool onSweep(Point point, double threshold_V) const;
    [[nodiscard]] bool begunMeanwhile(Point point, double threshold_V) const;
    [[nodiscard]] bool caughtUp(Point point, double threshold_V) const;
    [[nodiscard]] double due_V(Time time) const;           // at that time, had the newest point not been
    [[nodiscard]] double cameBack_V(double volts_V) const; // from the extreme
    [[nodiscard]] bool leaptBack(Point point, double limit_V) const;
    [[nodiscard]] bool wanders(Point point, double limit_V);
    [[nodiscard]] bool letGo() const;
    [[nodiscard]] bool sweptBack(Point point) const;

    Window rest_;
    static constexpr std::size_t kBefore = 4;
    std::array<Point, kBefore> before_; // on the sweep, oldest first
    std::size_t count_ = 0;
    double slope_V_per_s_ = 0, step_V_ = 0, interval_s_ = 0;
    double slopeBefore_V_per_s_ = 0, stepBefore_V_ = 0; // of the reading before
    bool even_ = false, evenBefore_ = false;
    Excursion off_;
    Point lastOff_, priorOff_; // the newest two off the sweep
    double farthest_V_ = 0;    // off where the sweep would have been
    Time lastFar_{0};          // of the newest half as far or more
    bool strayed_ = false;     // the reading before was not where the one before it was
    int atRest_ = 0;           // readings in the window of the rest, and between what
    double restLow_V_ = 0, restHigh_V_ = 0;
    Time toldFrom_{-1}, toldTo_{-1};
};

} // namespace stillwire
