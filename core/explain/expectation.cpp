// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/expectation.hpp"

#include "core/domain/timeline.hpp"

#include <algorithm>

namespace stillwire {

Expectation stillExpectation(const Tuning& tuning) {
    Expectation e;
    e.unmarked = e.rails = false;
    e.beginMove = tuning.moving.unasked;
    e.holds = true;
    e.flat_s = tuning.away.stillFlat_s;
    e.flatReadings = tuning.away.stillFlatReadings;
    return e;
}

Expectation expectationAt(const Context& place, Time stepFrom, const Tuning& tuning, double interval_s) {
    const Tuning::Away& away = tuning.away;
    const Tuning::Moving& moving = tuning.moving;
    Expectation e = stillExpectation(tuning);
    e.from = place.from;
    e.stepFrom = stepFrom;
    e.asked = place.moveExpected;
    e.grace_s = place.wire == Wire::signal ? moving.grace_s : moving.leadGrace_s;
    e.unmarked = place.motion == ExpectedMotion::unmarked;
    e.judged = place.motion != ExpectedMotion::free;
    e.rails = place.wire == Wire::signal;
    e.held = place.heldByOperator;
    e.stirred = place.poseIndex >= 0;
    e.holds = place.motion == ExpectedMotion::still || place.motion == ExpectedMotion::positions;
    switch (place.motion) {
    case ExpectedMotion::unmarked:
        e.beginMove = moving.begins;
        e.flatReadings = 0;
        e.flat_s = std::max(away.flat_s, away.flatIntervals * interval_s);
        break;
    case ExpectedMotion::still:
    case ExpectedMotion::positions: return e;
    case ExpectedMotion::moving:
        // A supply wire moves once, when the lead comes to it.
        if (place.wire != Wire::signal) return e;
        e.beginMove = moving.inStep;
        e.flat_s = 0;
        e.flatReadings = away.movingFlatReadings;
        break;
    case ExpectedMotion::sweep:
        e.sweep = true;
        e.beginMove = moving.asked;
        e.flatReadings = 0;
        e.flat_s = std::max(away.flat_s, away.flatIntervals * interval_s);
        break;
    case ExpectedMotion::free: e.beginMove = 0; break;
    }
    return e;
}

} // namespace stillwire
