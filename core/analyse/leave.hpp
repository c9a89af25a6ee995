// SPDX-License-Identifier: GPL-3.0-or-later
// Whether the level may move without anything being wrong: the marks give leave, and a hand is never exactly on its
// mark.
#pragma once

#include "core/domain/timeline.hpp"

#include <optional>

namespace stillwire {

class Leave {
public:
    struct Change {
        bool otherWire = false;
        bool sameStep = false;
    };
    Change placeChanged(const Context& place); // time is that of the mark
    // A reading has been looked at. What moved while nothing was judged may first show in the reading after, if the
    // meter was dark meanwhile.
    void looked(ExpectedMotion asked) {
        if (asked != ExpectedMotion::free) wasFree_ = false;
    }
    // `established`: the level left has been there for some time.
    [[nodiscard]] bool mayMove(Time time, ExpectedMotion asked, bool established) const;
    // If it may move here, then only because of a mark a moment ago, and what moves may come back.
    [[nodiscard]] bool byGrace(ExpectedMotion asked) const;
    [[nodiscard]] bool asked() const { return asked_; } // for a movement, which has not come yet
    void arrived() { asked_ = false; }

    // It left this level while nothing was judged. If it goes back there soon, that is nothing to judge either.
    void leftUnjudged(Time from, double level_V);
    [[nodiscard]] bool comesHome(Time time, double volts_V, double within_V) const;

    [[nodiscard]] Wire wire() const { return wire_; }
    [[nodiscard]] Time stepFrom() const { return stepFrom_; } // when the step began

private:
    bool asked_ = false;
    bool needleComes_ = false; // from another wire, and has not come yet
    Time graceUntil_{-1};      // the hand corrects itself
    bool free_ = false;        // nothing is judged
    bool wasFree_ = false;     // until a moment ago; no reading since
    Wire wire_ = Wire::signal;
    int stepVisit_ = -1;
    Time stepFrom_{0};
    struct Home {
        double level_V = 0;
        Time left{0};
    };
    std::optional<Home> home_;
};

} // namespace stillwire
