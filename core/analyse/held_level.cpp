// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/held_level.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillwire {

namespace {
constexpr double kLeastThreshold_V = 0.02;
constexpr int kFootReadings = 16; // of a foot, before its own unsteadiness is known
constexpr double kFewCounts = 3;  // up to here the MAD moves in whole counts
constexpr double kStirred = 1.5;  // times the quiet noise
constexpr int kQuietRefreshes = 3;
constexpr int kEnd = 8;               // readings at either end of the window
constexpr double kLeastMove_V = 0.05; // between the ends; far above the drift of ten minutes
constexpr double kMoveThresholds = 2;
constexpr double kLeastSettle_V = 0.005;

constexpr int kPadded = 32;
static_assert(kPadded > HeldLevel::kWindow);

using Ring = std::array<double, HeldLevel::kWindow>;
using Padded = std::array<float, kPadded>;

// Counts ranks over a fixed number of single-precision values, which a compiler turns into a few vector compares.
bool hasMiddleRank(const Padded& v, float value) {
    int below = 0, upTo = 0;
    for (std::size_t j = 0; j < kPadded; ++j) {
        below += v[j] < value ? 1 : 0;
        upTo += v[j] <= value ? 1 : 0;
    }
    return below <= HeldLevel::kWindow / 2 && HeldLevel::kWindow / 2 < upTo;
}

// Median of a full window, tried first at `guess`: where readings come in counts it is seldom another one. Several
// times quicker than selecting, and this is what the analyser spends its time on.
double middleOfFull(const Ring& values, double guess) {
    alignas(32) Padded v;
    for (std::size_t i = 0; i < HeldLevel::kWindow; ++i) v[i] = static_cast<float>(values[i]);
    v[kPadded - 1] = std::numeric_limits<float>::infinity();
    if (const auto guessed = static_cast<float>(guess); hasMiddleRank(v, guessed))
        return values[static_cast<std::size_t>(std::find(v.begin(), v.end(), guessed) - v.begin())];
    for (std::size_t i = 0; i < HeldLevel::kWindow; ++i)
        if (hasMiddleRank(v, v[i])) return values[i];
    return values[0]; // not reached: one value has the middle rank
}

// Median of the first `count`; reorders.
double middleOf(Ring& values, int count, double guess) {
    if (count == HeldLevel::kWindow) return middleOfFull(values, guess);
    const auto middle = values.begin() + count / 2;
    std::nth_element(values.begin(), middle, values.begin() + count);
    if (count % 2 == 1) return *middle;
    return 0.5 * (*std::max_element(values.begin(), middle) + *middle);
}
} // namespace

HeldLevel::HeldLevel(double resolution_V, double footNoise_V)
    : resolution_V_(resolution_V), floor_V_(resolution_V / std::sqrt(12.0)), foot_V_(footNoise_V), noise_V_(floor_V_),
      threshold_V_(0) {
    refresh();
}

void HeldLevel::restart() {
    // Only a hold that a foot began: the mark for a press comes while the pedal still rests.
    if (begunBy_ == Hold::foot && hold_ == Hold::foot && count_ >= kFewReadings) foot_V_ = noise_V_;
    count_ = 0;
    next_ = 0;
    begunBy_ = hold_;
    refresh();
}

double HeldLevel::expected_V() const { return quietCount_ >= kQuietRefreshes ? quietSum_V_ / quietCount_ : floor_V_; }

double HeldLevel::quietReach_V() const { return std::max(3 * expected_V(), 1.5 * resolution_V_); }

double HeldLevel::settleTolerance_V() const {
    return std::max({3 * (count_ >= kFewReadings ? noise_V_ : expected_V()), 2 * resolution_V_, kLeastSettle_V});
}

double HeldLevel::windowNoise_V() {
    Ring work = ring_;
    double squares = 0, sum_V = 0;
    for (int i = 0; i < count_; ++i) {
        double& v = work[static_cast<std::size_t>(i)];
        v = std::abs(v - level_V_);
        squares += v * v;
        sum_V += std::min(v, kFewCounts * resolution_V_);
    }
    mad_V_ = middleOf(work, count_, mad_V_);
    const double fromMad_V = kMadToSigma * mad_V_;
    if (fromMad_V > kFewCounts * resolution_V_) return fromMad_V;
    // Where most readings are equal the MAD is 0 whatever the rest does: the mean deviation then knows better.
    const double fromMean_V = fromMad_V < resolution_V_ ? kMeanDeviationToSigma * sum_V / count_ : 0;
    return std::max(std::min(std::max(fromMad_V, fromMean_V), std::sqrt(squares / count_)), floor_V_);
}

double HeldLevel::mean_V(int from, int count) const {
    double sum_V = 0;
    for (int i = from; i < from + count; ++i) sum_V += ring_[static_cast<std::size_t>((next_ + i) % kWindow)];
    return sum_V / count;
}

int HeldLevel::readingsSinceLeft() const {
    const double oldest_V = mean_V(0, kEnd);
    int since = 0;
    while (since < kWindow - kEnd &&
           std::abs(mean_V(kWindow - 1 - since, 1) - oldest_V) > thresholdFor_V(expected_V()))
        ++since;
    return since;
}

void HeldLevel::refresh() {
    sinceRefresh_ = 0;
    moves_ = count_ == kWindow && std::abs(mean_V(kWindow - kEnd, kEnd) - mean_V(0, kEnd)) >
                                      std::max(kLeastMove_V, kMoveThresholds * thresholdFor_V(expected_V()));
    Ring work = ring_;
    level_V_ = count_ == 0 ? 0 : middleOf(work, count_, level_V_);
    double noise_V = count_ < 3 ? expected_V() : windowNoise_V();
    if (count_ >= 3 && count_ < kFewReadings) {
        // Few readings: their scatter may be far too small by chance.
        const double missing = 1 - static_cast<double>(count_) / kFewReadings;
        noise_V = std::max(noise_V * (1 + missing), expected_V() * missing);
    }
    if (hold_ == Hold::foot && count_ < kFootReadings) noise_V = std::max(noise_V, foot_V_);
    if (hold_ == Hold::stirred && quietCount_ >= kQuietRefreshes)
        noise_V = std::min(noise_V, kStirred * expected_V());
    if (hold_ == Hold::quiet && count_ >= kFewReadings && !moves_) {
        quietSum_V_ += noise_V;
        ++quietCount_;
    }
    set(noise_V);
}

double HeldLevel::thresholdFor_V(double noise_V) const {
    return std::max({kLeastThreshold_V, 6 * noise_V, 3 * resolution_V_});
}

void HeldLevel::set(double noise_V) {
    noise_V_ = noise_V;
    threshold_V_ = thresholdFor_V(noise_V);
}

} // namespace stillwire
