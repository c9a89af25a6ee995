// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/level_search.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;

constexpr Time kSpan = 250ms; // two near readings of a quick meter may both lie in a slow movement
constexpr Time kSlowSpan = 1s;
} // namespace

LevelSearch::LevelSearch(const Start& start)
    : start_(start), before_V_(start.newest_V), beforeTime_(start.newest), awayTo_(start.first),
      awayReadings_(start.readings - 1) {}

bool LevelSearch::push(Time time, double volts_V, double tolerance_V) {
    const auto& left_V = start_.left_V;
    if (left_V && std::abs(volts_V - *left_V) > std::abs(start_.extreme_V - *left_V)) start_.extreme_V = volts_V;
    ++start_.readings;
    const double step_V = volts_V - start_.newest_V;
    start_.newest_V = volts_V;
    if (before_V_ && std::abs(step_V) <= tolerance_V && std::abs(volts_V - *before_V_) <= 2 * tolerance_V) {
        const Time span = !left_V ? Time(0) : (start_.slowly ? kSlowSpan : kSpan);
        return time - beforeTime_ >= span;
    }
    awayTo_ = beforeTime_;
    awayReadings_ = start_.readings - 1;
    before_V_ = volts_V;
    beforeTime_ = time;
    return false;
}

Excursion LevelSearch::asExcursion(double threshold_V) const {
    Excursion e;
    e.from = start_.first;
    e.to = std::max(start_.first, awayTo_);
    e.held_V = *start_.left_V;
    e.extreme_V = start_.extreme_V;
    e.threshold_V = threshold_V;
    e.direction = e.extreme_V < e.held_V ? Direction::down : Direction::up;
    e.readings = std::max(1, awayReadings_);
    return e;
}

} // namespace stillwire
