// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/blind_watch.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
constexpr double kSilenceIntervals = 2.5;
constexpr double kLeastSilence_s = 0.5;
constexpr int kGapsToTrust = 9;

std::optional<BlindCause> causeOf(const Reading& reading) {
    if (reading.flags.has(Flag::overload)) return BlindCause::overload;
    if (reading.flags.has(Flag::hold)) return BlindCause::hold;
    if (reading.flags.has(Flag::unit)) return BlindCause::unit;
    if (reading.hasNumber()) return std::nullopt;
    return reading.flags.has(Flag::autorange) ? BlindCause::autorange : BlindCause::unit;
}
} // namespace

BlindWatch::BlindWatch(const MeterTraits& meter)
    : meter_(meter), limit_(fromSeconds(std::max(kSilenceIntervals * meter.interval_s, kLeastSilence_s))) {}

void BlindWatch::close(Time from, Time to, BlindCause cause) {
    if (to <= from) return;
    // One blind stretch with two causes in a row is told as two spans, one cause in a row as one.
    if (!closed_.empty() && closed_.back().cause == cause && closed_.back().to >= from) {
        closed_.back().to = std::max(closed_.back().to, to);
        return;
    }
    closed_.push_back({from, to, cause});
}

bool BlindWatch::push(const Reading& reading) {
    const std::optional<BlindCause> cause = causeOf(reading);
    gapBefore_ = false;
    if (last_.count() >= 0) {
        const Time gap = reading.time - last_;
        if (gapMarked_ || gap > limit_) {
            const bool slower = !gapMarked_ && gap <= silenceLimit();
            gapBefore_ = !slower;
            if (!slower) {
                if (open_) {
                    close(open_->from, last_, open_->cause);
                    open_.reset();
                }
                const bool ranging =
                    !gapMarked_ &&
                    (reading.flags.has(Flag::autorange) ||
                     (lastHadNumber_ && reading.hasNumber() && changedRange(lastVolts_V_, reading.volts_V)));
                close(last_, reading.time, ranging ? BlindCause::autorange : BlindCause::gap);
            }
            gapMarked_ = false;
        }
        count(gap);
    }
    if (cause) {
        if (open_ && open_->cause != *cause) {
            close(open_->from, last_, open_->cause);
            open_.reset();
        }
        if (!open_) open_ = BlindSpan{last_.count() >= 0 ? last_ : reading.time, reading.time, *cause};
    } else {
        if (open_) {
            close(open_->from, reading.time, open_->cause);
            open_.reset();
        }
        watchForFreezing(reading);
    }
    lastHadNumber_ = !cause;
    last_ = reading.time;
    return !cause;
}

void BlindWatch::gapMark() { gapMarked_ = true; }

std::optional<Time> BlindWatch::quietLimit() const {
    if (gapMarked_ || open_ || last_.count() < 0 || !lastHadNumber_) return std::nullopt;
    return limit_;
}

void BlindWatch::pushQuiet(const Reading* first, std::size_t count_) {
    for (const Reading* r = first; r != first + count_; ++r) {
        count(r->time - last_);
        last_ = r->time;
        watchForFreezing(*r);
    }
}

Time BlindWatch::usualGap() const {
    const std::size_t n = std::min(gapCount_, kGaps);
    if (n == 0) return Time(0);
    std::array<Time, kGaps> work = gaps_;
    const auto middle = work.begin() + static_cast<std::ptrdiff_t>(n / 2);
    std::nth_element(work.begin(), middle, work.begin() + static_cast<std::ptrdiff_t>(n));
    return *middle;
}

Time BlindWatch::silenceLimit() const {
    if (gapCount_ < kGapsToTrust) return limit_;
    return std::max(limit_,
                    Time(static_cast<Time::rep>(kSilenceIntervals * static_cast<double>(usualGap().count()))));
}

double BlindWatch::interval_s() const { return toSeconds(usualGap()); }

bool BlindWatch::changedRange(double before_V, double after_V) const {
    return meter_.ranges.size() > 1 && &meter_.rangeFor(before_V) != &meter_.rangeFor(after_V);
}

std::vector<BlindSpan> BlindWatch::spans(Time now) const {
    std::vector<BlindSpan> all = closed_;
    if (open_ && now > open_->from) all.push_back({open_->from, now, open_->cause});
    if (frozen_.frozen() && now > frozen_.from()) all.push_back({frozen_.from(), now, BlindCause::frozen});
    if (!open_ && last_.count() >= 0 && now - last_ > silenceLimit()) all.push_back({last_, now, BlindCause::gap});
    return all;
}

bool BlindWatch::blindAt(Time now) const {
    return open_ || frozen_.frozen() || (last_.count() >= 0 && now - last_ > silenceLimit());
}

} // namespace stillwire
