// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/expectation.hpp"

#include "core/analyse/place_book.hpp"

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

Expectation expectationAt(const Place& place, Time stepFrom, const Tuning& tuning, double interval_s) {
    const Tuning::Away& away = tuning.away;
    const Tuning::Moving& moving = tuning.moving;
    Expectation e = stillExpectation(tuning);
    e.from = place.from;
    e.stepFrom = stepFrom;
    e.asked = place.moveAsked;
    e.unmarked = place.asked == Asked::unmarked;
    e.judged = place.asked != Asked::free;
    e.rails = place.wire == Probed::signal;
    e.held = place.foot;
    e.stirred = place.poseIndex >= 0;
    if (place.asked != Asked::still && place.asked != Asked::positions) {
        e.holds = false;
        e.flat_s = 0;
        e.flatReadings = 0;
    }
    switch (place.asked) {
    case Asked::unmarked:
        e.beginMove = moving.begins;
        e.flat_s = std::max(away.flat_s, away.flatIntervals * interval_s);
        break;
    case Asked::still:
    case Asked::positions: return e;
    case Asked::moving:
        e.beginMove = moving.inStep;
        e.flatReadings = away.movingFlatReadings;
        break;
    case Asked::sweep:
        e.beginMove = moving.asked;
        e.flat_s = std::max(away.flat_s, away.flatIntervals * interval_s);
        break;
    case Asked::free: e.beginMove = 0; break;
    }
    return e;
}

} // namespace stillwire
