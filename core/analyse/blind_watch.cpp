// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/blind_watch.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
constexpr double kSilenceIntervals = 2.5;
constexpr double kLeastSilence_s = 0.5;
constexpr int kGapsToTrust = 9;
constexpr double kSignal_V = 5.0; // ranges are asked for about here
// A run of equal readings is a frozen meter when its own noise would make one in a million such runs.
constexpr double kFrozenChance = 1e-6;
constexpr double kMostEqual = 0.40;
constexpr long kPairsToJudge = 25;
constexpr double kNoiseCounts = 10; // readings further apart than this differ by more than noise
constexpr int kLeastFrozenRun = 8;

std::optional<BlindCause> causeOf(const Reading& reading) {
    if (reading.flags.has(Flag::overload)) return BlindCause::overload;
    if (reading.flags.has(Flag::hold)) return BlindCause::hold;
    if (reading.flags.has(Flag::unit)) return BlindCause::unit;
    if (reading.hasNumber()) return std::nullopt;
    return reading.flags.has(Flag::autorange) ? BlindCause::autorange : BlindCause::unit;
}
} // namespace

BlindWatch::BlindWatch(const MeterTraits& meter)
    : meter_(meter), limit_(fromSeconds(std::max(kSilenceIntervals * meter.interval_s, kLeastSilence_s))),
      noiseReach_V_(kNoiseCounts * meter.rangeFor(kSignal_V).resolution_V) {}

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
    if (last_.count() >= 0) {
        const Time gap = reading.time - last_;
        if (gapMarked_ || gap > limit_) {
            const bool slower = !gapMarked_ && gap <= silenceLimit();
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
        if (gap.count() > 0) gaps_[static_cast<std::size_t>(gapCount_++ % kGaps)] = gap;
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
        lastVolts_V_ = reading.volts_V;
    }
    lastHadNumber_ = !cause;
    last_ = reading.time;
    return !cause;
}

void BlindWatch::gapMark() { gapMarked_ = true; }

void BlindWatch::watchForFreezing(const Reading& reading) {
    if (run_ > 0 && reading.volts_V == lastVolts_V_) {
        ++run_;
        if (frozen_ || run_ < kLeastFrozenRun || pairs_ < kPairsToJudge) return;
        // Two readings are equal with chance q = Σp²; a run sits on the commonest value, whose p is at most √q.
        // Estimated on the high side, two standard deviations of a count.
        const double equal = static_cast<double>(equalPairs_) + 1;
        const double equalShare = (equal + 2 * std::sqrt(equal)) / static_cast<double>(pairs_);
        // With less noise than half a count, standing still is what the meter does anyway.
        frozen_ = equalShare < kMostEqual && std::pow(equalShare, 0.5 * (run_ - 1)) < kFrozenChance;
        return;
    }
    if (run_ > 0) {
        if (frozen_) {
            close(runFrom_, reading.time, BlindCause::frozen);
        } else {
            equalPairs_ += run_ - 1;
            pairs_ += run_ - 1;
            // A level that moved says nothing of how restless this meter is at a level.
            if (std::abs(reading.volts_V - lastVolts_V_) <= noiseReach_V_) ++pairs_;
        }
    }
    frozen_ = false;
    run_ = 1;
    runFrom_ = reading.time;
}

Time BlindWatch::usualGap() const {
    const int n = std::min(gapCount_, kGaps);
    if (n == 0) return Time(0);
    std::array<Time, kGaps> work = gaps_;
    std::nth_element(work.begin(), work.begin() + n / 2, work.begin() + n);
    return work[static_cast<std::size_t>(n / 2)];
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
    if (frozen_ && now > runFrom_) all.push_back({runFrom_, now, BlindCause::frozen});
    if (!open_ && last_.count() >= 0 && now - last_ > silenceLimit()) all.push_back({last_, now, BlindCause::gap});
    return all;
}

bool BlindWatch::blindAt(Time now) const {
    return open_ || frozen_ || (last_.count() >= 0 && now - last_ > silenceLimit());
}

} // namespace stillwire
