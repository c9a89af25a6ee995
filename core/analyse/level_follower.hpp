// SPDX-License-Identifier: GPL-3.0-or-later
// Follows the level of one wire, at rest and on a sweep: hands each reading to the tracker, to the watch on a sweep,
// or to both, and keeps what the watch finds until it is known that the tracker does not tell the same.
#pragma once

#include "core/analyse/level_tracker.hpp"
#include "core/analyse/sweep_watch.hpp"

#include <array>
#include <vector>

namespace stillwire {

class LevelFollowerListener : public TrackerListener {
public:
    virtual void foundOffSweep(const Excursion& excursion) = 0; // late: it is over
};

class LevelFollower {
public:
    struct Setup {
        double resolution_V = 0;
        double play_V = 0;
        std::vector<Window> windows; // of the sheet's positions
        Window rest;
    };
    LevelFollower(Setup setup, LevelFollowerListener& listener);

    ReadingClass push(Time time, double volts_V, ExpectedMotion asked);
    // As push() of each, for readings that are only held: how many may be; and those.
    [[nodiscard]] std::size_t mostQuiet(ExpectedMotion asked) const;
    void pushQuiet(const Reading* first, std::size_t count, ExpectedMotion asked);
    void placeChanged(const Context& place, bool levelMayFollow);
    void blind(); // readings before and after do not touch

    [[nodiscard]] const LevelTracker& tracker() const { return tracker_; }

private:
    static constexpr std::size_t kKept = 8; // a power of two, no less than SweepLine::kWindow
    static_assert(kKept >= SweepLine::kWindow);

    ReadingClass pushSweep(Time time, double volts_V, ExpectedMotion asked);
    ReadingClass pushUnmarked(Time time, double volts_V);
    void remember(const Reading* first, std::size_t count);
    void beginSweep(Time time, double volts_V);
    void end();
    void settleAside();

    LevelFollowerListener* listener_;
    double play_V_;
    LevelTracker tracker_;
    SweepWatch sweep_;
    ExpectedMotion asked_ = ExpectedMotion::free; // where the sweep is
    // Nothing marked: the sweep is watched from the reading that leaves a level until some after the last.
    std::array<SweepWatch::Point, kKept> before_{}; // the newest held readings, a ring
    std::size_t held_ = 0;
    int tail_ = 0;
    std::vector<Excursion> aside_; // found in what may yet turn out to be no sweep
};

} // namespace stillwire
