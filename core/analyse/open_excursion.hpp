// SPDX-License-Identifier: GPL-3.0-or-later
// An excursion while it lasts: how far, how long, where it rests; and what it turns out to have been if the level
// does not come back.
#pragma once

#include "core/analyse/dip_detector.hpp"
#include "core/analyse/runs.hpp"
#include "core/analyse/slow_departure.hpp"
#include "core/domain/timeline.hpp"

#include <optional>
#include <vector>

namespace stillwire {

class OpenExcursion {
public:
    struct Level { // as it was left
        double held_V = 0;
        double limit_V = 0; // beyond this it is an excursion
        double threshold_V = 0;
        double offsetBefore_V = 0; // of the reading before
    };
    enum class Settled { no, moved, jumped, lost };

    void begin(Time time, double volts_V, ExpectedMotion asked, const Level& level);
    // A reading that ends it is no part of it. `together_V`: how near readings of one run lie.
    DipDetector::Event push(Time time, double volts_V, double limit_V, double together_V);
    // True once it is plain that the hand leaves the level, slowly. Once a reading.
    bool leavesSlowly(Time time, double volts_V, double limit_V);
    // Whether the newest run is where the wire is now. `inAnotherWindow`: the run lies in another position's.
    [[nodiscard]] Settled settled(Time time, ExpectedMotion asked, bool inAnotherWindow) const;
    void blind() { runs_.blind(); }

    [[nodiscard]] const Excursion& excursion() const { return excursion_; }
    [[nodiscard]] ExpectedMotion asked() const { return asked_; } // where it began
    [[nodiscard]] const Run& newestRun() const { return runs_.newest(); }
    // It rested elsewhere long enough to have been a press. Where nothing is marked only.
    [[nodiscard]] bool rested() const;
    // It is over, with `next_V` the reading after it.
    [[nodiscard]] Excursion ended() const;
    // A neighbour outside it leant the same way.
    [[nodiscard]] bool shoulder(double next_V) const;
    // What lay deeper before the newest run began; the run itself is where the level has jumped to.
    [[nodiscard]] std::optional<Excursion> deeperBeforeRun() const;

    // The wire arrived with the first run at this level; what lay off it since then were dropouts.
    struct Arrival {
        Time at{0};
        std::vector<Excursion> dropouts;
    };
    [[nodiscard]] Arrival arrivedAt(double level_V, double limit_V, double threshold_V) const;

private:
    Excursion excursion_;
    ExpectedMotion asked_ = ExpectedMotion::unmarked;
    DipDetector dip_;
    SlowDeparture departure_;
    bool shoulderBefore_ = false;
    Runs runs_;
    struct {
        double extreme_V = 0;
        int readings = 0;
        Time to{0};
    } beforeRun_; // the excursion before its newest run began
};

} // namespace stillwire
