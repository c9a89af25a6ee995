// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/level_tracker.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;

constexpr Time kEarlyHand = 3s;   // a hand that moved before its mark
constexpr Time kStirredFor = 10s; // after an excursion
constexpr Time kDetour = 8s;      // longer than this elsewhere is no excursion
constexpr double kRoundOff_V = 1e-9;
} // namespace

LevelTracker::LevelTracker(double resolution_V, double play_V, std::vector<Window> windows, TrackerListener& listener)
    : level_(resolution_V, play_V / 2), play_V_(play_V), windows_(std::move(windows)), listener_(&listener) {
    limit_V_ = threshold_V() + kRoundOff_V;
}

void LevelTracker::adopt() {
    held_V_ = level_.level_V();
    limit_V_ = threshold_V() + kRoundOff_V;
}

void LevelTracker::restartLevel() {
    level_.restart();
    if (footLeaves_) foot_ = footLeaves_ = false;
}

void LevelTracker::setHold(Time time) {
    const bool stirred = inPose_ || time - lastExcursion_ < kStirredFor;
    level_.setHold(foot_ ? Hold::foot : (stirred ? Hold::stirred : Hold::quiet));
}

double LevelTracker::settleTolerance_V() const {
    return foot_ && !footLeaves_ ? std::max(level_.settleTolerance_V(), play_V_) : level_.settleTolerance_V();
}

void LevelTracker::placeChanged(const Context& place) {
    tellPassing();
    // A foot that is asked to leave is still there until the level leaves.
    footLeaves_ = foot_ && !place.heldByOperator && place.moveExpected && place.wire == leave_.wire();
    foot_ = place.heldByOperator || footLeaves_;
    const Leave::Change change = leave_.placeChanged(place);
    inPose_ = place.poseIndex >= 0;
    sweeping_ = place.motion == ExpectedMotion::sweep;
    limit_V_ = threshold_V() + kRoundOff_V;
    if (!place.moveExpected) return;
    detour_.reset();
    if (state_ == State::seeking && search_.left_V()) {
        // On its way when the next movement is asked for: it has left, wherever it settles.
        listener_->travelled(search_.start().lastHeld, search_.before());
        search_.forgetLeft();
    }
    if (state_ != State::away) return;
    // A hand that moved before its mark; the needle on its way to the next wire. But a dropout that straddles the end
    // of a step is a dropout of that step, whatever comes after it.
    const Excursion& open = away_.excursion();
    const bool early = change.sameStep && !change.otherWire && open.from + kEarlyHand >= place.from &&
                       open.from >= leave_.stepFrom();
    const bool judged = !early && away_.asked() != ExpectedMotion::moving && away_.asked() != ExpectedMotion::free;
    if (judged)
        endExcursion(open.held_V);
    else
        listener_->excursionWithdrawn();
    tellPassing();
    LevelSearch::Start start = leaving(open.from, held_V_ + lastOffset_V_, open.to);
    if (change.otherWire) start.left_V.reset();
    start.readings = open.readings;
    start.surelyMoved = judged; // it is told once
    beginSearch(start);
}

void LevelTracker::blind() {
    tellPassing();
    search_.blind();
    away_.blind();
}

ReadingClass LevelTracker::push(Time time, double volts_V, ExpectedMotion asked) {
    ReadingClass seen = ReadingClass::held;
    switch (state_) {
    case State::held: seen = hold(time, volts_V, asked); break;
    case State::away: seen = stayAway(time, volts_V, asked); break;
    default: seen = seek(time, volts_V, asked);
    }
    leave_.looked(asked);
    return seen;
}

void LevelTracker::accept(Time time, double volts_V, bool anew) {
    setHold(time);
    if (detour_) ++detour_->excursion.readings;
    // A shift under side load is within the threshold, perhaps, but it is not the level at rest.
    const bool stirred = level_.hold() == Hold::stirred && level_.begunBy() != Hold::stirred &&
                         std::abs(volts_V - held_V_) > level_.quietReach_V();
    // On a sweep two near readings of a coarse meter are no level whose noise could be learned.
    if ((!stirred && !sweeping_) || anew) {
        level_.add(volts_V);
        adopt();
    }
    lastHeld_ = time;
    settling_.count(1);
    tellHeld(time, volts_V, anew);
}

void LevelTracker::tellEnded(const Excursion& excursion, bool shoulder) {
    toldFrom_ = excursion.from;
    toldTo_ = excursion.to;
    listener_->excursionEnded(excursion, shoulder);
}

void LevelTracker::tellInHindsight(const Excursion& excursion) {
    listener_->excursionFlagged(excursion.from, excursion.direction);
    tellEnded(excursion, false);
}

void LevelTracker::tellHeld(Time time, double volts_V, bool anew) {
    const Reading reading{time, volts_V, {}};
    listener_->held(&reading, 1, anew);
}

std::size_t LevelTracker::mostQuiet() const {
    const bool busy = state_ != State::held || passing_.waiting() || sweeping_ || level_.moves();
    return busy ? 0 : level_.untilRefresh();
}

double LevelTracker::quietReach_V(Time after) const {
    // accept() is choosy where the wire is being stirred.
    const bool choosy =
        !foot_ && (inPose_ || after - lastExcursion_ < kStirredFor) && level_.begunBy() != Hold::stirred;
    return choosy ? std::min(limit_V_, level_.quietReach_V()) : limit_V_;
}

void LevelTracker::pushQuiet(const Reading* first, std::size_t count, ExpectedMotion asked) {
    const Reading& newest = first[count - 1];
    setHold(newest.time);
    if (detour_) detour_->excursion.readings += static_cast<int>(count);
    level_.addQuiet(first, count);
    lastOffset_V_ = newest.volts_V - held_V_;
    lastHeld_ = newest.time;
    settling_.count(static_cast<int>(count));
    leave_.looked(asked);
    listener_->held(first, count, false);
}

ReadingClass LevelTracker::hold(Time time, double volts_V, ExpectedMotion asked) {
    const double offset_V = volts_V - held_V_;
    if (passing_.waiting() && passOn(time, volts_V)) return ReadingClass::moving;
    if (offset_V <= limit_V_ && offset_V >= -limit_V_) {
        lastOffset_V_ = offset_V;
        const Time interval = time - lastHeld_;
        accept(time, volts_V, false);
        if (!level_.moves() || (asked != ExpectedMotion::sweep && asked != ExpectedMotion::unmarked))
            return ReadingClass::held;
        // The level has followed a slow movement.
        LevelSearch::Start start = leaving(time, volts_V, time);
        start.lastHeld = time - level_.readingsSinceLeft() * interval;
        start.surelyMoved = start.slowly = true;
        beginSearch(start);
        return ReadingClass::moving;
    }
    if (settling_.swings(offset_V)) {
        level_.restart();
        lastOffset_V_ = 0;
        accept(time, volts_V, true);
        return ReadingClass::held;
    }
    const bool creeps = settling_.creeps(offset_V, limit_V_);
    const bool onDetour = detour_ && time - detour_->from <= kDetour;
    if (creeps || onDetour || leave_.mayMove(time, asked, settling_.established()) ||
        leave_.comesHome(time, volts_V, limit_V_)) {
        LevelSearch::Start start = leaving(time, volts_V, time);
        start.slowly = asked == ExpectedMotion::sweep;
        start.unjudged = asked == ExpectedMotion::free;
        start.byGrace = !onDetour && !creeps && leave_.byGrace(asked);
        beginSearch(start);
        return ReadingClass::moving;
    }
    beginExcursion(time, volts_V, asked);
    return ReadingClass::away;
}

LevelSearch::Start LevelTracker::leaving(Time first, double newest_V, Time newest) const {
    LevelSearch::Start start;
    start.left_V = held_V_;
    start.lastHeld = lastHeld_;
    start.first = first;
    start.extreme_V = start.newest_V = newest_V;
    start.newest = newest;
    return start;
}

void LevelTracker::beginSearch(const LevelSearch::Start& start) {
    state_ = State::seeking;
    search_ = LevelSearch(start);
}

ReadingClass LevelTracker::seek(Time time, double volts_V, ExpectedMotion asked) {
    if (!search_.push(time, volts_V, settleTolerance_V())) return ReadingClass::moving;
    settle(time, volts_V, asked);
    return ReadingClass::held;
}

void LevelTracker::settle(Time time, double volts_V, ExpectedMotion asked) {
    const double settled_V = 0.5 * (volts_V + search_.before_V());
    const std::optional<double> left_V = search_.left_V();
    const Time from = search_.start().lastHeld;
    const bool cameBack = left_V && std::abs(settled_V - *left_V) <= limit_V_;
    const bool judged =
        asked != ExpectedMotion::free && asked != ExpectedMotion::sweep && !search_.start().surelyMoved;
    const bool wentAndCame =
        detour_ && std::abs(settled_V - detour_->left_V) <= limit_V_ && search_.before() - detour_->from <= kDetour;
    if (cameBack && judged) {
        // Nothing moved after all: what was taken for the beginning of a movement was an excursion.
        const Excursion e = search_.asExcursion(threshold_V());
        if (e.depth_V() >= limit_V_) tellInHindsight(e);
        settling_.nowhere();
    } else if (left_V && wentAndCame) {
        // Back where it was before the movement that no mark had asked for.
        Excursion e = detour_->excursion;
        e.to = lastHeld_;
        listener_->travelWithdrawn(detour_->from);
        tellInHindsight(e);
        detour_.reset();
        settling_.nowhere();
    } else if (left_V) {
        detour_.reset();
        if (search_.start().byGrace && judged) detour_ = Detour{*left_V, search_.asExcursion(threshold_V()), from};
        listener_->travelled(from, search_.before());
        settling_.arrived(*left_V, settled_V);
        leave_.arrived();
        if (search_.start().unjudged) leave_.leftUnjudged(from, *left_V);
    } else {
        settling_.nowhere();
    }
    state_ = State::held;
    if (!cameBack) restartLevel();
    accept(search_.before(), search_.before_V(), !cameBack);
    accept(time, volts_V, false);
    lastOffset_V_ = 0;
}

} // namespace stillwire
