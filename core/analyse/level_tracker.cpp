// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/level_tracker.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;

constexpr Time kGrace = 3s;       // after a mark that asks for movement
constexpr Time kEarlyHand = 3s;   // a hand that moved before its mark
constexpr Time kJumpSettles = 8s; // a level that stays elsewhere this long has jumped; poses are shorter
constexpr int kJumpReadings = 8;
constexpr Time kHomeAgain = 10s;        // left unjudged and back within this: no jump
constexpr Time kNeverSettles = 60s;     // away for so long and never at rest: look for a level anew
constexpr int kTailReadings = 8;        // a meter's display filter may still creep after two near readings
constexpr int kSettlingReadings = 4;    // a shaft that has just arrived swings about its level
constexpr double kSettlingShare = 0.02; // by no more than this of its way
constexpr double kTailThresholds = 5;   // and no further than this
constexpr int kMoveReadings = 5;        // settled elsewhere in a step about moving
constexpr int kPressReadings = 4;       // settled in another position's window, nothing marked
constexpr Time kPressSettles = 1600ms;
constexpr double kShoulderShare = 0.4;
constexpr int kEstablished = 10;    // readings of a level before it is the level of a wire just probed
constexpr Time kStirredFor = 10s;   // after an excursion
constexpr Time kSettleSpan = 250ms; // two near readings of a quick meter may both lie in a slow movement
constexpr Time kSlowSettleSpan = 1s;
constexpr Time kPasses = 1500ms;    // where a wire has not moved in this, it is back and not on its way
constexpr double kStaysShare = 0.5; // by more than this much of the threshold
constexpr Time kDetour = 8s;        // longer than this elsewhere is no excursion
constexpr std::size_t kRuns = 64;
constexpr double kWider = 0.5; // of a window's half-width: a pedal out of adjustment is pressed all the same
constexpr double kRoundOff_V = 1e-9;
bool near(const Window& window, double volts_V) {
    const double wider_V = kWider * 0.5 * (window.max_V - window.min_V);
    return volts_V >= window.min_V - wider_V && volts_V <= window.max_V + wider_V;
}
} // namespace

LevelTracker::LevelTracker(double resolution_V, double play_V, std::vector<Window> windows, TrackerListener& listener)
    : level_(resolution_V, play_V / 2), play_V_(play_V), windows_(std::move(windows)), listener_(&listener) {
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

bool LevelTracker::mayMove(Time time, Asked asked) const {
    return asked == Asked::free || asked == Asked::sweep || moveAsked_ || wasFree_ || time <= graceUntil_ ||
           (asked == Asked::moving && sinceSettled_ < kEstablished);
}

bool LevelTracker::inAnotherWindow(double volts_V) const {
    return std::any_of(windows_.begin(), windows_.end(),
                       [&](const Window& w) { return near(w, volts_V) && !near(w, held_V_); });
}

void LevelTracker::placeChanged(const Place& place) {
    tellPassing();
    // A foot that is asked to leave is still there until the level leaves.
    footLeaves_ = foot_ && !place.foot && place.moveAsked && place.wire == wire_;
    foot_ = place.foot || footLeaves_;
    const bool otherWire = place.wire != wire_;
    // The needle has not come to its new wire yet: no mark but another wire's takes the leave to move away.
    needleComes_ = otherWire || (needleComes_ && moveAsked_);
    moveAsked_ = place.moveAsked || needleComes_;
    if (place.moveAsked) detour_.reset();
    graceUntil_ = place.moveAsked || place.handFollows ? place.from + kGrace : Time(-1);
    limit_V_ = threshold_V() + kRoundOff_V;
    if (place.moveAsked && state_ == State::seeking && left_V_) {
        // On its way when the next movement is asked for: it has left, wherever it settles.
        listener_->travelled(seekFrom_, beforeTime_);
        left_V_.reset();
    }
    const bool sameStep = place.stepVisit == stepVisit_;
    stepVisit_ = place.stepVisit;
    wire_ = place.wire;
    inPose_ = place.poseIndex >= 0;
    if (free_ && place.asked != Asked::free) wasFree_ = true;
    free_ = place.asked == Asked::free;
    sweeping_ = place.asked == Asked::sweep;
    if (state_ != State::away || !place.moveAsked) return;
    // A hand that moved before its mark; the needle on its way to the next wire. But a dropout that straddles the end
    // of a step is a dropout of that step, though the wire is another one after it.
    const bool early = sameStep && !otherWire && excursion_.from + kEarlyHand >= place.from;
    if (!early && !otherWire) return;
    if (early || excursionAsked_ == Asked::moving || excursionAsked_ == Asked::free)
        listener_->excursionWithdrawn();
    else
        endExcursion(excursion_.held_V);
    tellPassing();
    dip_.reset();
    beginSeek(lastHeld_, excursion_.from, held_V_ + lastOffset_V_);
    if (otherWire) left_V_.reset();
    seekReadings_ = excursion_.readings;
    seekAwayReadings_ = excursion_.readings - 1;
    beforeTime_ = excursion_.to;
}

void LevelTracker::blind() {
    tellPassing();
    before_V_.reset();
    runCount_ = 0;
}

ReadingClass LevelTracker::push(Time time, double volts_V, Asked asked) {
    ReadingClass seen = ReadingClass::held;
    switch (state_) {
    case State::held: seen = hold(time, volts_V, asked); break;
    case State::away: seen = stayAway(time, volts_V, asked); break;
    default: seen = seek(time, volts_V, asked);
    }
    // What moved while nothing was judged may first show in the reading after, if the meter was dark meanwhile.
    if (asked != Asked::free) wasFree_ = false;
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
        held_V_ = level_.level_V();
        limit_V_ = threshold_V() + kRoundOff_V;
    }
    lastHeld_ = time;
    if (sinceSettled_ < kEstablished) ++sinceSettled_;
    tellHeld(time, volts_V, anew);
}

void LevelTracker::tellEnded(const Excursion& excursion, bool shoulder) {
    toldFrom_ = excursion.from;
    toldTo_ = excursion.to;
    listener_->excursionEnded(excursion, shoulder);
}

void LevelTracker::tellHeld(Time time, double volts_V, bool anew) {
    const Reading reading{time, volts_V, {}};
    listener_->held(&reading, 1, anew);
}

std::size_t LevelTracker::mostQuiet() const {
    return state_ != State::held || passing_ || sweeping_ || level_.moves() ? 0 : level_.untilRefresh();
}

std::size_t LevelTracker::quietRun(const Reading* first, std::size_t count) const {
    // accept() is choosy where the wire is being stirred.
    const bool choosy =
        !foot_ && (inPose_ || first->time - lastExcursion_ < kStirredFor) && level_.begunBy() != Hold::stirred;
    const double reach_V = choosy ? std::min(limit_V_, level_.quietReach_V()) : limit_V_;
    std::size_t n = 0;
    while (n < count && std::abs(first[n].volts_V - held_V_) <= reach_V) ++n;
    return n;
}

void LevelTracker::pushQuiet(const Reading* first, std::size_t count, Asked asked) {
    const Reading& newest = first[count - 1];
    setHold(newest.time);
    if (detour_) detour_->excursion.readings += static_cast<int>(count);
    level_.addQuiet(first, count);
    lastOffset_V_ = newest.volts_V - held_V_;
    lastHeld_ = newest.time;
    sinceSettled_ = std::min(kEstablished, sinceSettled_ + static_cast<int>(count));
    if (asked != Asked::free) wasFree_ = false;
    listener_->held(first, count, false);
}

ReadingClass LevelTracker::hold(Time time, double volts_V, Asked asked) {
    const double offset_V = volts_V - held_V_;
    if (passing_ && passOn(time, volts_V)) return ReadingClass::moving;
    if (offset_V <= limit_V_ && offset_V >= -limit_V_) {
        lastOffset_V_ = offset_V;
        const Time interval = time - lastHeld_;
        accept(time, volts_V, false);
        if (!level_.moves() || (asked != Asked::sweep && asked != Asked::unmarked)) return ReadingClass::held;
        // The level has followed a slow movement.
        beginSeek(time - level_.readingsSinceLeft() * interval, time, volts_V);
        surelyMoved_ = slowly_ = true;
        return ReadingClass::moving;
    }
    if (settleDirection_ != 0 && sinceSettled_ <= kSettlingReadings &&
        std::abs(offset_V) < kSettlingShare * settleMove_V_) {
        level_.restart(); // the first may have been the movement's last
        lastOffset_V_ = 0;
        accept(time, volts_V, true);
        return ReadingClass::held;
    }
    const bool tail = settleDirection_ != 0 && sinceSettled_ <= kTailReadings && offset_V * settleDirection_ > 0 &&
                      std::abs(offset_V) < kTailThresholds * limit_V_;
    const bool onDetour = detour_ && time - detour_->from <= kDetour;
    if (mayMove(time, asked) || tail || onDetour) {
        beginSeek(lastHeld_, time, volts_V);
        slowly_ = asked == Asked::sweep;
        byGrace_ = !onDetour && (asked == Asked::positions || asked == Asked::still || wire_ != Probed::signal) &&
                   !moveAsked_ && !tail;
        return ReadingClass::moving;
    }
    beginExcursion(time, volts_V, asked);
    return ReadingClass::away;
}

void LevelTracker::beginSeek(Time lastHeld, Time first, double volts_V) {
    state_ = State::seeking;
    left_V_ = held_V_;
    surelyMoved_ = slowly_ = byGrace_ = false;
    seekFrom_ = lastHeld;
    seekFirst_ = first;
    seekExtreme_V_ = volts_V;
    seekReadings_ = 1;
    seekAwayReadings_ = 0;
    before_V_ = seekNewest_V_ = volts_V;
    beforeTime_ = first;
}

ReadingClass LevelTracker::seek(Time time, double volts_V, Asked asked) {
    if (left_V_ && std::abs(volts_V - *left_V_) > std::abs(seekExtreme_V_ - *left_V_)) seekExtreme_V_ = volts_V;
    ++seekReadings_;
    const double tolerance_V = settleTolerance_V();
    const double step_V = volts_V - seekNewest_V_;
    seekNewest_V_ = volts_V;
    if (before_V_ && std::abs(step_V) <= tolerance_V && std::abs(volts_V - *before_V_) <= 2 * tolerance_V) {
        const Time span = !left_V_ ? Time(0) : (slowly_ ? kSlowSettleSpan : kSettleSpan);
        if (time - beforeTime_ < span) return ReadingClass::moving;
        settle(time, volts_V, asked);
        return ReadingClass::held;
    }
    seekAwayTo_ = beforeTime_;
    seekAwayReadings_ = seekReadings_ - 1;
    before_V_ = volts_V;
    beforeTime_ = time;
    return ReadingClass::moving;
}

Excursion LevelTracker::excursionOnTheWay() const {
    Excursion e;
    e.from = seekFirst_;
    e.to = std::max(seekFirst_, seekAwayTo_);
    e.held_V = *left_V_;
    e.extreme_V = seekExtreme_V_;
    e.threshold_V = threshold_V();
    e.direction = seekExtreme_V_ < *left_V_ ? Direction::down : Direction::up;
    e.readings = std::max(1, seekAwayReadings_);
    return e;
}

void LevelTracker::tellExcursionOnTheWay() {
    if (std::abs(seekExtreme_V_ - *left_V_) < limit_V_) return;
    const Excursion e = excursionOnTheWay();
    listener_->excursionFlagged(e.from, e.direction);
    tellEnded(e, false);
}

// Back where it was before the movement that no mark had asked for?
bool LevelTracker::wentAndCame(double settled_V) const {
    return detour_ && std::abs(settled_V - detour_->left_V) <= limit_V_ && beforeTime_ - detour_->from <= kDetour;
}

void LevelTracker::settle(Time time, double volts_V, Asked asked) {
    const double settled_V = 0.5 * (volts_V + *before_V_);
    const bool cameBack = left_V_ && std::abs(settled_V - *left_V_) <= limit_V_;
    const bool judged = asked != Asked::free && asked != Asked::sweep && !surelyMoved_;
    if (cameBack && judged) {
        // Nothing moved after all: what was taken for the beginning of a movement was an excursion.
        tellExcursionOnTheWay();
        settleDirection_ = 0;
    } else if (left_V_ && wentAndCame(settled_V)) {
        Excursion e = detour_->excursion;
        e.to = lastHeld_;
        listener_->travelWithdrawn(detour_->from);
        listener_->excursionFlagged(e.from, e.direction);
        tellEnded(e, false);
        detour_.reset();
        settleDirection_ = 0;
    } else if (left_V_) {
        detour_.reset();
        if (byGrace_ && judged) detour_ = Detour{*left_V_, excursionOnTheWay(), seekFrom_};
        listener_->travelled(seekFrom_, beforeTime_);
        settleDirection_ = settled_V > *left_V_ ? 1 : -1;
        settleMove_V_ = std::abs(settled_V - *left_V_);
        moveAsked_ = false;
        if (asked == Asked::free) {
            home_V_ = left_V_;
            leftHome_ = seekFrom_;
        }
    }
    state_ = State::held;
    dip_.reset();
    if (!cameBack) restartLevel();
    sinceSettled_ = 0;
    accept(beforeTime_, *before_V_, !cameBack);
    accept(time, volts_V, false);
    lastOffset_V_ = 0;
    left_V_.reset();
}

void LevelTracker::beginExcursion(Time time, double volts_V, Asked asked) {
    state_ = State::away;
    excursionAsked_ = asked;
    dip_.reset();
    const double offset_V = volts_V - held_V_;
    dip_.push(offset_V, limit_V_);
    excursion_ = Excursion{};
    excursion_.from = excursion_.to = time;
    excursion_.held_V = held_V_;
    excursion_.extreme_V = volts_V;
    excursion_.threshold_V = threshold_V();
    excursion_.direction = dip_.direction();
    excursion_.readings = 1;
    excursion_.open = true;
    departure_.begin(time, volts_V, held_V_);
    shoulderBefore_ = lastOffset_V_ * offset_V > 0 && std::abs(lastOffset_V_) >= kShoulderShare * std::abs(offset_V);
    lastOffset_V_ = offset_V;
    runs_.clear();
    runSum_V_ = volts_V;
    runCount_ = 1;
    runFrom_ = runTo_ = time;
    beforeRunReadings_ = 0;
    listener_->excursionFlagged(time, excursion_.direction);
}

void LevelTracker::endExcursion(double next_V) {
    const double next = next_V - excursion_.held_V;
    const double depth = excursion_.extreme_V - excursion_.held_V;
    const bool shoulderAfter = next * depth > 0 && std::abs(next) >= kShoulderShare * std::abs(depth);
    excursion_.open = false;
    lastExcursion_ = excursion_.to;
    const bool shoulder = shoulderBefore_ || shoulderAfter;
    if (rested())
        passing_ = Passing{excursion_, shoulder, lastHeld_, excursion_.to, next_V};
    else
        tellEnded(excursion_, shoulder);
}

bool LevelTracker::rested() const {
    const auto rest = [](Time from, Time to, int readings) {
        return readings >= kPressReadings && to - from >= kPressSettles;
    };
    return excursionAsked_ == Asked::unmarked &&
           (rest(runFrom_, runTo_, runCount_) ||
            std::any_of(runs_.begin(), runs_.end(), [&](const Run& r) { return rest(r.from, r.to, r.readings); }));
}

void LevelTracker::tellPassing() {
    if (passing_) tellEnded(passing_->excursion, passing_->shoulder);
    passing_.reset();
}

// True if the level has been crossed, and a movement goes on.
bool LevelTracker::passOn(Time time, double volts_V) {
    const Passing was = *passing_;
    const double offset_V = volts_V - held_V_;
    const bool off = std::abs(offset_V) > limit_V_;
    const bool crossed = off && (offset_V > 0) != (was.excursion.direction == Direction::up);
    if (!crossed) {
        const bool late = time - was.back >= kPasses;
        if (off || (late && std::abs(volts_V - was.back_V) <= kStaysShare * limit_V_)) {
            tellPassing();
        } else if (late) {
            passing_->back = time;
            passing_->back_V = volts_V;
        }
        return false;
    }
    passing_.reset();
    listener_->excursionWithdrawn();
    beginSeek(was.lastHeld, was.excursion.from, volts_V);
    surelyMoved_ = slowly_ = true;
    beforeTime_ = time;
    return true;
}

void LevelTracker::takeForMovement() {
    listener_->excursionWithdrawn();
    dip_.reset();
    beginSeek(lastHeld_, excursion_.from, excursion_.extreme_V);
    surelyMoved_ = true;
    // It may have arrived already.
    before_V_ = runSum_V_ / runCount_;
    beforeTime_ = runFrom_;
    seekNewest_V_ = *before_V_;
}

bool LevelTracker::followRun(Time time, double volts_V) {
    const double tolerance_V = std::max({2 * level_.settleTolerance_V(), 0.5 * limit_V_, play_V_});
    if (runCount_ > 0 && std::abs(volts_V - runSum_V_ / runCount_) <= tolerance_V) {
        runSum_V_ += volts_V;
        ++runCount_;
        runTo_ = time;
        return false;
    }
    if (runCount_ > 0) {
        if (runs_.size() == kRuns) runs_.erase(runs_.begin());
        runs_.push_back({runFrom_, runTo_, runSum_V_ / runCount_, runCount_});
    }
    runSum_V_ = volts_V;
    runCount_ = 1;
    runFrom_ = runTo_ = time;
    return true;
}

ReadingClass LevelTracker::stayAway(Time time, double volts_V, Asked asked) {
    const double offset_V = volts_V - held_V_;
    const bool otherSide = dip_.direction() == Direction::up ? offset_V < -limit_V_ : offset_V > limit_V_;
    const DipDetector::Event event = dip_.push(offset_V, limit_V_);
    if (event == DipDetector::Event::ended && otherSide && excursionAsked_ == Asked::moving) {
        // Off one way and back past the level: a needle lifted off and on its way, no dip.
        listener_->excursionWithdrawn();
        beginSeek(lastHeld_, excursion_.from, volts_V);
        beforeTime_ = time;
        return ReadingClass::moving;
    }
    if (event == DipDetector::Event::ended) {
        endExcursion(volts_V);
        lastOffset_V_ = offset_V;
        if (passing_ && passOn(time, volts_V)) return ReadingClass::moving;
        if (otherSide) {
            beginExcursion(time, volts_V, excursionAsked_);
            return ReadingClass::away;
        }
        state_ = State::held;
        settleDirection_ = 0;
        accept(time, volts_V, false);
        return ReadingClass::held;
    }
    if (followRun(time, volts_V)) { // what lies before this reading is the excursion so far
        beforeRunExtreme_V_ = excursion_.extreme_V;
        beforeRunReadings_ = excursion_.readings;
        beforeRunTo_ = excursion_.to;
    }
    ++excursion_.readings;
    excursion_.to = time;
    if (std::abs(offset_V) > std::abs(excursion_.extreme_V - held_V_)) excursion_.extreme_V = volts_V;
    lastOffset_V_ = offset_V;
    const bool mayHaveMoved = excursionAsked_ != Asked::still && excursionAsked_ != Asked::free;
    if (mayHaveMoved && departure_.push(time, volts_V, limit_V_)) {
        takeForMovement();
        return seek(time, volts_V, asked);
    }
    // A judged place is left by its mark, not by what the next one allows.
    const bool begunFree = excursionAsked_ == Asked::free || excursionAsked_ == Asked::sweep;
    if (settledElsewhere(time, begunFree ? asked : excursionAsked_)) return ReadingClass::held;
    return ReadingClass::away;
}

// It arrived with the first run at this level; what lay off it since then were dropouts.
void LevelTracker::tellWhileSettling(double level_V) {
    const auto at = [&](const Run& run) { return std::abs(run.level_V - level_V) <= limit_V_; };
    const auto arrived =
        std::find_if(runs_.begin(), runs_.end(), [&](const Run& r) { return at(r) && r.readings >= 2; });
    listener_->travelled(lastHeld_, arrived == runs_.end() ? runFrom_ : arrived->from);
    for (auto run = arrived; run != runs_.end();) {
        if (at(*run)) {
            ++run;
            continue;
        }
        Excursion e;
        e.from = run->from;
        e.held_V = level_V;
        e.extreme_V = run->level_V;
        e.threshold_V = threshold_V();
        for (; run != runs_.end() && !at(*run); ++run) {
            e.to = run->to;
            e.readings += run->readings;
            if (std::abs(run->level_V - level_V) > e.depth_V()) e.extreme_V = run->level_V;
        }
        e.direction = e.extreme_V < level_V ? Direction::down : Direction::up;
        listener_->excursionFlagged(e.from, e.direction);
        tellEnded(e, false);
    }
}

bool LevelTracker::settledElsewhere(Time time, Asked asked) {
    const double run_V = runSum_V_ / runCount_;
    const Time stayed = time - runFrom_;
    const bool moved =
        (asked == Asked::moving && (runCount_ >= kMoveReadings || (runCount_ >= 2 && inAnotherWindow(run_V)))) ||
        ((asked == Asked::free || asked == Asked::sweep) && runCount_ >= 2) ||
        (asked == Asked::unmarked && runCount_ >= kPressReadings && stayed >= kPressSettles &&
         inAnotherWindow(run_V));
    const bool jumped = runCount_ >= kJumpReadings && stayed >= kJumpSettles;
    const bool lost = time - excursion_.from >= kNeverSettles;
    if (!moved && !jumped && !lost) return false;

    const double left_V = held_V_;
    if (moved) {
        listener_->excursionWithdrawn();
        tellWhileSettling(run_V);
    } else if (jumped) {
        // A dropout that became a jump: what lay deeper before the level settled is told on its own.
        const bool deeper = beforeRunReadings_ > 0 &&
                            std::abs(beforeRunExtreme_V_ - run_V) > excursion_.threshold_V &&
                            std::abs(beforeRunExtreme_V_ - left_V) > std::abs(run_V - left_V);
        if (deeper) {
            Excursion part = excursion_;
            part.to = beforeRunTo_;
            part.extreme_V = beforeRunExtreme_V_;
            part.readings = beforeRunReadings_;
            part.open = false;
            tellEnded(part, false);
        } else {
            listener_->excursionWithdrawn();
        }
        // Left while nothing was judged, and back again: whatever it was, it is not of this step.
        const bool homeAgain =
            home_V_ && std::abs(run_V - *home_V_) <= limit_V_ && excursion_.from - leftHome_ < kHomeAgain;
        if (std::abs(run_V - left_V) > play_V_ && !homeAgain) {
            const Time at = deeper ? runFrom_ : excursion_.from;
            listener_->jumped({at, left_V, run_V, std::nullopt, -1});
        }
    } else {
        excursion_.open = false;
        tellEnded(excursion_, false);
    }
    dip_.reset();
    restartLevel();
    sinceSettled_ = 0;
    settleDirection_ = run_V > left_V ? 1 : -1;
    state_ = lost && !moved && !jumped ? State::seeking : State::held;
    left_V_.reset();
    before_V_.reset();
    lastExcursion_ = time;
    if (state_ == State::held) {
        setHold(time);
        level_.add(run_V);
        level_.add(run_V);
        moveAsked_ = false;
        tellHeld(runFrom_, run_V, true);
        held_V_ = level_.level_V();
        limit_V_ = threshold_V() + kRoundOff_V;
        lastHeld_ = time;
    }
    return true;
}

std::optional<Excursion> LevelTracker::open() const {
    if (passing_) return passing_->excursion;
    if (state_ != State::away) return std::nullopt;
    return excursion_;
}

} // namespace stillwire
