// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/sweep_leap.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
// Off for longer: the shaft is elsewhere. Where nobody said that it is swept, sooner.
constexpr Time kLongest = 30s;
constexpr Time kLongestUnasked = 8s;
constexpr Time kShort = 1500ms;
constexpr double kLeapSteps = 2.5;     // a leap is so many readings' worth of the sweep's own movement
constexpr double kHand_V_per_s = 0.75; // a sweeping hand goes back no faster than this
constexpr double kHurry_V_per_s = 1;   // nor, where two readings show one leap, than this
constexpr double kFaster = 1.5;        // a hand may speed up by this while the sensor is off
constexpr double kTolerated = 2;       // steps by which a hand may be off its own line
constexpr double kBack = 0.5;          // of its depth, that an excursion must come back by
constexpr double kUneven = 3;          // largest step to smallest, of a hand that sweeps evenly
constexpr double kLeastStep_V = 0.004;
constexpr double kStillShare = 0.4; // of the sweep's own movement meanwhile
constexpr double kStill_V = 0.01;
constexpr int kNeighbours = 3;   // readings by which SweepLine judges late
constexpr double kSweptBack = 5; // intervals, or kShort, from half as far: what takes longer is no leap
constexpr int kStay = 3;         // readings in the window of the rest after which the hand has let go
} // namespace

void SweepLeap::reset() {
    count_ = 0;
    even_ = evenBefore_ = false;
    off_ = Excursion{};
    toldFrom_ = toldTo_ = Time(-1);
}

void SweepLeap::remember(Point point) {
    if (count_ == kBefore) {
        std::move(before_.begin() + 1, before_.end(), before_.begin());
        --count_;
    }
    before_[count_++] = point;
    if (count_ < kBefore) return;
    slopeBefore_V_per_s_ = slope_V_per_s_;
    stepBefore_V_ = step_V_;
    evenBefore_ = even_;
    std::array<double, kBefore> time_s{}, volts_V{};
    for (std::size_t i = 0; i < kBefore; ++i) {
        time_s[i] = toSeconds(before_[i].time - before_.front().time);
        volts_V[i] = before_[i].volts_V;
    }
    slope_V_per_s_ = robustLine(time_s, volts_V).slope;
    interval_s_ = time_s.back() / (kBefore - 1);
    step_V_ = 0;
    double least_V = std::abs(volts_V[1] - volts_V[0]);
    even_ = true;
    for (std::size_t i = 1; i < kBefore; ++i) {
        const double step_V = volts_V[i] - volts_V[i - 1];
        step_V_ = std::max(step_V_, std::abs(step_V));
        least_V = std::min(least_V, std::abs(step_V));
        even_ = even_ && step_V * slope_V_per_s_ > 0;
    }
    even_ = even_ && step_V_ <= kUneven * least_V && step_V_ >= kLeastStep_V;
}

double SweepLeap::ahead_V(double seconds_s) const { return before_.back().volts_V + slope_V_per_s_ * seconds_s; }

// The hand may have gone on, a little faster perhaps, or stopped.
bool SweepLeap::onSweep(Point point, double threshold_V) const {
    const double here_V = before_.back().volts_V;
    const double there_V = here_V + kFaster * (ahead_V(toSeconds(point.time - before_.back().time)) - here_V);
    const double tolerance_V = std::max(threshold_V, kTolerated * step_V_);
    return point.volts_V >= std::min(here_V, there_V) - tolerance_V &&
           point.volts_V <= std::max(here_V, there_V) + tolerance_V;
}

// From the rest, beyond which no hand gets: what lies there was a dropout, and the hand has begun its sweep
// meanwhile.
bool SweepLeap::begunMeanwhile(Point point, double threshold_V) const {
    const Point& here = before_.back();
    const bool beyond =
        (off_.direction == Direction::down ? off_.extreme_V < rest_.min_V : off_.extreme_V > rest_.max_V);
    const double way_V =
        off_.direction == Direction::down ? point.volts_V - here.volts_V : here.volts_V - point.volts_V;
    return rest_.contains(here.volts_V) && beyond && way_V >= threshold_V &&
           way_V <= kHand_V_per_s * toSeconds(point.time - here.time) + threshold_V;
}

// A hand that only went ahead stays there until the sweep has come.
bool SweepLeap::caughtUp(Point point, double threshold_V) const {
    return std::abs(point.volts_V - ahead_V(toSeconds(point.time - before_.back().time))) <=
           0.5 * std::max(threshold_V, step_V_);
}

double SweepLeap::cameBack_V(double volts_V) const {
    const double back_V = volts_V - off_.extreme_V;
    return off_.direction == Direction::down ? back_V : -back_V;
}

// Against the hand's own movement, within two readings: the aperture that the return falls in shows something
// between.
bool SweepLeap::leaptBack(Point point, double limit_V) const {
    const double least_V = std::max(limit_V, kBack * farthest_V_);
    const auto leapt = [&](const Point& from) {
        const double step_V = point.volts_V - from.volts_V - slope_V_per_s_ * toSeconds(point.time - from.time);
        return (off_.direction == Direction::down ? step_V : -step_V) >= least_V;
    };
    return leapt(lastOff_) || leapt(priorOff_);
}

// Off for longer than a short dropout and never at rest: a hand that moves. The aperture that a leap itself falls in
// shows something between, on the way back too.
bool SweepLeap::wanders(Point point, double limit_V) {
    const bool astray = std::abs(point.volts_V - lastOff_.volts_V) > limit_V;
    const bool twice = astray && strayed_;
    strayed_ = astray;
    return twice && point.time - off_.from > kShort;
}

// Still, and where the shaft rests. A lost contact goes on along with the sweep.
bool SweepLeap::letGo() const {
    const double along_V = std::abs(slope_V_per_s_) * toSeconds(off_.to - off_.from);
    return atRest_ >= kStay && 2 * atRest_ > off_.readings &&
           restHigh_V_ - restLow_V_ <= kStillShare * along_V + kStill_V;
}

// By degrees, as a hand comes back and no contact.
bool SweepLeap::sweptBack(Point point) const {
    return point.time - lastFar_ > std::max(kShort, fromSeconds(kSweptBack * interval_s_));
}

bool SweepLeap::covers(const Excursion& excursion) const {
    const Time margin = fromSeconds(kNeighbours * interval_s_);
    return toldFrom_.count() >= 0 && excursion.to >= toldFrom_ - margin && excursion.from <= toldTo_ + margin;
}

double SweepLeap::due_V(Time time) const {
    const Point& prior = before_[kBefore - 2];
    return prior.volts_V + slopeBefore_V_per_s_ * toSeconds(time - prior.time);
}

// The newest point lies off the sweep already, if only by what a hand may do.
bool SweepLeap::wasLeaving() const {
    const Point& last = before_.back();
    return stepBefore_V_ > 0 && std::abs(last.volts_V - due_V(last.time)) > kLeapSteps * stepBefore_V_;
}

// Further than a hand goes in two readings: the aperture that the leap fell in has shown something between.
bool SweepLeap::leaptInTwo(Point point, double limit_V) const {
    const double last_V = before_.back().volts_V - due_V(before_.back().time);
    const double now_V = point.volts_V - due_V(point.time);
    const double least_V = std::max({limit_V, kLeapSteps * stepBefore_V_, 2 * kHurry_V_per_s * interval_s_});
    return wasLeaving() && last_V * now_V > 0 && std::abs(now_V) >= std::max(least_V, std::abs(last_V));
}

void SweepLeap::leave(Point point, double limit_V) {
    off_.from = point.time;
    if (wasLeaving()) {
        Point& last = before_.back();
        last.volts_V = due_V(last.time);
        off_.from = last.time;
        off_.readings = 1;
        slope_V_per_s_ = slopeBefore_V_per_s_;
        step_V_ = stepBefore_V_;
    }
    off_.held_V = off_.extreme_V = before_.back().volts_V;
    off_.threshold_V = limit_V;
    off_.direction = point.volts_V < off_.held_V ? Direction::down : Direction::up;
    atRest_ = 0;
    farthest_V_ = 0;
    strayed_ = false;
}

void SweepLeap::giveUp(Point point) {
    off_ = Excursion{};
    count_ = 0; // the hand's speed is learned anew
    even_ = evenBefore_ = false;
    slope_V_per_s_ = step_V_ = 0;
    remember(point);
}

std::optional<Excursion> SweepLeap::push(Time time, double volts_V, double threshold_V, bool evenOnly) {
    const Point point{time, volts_V};
    if (count_ < kBefore) {
        remember(point);
        return std::nullopt;
    }
    const double limit_V = std::max({threshold_V, kLeapSteps * step_V_, kHand_V_per_s * interval_s_});
    if (!off()) {
        const bool leapt = std::abs(volts_V - ahead_V(toSeconds(time - before_.back().time))) >= limit_V ||
                           leaptInTwo(point, threshold_V);
        // The reading before may have been leaving already.
        if (!leapt || (evenOnly && !even_ && !evenBefore_)) {
            remember(point);
            return std::nullopt;
        }
        leave(point, limit_V);
        lastOff_ = point;
    } else if ((cameBack_V(volts_V) >= std::max(limit_V, kBack * off_.depth_V()) || leaptBack(point, limit_V)) &&
               (onSweep(point, threshold_V) || begunMeanwhile(point, threshold_V))) {
        std::optional<Excursion> ended;
        if (!letGo() && !sweptBack(point)) {
            ended = off_;
            toldFrom_ = off_.from;
            toldTo_ = off_.to;
        }
        giveUp(point);
        return ended;
    } else if (caughtUp(point, threshold_V)) {
        giveUp(point);
        return std::nullopt;
    } else if (time - off_.from > (evenOnly ? kLongestUnasked : kLongest) || letGo() || wanders(point, limit_V)) {
        giveUp(point);
        return std::nullopt;
    }
    off_.to = time;
    ++off_.readings;
    if (rest_.contains(volts_V)) {
        restLow_V_ = atRest_ == 0 ? volts_V : std::min(restLow_V_, volts_V);
        restHigh_V_ = atRest_ == 0 ? volts_V : std::max(restHigh_V_, volts_V);
        ++atRest_;
    }
    priorOff_ = lastOff_;
    lastOff_ = point;
    const double offSweep_V = std::abs(volts_V - ahead_V(toSeconds(time - before_.back().time)));
    farthest_V_ = std::max(farthest_V_, offSweep_V);
    if (offSweep_V >= kBack * farthest_V_) lastFar_ = time;
    const double way_V = off_.direction == Direction::down ? off_.held_V - volts_V : volts_V - off_.held_V;
    if (way_V > off_.depth_V()) off_.extreme_V = volts_V;
    return std::nullopt;
}

} // namespace stillwire
