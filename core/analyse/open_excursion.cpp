// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/open_excursion.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;

constexpr Time kJumpSettles = 8s; // a level that stays elsewhere this long has jumped; poses are shorter
constexpr int kJumpReadings = 8;
constexpr Time kNeverSettles = 60s; // away for so long and never at rest: look for a level anew
constexpr int kMoveReadings = 5;    // settled elsewhere in a step about moving
constexpr int kPressReadings = 4;   // settled in another position's window, nothing marked
constexpr Time kPressSettles = 1600ms;
constexpr double kShoulderShare = 0.4;

bool leans(double offset_V, double depth_V) {
    return offset_V * depth_V > 0 && std::abs(offset_V) >= kShoulderShare * std::abs(depth_V);
}
} // namespace

void OpenExcursion::begin(Time time, double volts_V, ExpectedMotion asked, const Level& level) {
    const double offset_V = volts_V - level.held_V;
    asked_ = asked;
    dip_.reset();
    dip_.push(offset_V, level.limit_V);
    excursion_ = Excursion{};
    excursion_.from = excursion_.to = time;
    excursion_.held_V = level.held_V;
    excursion_.extreme_V = volts_V;
    excursion_.threshold_V = level.threshold_V;
    excursion_.direction = dip_.direction();
    excursion_.readings = 1;
    excursion_.open = true;
    departure_.begin(time, volts_V, level.held_V);
    shoulderBefore_ = leans(level.offsetBefore_V, offset_V);
    runs_.begin(time, volts_V);
    beforeRun_ = {};
}

DipDetector::Event OpenExcursion::push(Time time, double volts_V, double limit_V, double together_V) {
    const DipDetector::Event event = dip_.push(volts_V - excursion_.held_V, limit_V);
    if (event == DipDetector::Event::ended) return event;
    if (runs_.push(time, volts_V, together_V)) // what lies before this reading is the excursion so far
        beforeRun_ = {excursion_.extreme_V, excursion_.readings, excursion_.to};
    ++excursion_.readings;
    excursion_.to = time;
    if (std::abs(volts_V - excursion_.held_V) > excursion_.depth_V()) excursion_.extreme_V = volts_V;
    return event;
}

bool OpenExcursion::leavesSlowly(Time time, double volts_V, double limit_V) {
    const bool mayHaveMoved = asked_ != ExpectedMotion::still && asked_ != ExpectedMotion::free;
    return mayHaveMoved && departure_.push(time, volts_V, limit_V);
}

OpenExcursion::Settled OpenExcursion::settled(Time time, ExpectedMotion asked, bool inAnotherWindow) const {
    const Run& run = runs_.newest();
    const Time stayed = time - run.from;
    switch (asked) {
    case ExpectedMotion::moving:
        if (run.readings >= kMoveReadings || (run.readings >= 2 && inAnotherWindow)) return Settled::moved;
        break;
    case ExpectedMotion::free:
    case ExpectedMotion::sweep:
        if (run.readings >= 2) return Settled::moved;
        break;
    case ExpectedMotion::unmarked:
        if (run.readings >= kPressReadings && stayed >= kPressSettles && inAnotherWindow) return Settled::moved;
        break;
    default: break;
    }
    if (run.readings >= kJumpReadings && stayed >= kJumpSettles) return Settled::jumped;
    return time - excursion_.from >= kNeverSettles ? Settled::lost : Settled::no;
}

bool OpenExcursion::rested() const {
    return asked_ == ExpectedMotion::unmarked && runs_.rested(kPressReadings, kPressSettles);
}

Excursion OpenExcursion::ended() const {
    Excursion e = excursion_;
    e.open = false;
    return e;
}

bool OpenExcursion::shoulder(double next_V) const {
    return shoulderBefore_ || leans(next_V - excursion_.held_V, excursion_.extreme_V - excursion_.held_V);
}

std::optional<Excursion> OpenExcursion::deeperBeforeRun() const {
    const double run_V = runs_.newest().level_V();
    const bool deeper = beforeRun_.readings > 0 && std::abs(beforeRun_.extreme_V - run_V) > excursion_.threshold_V &&
                        std::abs(beforeRun_.extreme_V - excursion_.held_V) > std::abs(run_V - excursion_.held_V);
    if (!deeper) return std::nullopt;
    Excursion part = ended();
    part.to = beforeRun_.to;
    part.extreme_V = beforeRun_.extreme_V;
    part.readings = beforeRun_.readings;
    return part;
}

OpenExcursion::Arrival OpenExcursion::arrivedAt(double level_V, double limit_V, double threshold_V) const {
    const auto& runs = runs_.before();
    const auto at = [&](const Run& run) { return std::abs(run.level_V() - level_V) <= limit_V; };
    auto run = std::find_if(runs.begin(), runs.end(), [&](const Run& r) { return at(r) && r.readings >= 2; });
    Arrival arrival{run == runs.end() ? runs_.newest().from : run->from, {}};
    while (run != runs.end()) {
        if (at(*run)) {
            ++run;
            continue;
        }
        Excursion e;
        e.from = run->from;
        e.held_V = level_V;
        e.extreme_V = run->level_V();
        e.threshold_V = threshold_V;
        for (; run != runs.end() && !at(*run); ++run) {
            e.to = run->to;
            e.readings += run->readings;
            if (std::abs(run->level_V() - level_V) > e.depth_V()) e.extreme_V = run->level_V();
        }
        e.direction = e.extreme_V < level_V ? Direction::down : Direction::up;
        arrival.dropouts.push_back(e);
    }
    return arrival;
}

} // namespace stillwire
