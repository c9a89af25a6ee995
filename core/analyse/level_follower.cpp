// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/level_follower.hpp"

#include <algorithm>

namespace stillwire {

namespace {
constexpr int kTail = SweepLine::kWindow / 2 + 1; // the line judges so much later
constexpr double kFootNoises = 6;
} // namespace

LevelFollower::LevelFollower(Setup setup, LevelFollowerListener& listener)
    : listener_(&listener), play_V_(setup.play_V),
      tracker_(setup.resolution_V, setup.play_V, std::move(setup.windows), listener),
      sweep_(setup.resolution_V, setup.rest) {}

ReadingClass LevelFollower::push(Time time, double volts_V, ExpectedMotion asked) {
    if (asked == ExpectedMotion::sweep) return pushSweep(time, volts_V, asked);
    if (asked == ExpectedMotion::unmarked) return pushUnmarked(time, volts_V);
    if (asked_ == ExpectedMotion::sweep) end();
    asked_ = ExpectedMotion::free;
    return tracker_.push(time, volts_V, asked);
}

ReadingClass LevelFollower::pushUnmarked(Time time, double volts_V) {
    if (tail_ > 0) {
        const ReadingClass seen = pushSweep(time, volts_V, ExpectedMotion::unmarked);
        tail_ = seen == ReadingClass::held ? tail_ - 1 : kTail;
        if (tail_ == 0) end();
        return seen;
    }
    const ReadingClass seen = tracker_.push(time, volts_V, ExpectedMotion::unmarked);
    if (seen == ReadingClass::held) {
        const Reading reading{time, volts_V, {}};
        remember(&reading, 1);
    } else {
        beginSweep(time, volts_V);
    }
    return seen;
}

ReadingClass LevelFollower::pushSweep(Time time, double volts_V, ExpectedMotion asked) {
    const double foot_V = std::max(2 * play_V_, kFootNoises * tracker_.level().foot_V()); // a hand turns the shaft
    const double limit_V = std::max(tracker_.level().quietThreshold_V(), asked == ExpectedMotion::sweep ? foot_V : 0);
    asked_ = asked;
    sweep_.push(time, volts_V, limit_V, asked == ExpectedMotion::sweep);
    aside_.insert(aside_.end(), sweep_.dropouts().begin(), sweep_.dropouts().end());
    if (sweep_.withholds()) return tracker_.holding() ? ReadingClass::away : ReadingClass::moving;
    ReadingClass seen = ReadingClass::moving;
    for (const SweepWatch::Point& p : sweep_.onward()) seen = tracker_.push(p.time, p.volts_V, asked);
    settleAside();
    return seen;
}

void LevelFollower::remember(const Reading* first, std::size_t count) {
    const std::size_t kept = std::min(count, kKept);
    held_ += count - kept;
    for (const Reading* r = first + (count - kept); r != first + count; ++r)
        before_[held_++ % kKept] = {r->time, r->volts_V};
}

// Off a level: perhaps a sweep, whose beginning lies in the readings before.
void LevelFollower::beginSweep(Time time, double volts_V) {
    const double limit_V = tracker_.level().quietThreshold_V();
    const std::size_t known = std::min(held_, static_cast<std::size_t>(SweepLine::kWindow));
    for (std::size_t i = held_ - known; i < held_; ++i)
        sweep_.push(before_[i % kKept].time, before_[i % kKept].volts_V, limit_V, false);
    sweep_.push(time, volts_V, limit_V, false);
    held_ = 0;
    tail_ = kTail;
    asked_ = ExpectedMotion::unmarked;
}

// The readings that the sweep withheld were the hand's.
void LevelFollower::end() {
    for (const SweepWatch::Point& p : sweep_.end()) tracker_.push(p.time, p.volts_V, asked_);
    settleAside();
    tail_ = 0;
}

// What was found off a sweep stands, unless the tracker has told the same as an excursion off a level.
void LevelFollower::settleAside() {
    if (tracker_.open()) return;
    for (const Excursion& e : aside_)
        if (e.from > tracker_.toldTo() || e.to < tracker_.toldFrom()) listener_->foundOffSweep(e);
    aside_.clear();
}

std::size_t LevelFollower::mostQuiet(ExpectedMotion asked) const {
    const bool sweeps = asked == ExpectedMotion::sweep || asked_ == ExpectedMotion::sweep || tail_ > 0;
    return sweeps ? 0 : tracker_.mostQuiet();
}

void LevelFollower::pushQuiet(const Reading* first, std::size_t count, ExpectedMotion asked) {
    tracker_.pushQuiet(first, count, asked);
    if (asked == ExpectedMotion::unmarked)
        remember(first, count);
    else
        asked_ = ExpectedMotion::free;
}

void LevelFollower::placeChanged(const Context& place, bool levelMayFollow) {
    if (levelMayFollow) end();
    tracker_.placeChanged(place);
}

void LevelFollower::blind() {
    end();
    tracker_.blind();
}

} // namespace stillwire
