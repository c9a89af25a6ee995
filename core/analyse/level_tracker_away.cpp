// SPDX-License-Identifier: GPL-3.0-or-later
// The tracker while the wire is away from its level, and what it makes of that.
#include "core/analyse/level_tracker.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
constexpr double kWider = 0.5; // of a window's half-width: a pedal out of adjustment is pressed all the same

bool near(const Window& window, double volts_V) {
    const double wider_V = kWider * 0.5 * (window.max_V - window.min_V);
    return volts_V >= window.min_V - wider_V && volts_V <= window.max_V + wider_V;
}
} // namespace

double LevelTracker::together_V() const {
    return std::max({2 * level_.settleTolerance_V(), 0.5 * limit_V_, play_V_});
}

bool LevelTracker::inAnotherWindow(double volts_V) const {
    // One that lies in a window has come there from just outside it, too.
    return std::any_of(windows_.begin(), windows_.end(), [&](const Window& w) {
        return w.contains(volts_V) ? !w.contains(held_V_) : near(w, volts_V) && !near(w, held_V_);
    });
}

void LevelTracker::beginExcursion(Time time, double volts_V, ExpectedMotion asked) {
    state_ = State::away;
    away_.begin(time, volts_V, asked, {held_V_, limit_V_, threshold_V(), lastOffset_V_});
    lastOffset_V_ = volts_V - held_V_;
    listener_->excursionFlagged(time, away_.excursion().direction);
}

void LevelTracker::endExcursion(double next_V) {
    const Excursion ended = away_.ended();
    const bool shoulder = away_.shoulder(next_V);
    lastExcursion_ = ended.to;
    if (away_.rested())
        passing_.begin({ended, shoulder, lastHeld_}, next_V);
    else
        tellEnded(ended, shoulder);
}

void LevelTracker::tellPassing() {
    if (const auto& was = passing_.waiting()) tellEnded(was->excursion, was->shoulder);
    passing_.end();
}

// True if the level has been crossed, and a movement goes on.
bool LevelTracker::passOn(Time time, double volts_V) {
    switch (passing_.push(time, volts_V, held_V_, limit_V_)) {
    case Passing::Turn::goesOn: return false;
    case Passing::Turn::cameBack: tellPassing(); return false;
    case Passing::Turn::crossed: break;
    }
    LevelSearch::Start start = leaving(passing_.waiting()->excursion.from, volts_V, time);
    start.lastHeld = passing_.waiting()->lastHeld;
    start.surelyMoved = start.slowly = true;
    passing_.end();
    listener_->excursionWithdrawn();
    beginSearch(start);
    return true;
}

void LevelTracker::takeForMovement() {
    listener_->excursionWithdrawn();
    // It may have arrived already.
    const Run& run = away_.newestRun();
    LevelSearch::Start start = leaving(away_.excursion().from, run.level_V(), run.from);
    start.extreme_V = away_.excursion().extreme_V;
    start.surelyMoved = true;
    beginSearch(start);
}

ReadingClass LevelTracker::stayAway(Time time, double volts_V, ExpectedMotion asked) {
    const double offset_V = volts_V - held_V_;
    const bool otherSide = away_.excursion().direction == Direction::up ? offset_V < -limit_V_ : offset_V > limit_V_;
    lastOffset_V_ = offset_V;
    if (away_.push(time, volts_V, limit_V_, together_V()) == DipDetector::Event::ended) {
        if (otherSide && away_.asked() == ExpectedMotion::moving) {
            // Off one way and back past the level: a needle lifted off and on its way, no dip.
            listener_->excursionWithdrawn();
            beginSearch(leaving(away_.excursion().from, volts_V, time));
            return ReadingClass::moving;
        }
        endExcursion(volts_V);
        if (passing_.waiting() && passOn(time, volts_V)) return ReadingClass::moving;
        if (otherSide) {
            beginExcursion(time, volts_V, away_.asked());
            return ReadingClass::away;
        }
        state_ = State::held;
        settling_.cameBack();
        accept(time, volts_V, false);
        return ReadingClass::held;
    }
    if (away_.leavesSlowly(time, volts_V, limit_V_) || leave_.comesHome(time, volts_V, limit_V_)) {
        takeForMovement();
        return seek(time, volts_V, asked);
    }
    // A judged place is left by its mark, not by what the next one allows.
    const bool begunFree = away_.asked() == ExpectedMotion::free || away_.asked() == ExpectedMotion::sweep;
    const OpenExcursion::Settled how =
        away_.settled(time, begunFree ? asked : away_.asked(), inAnotherWindow(away_.newestRun().level_V()));
    if (how == OpenExcursion::Settled::no) return ReadingClass::away;
    settleElsewhere(time, how);
    return ReadingClass::held;
}

// A dropout that became a jump: what lay deeper before the level settled is told on its own.
void LevelTracker::tellJump() {
    const Run& run = away_.newestRun();
    const std::optional<Excursion> deeper = away_.deeperBeforeRun();
    if (deeper)
        tellEnded(*deeper, false);
    else
        listener_->excursionWithdrawn();
    if (std::abs(run.level_V() - held_V_) > play_V_)
        listener_->jumped({deeper ? run.from : away_.excursion().from, held_V_, run.level_V(), std::nullopt, -1});
}

void LevelTracker::settleElsewhere(Time time, OpenExcursion::Settled how) {
    const double run_V = away_.newestRun().level_V();
    const double left_V = held_V_;
    switch (how) {
    case OpenExcursion::Settled::moved: {
        listener_->excursionWithdrawn();
        const OpenExcursion::Arrival arrival = away_.arrivedAt(run_V, limit_V_, threshold_V());
        listener_->travelled(lastHeld_, arrival.at);
        for (const Excursion& e : arrival.dropouts) tellInHindsight(e);
        break;
    }
    case OpenExcursion::Settled::jumped: tellJump(); break;
    default: tellEnded(away_.ended(), false);
    }
    restartLevel();
    settling_.arrived(left_V, run_V);
    lastExcursion_ = time;
    if (how == OpenExcursion::Settled::lost) {
        state_ = State::seeking;
        search_ = LevelSearch();
        return;
    }
    state_ = State::held;
    setHold(time);
    level_.add(run_V);
    level_.add(run_V);
    leave_.arrived();
    tellHeld(away_.newestRun().from, run_V, true);
    adopt();
    lastHeld_ = time;
}

std::optional<Excursion> LevelTracker::open() const {
    if (const auto& was = passing_.waiting()) return was->excursion;
    if (state_ != State::away) return std::nullopt;
    return away_.excursion();
}

} // namespace stillwire
