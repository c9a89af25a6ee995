// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/held_level.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillwire {

namespace {
constexpr double kLeastThreshold_V = 0.02;
constexpr double kRoundOff_V = 1e-9;
constexpr double kLeastSettle_V = 0.005;

constexpr int kPadded = 32;
static_assert(kPadded > HeldLevel::kWindow);

// Median of a full window. Counts ranks over a fixed number of single-precision values, which a compiler turns into a
// few vector compares: several times quicker than selecting, and this is what the analyser spends its time on.
double middleOfFull(const std::array<double, HeldLevel::kWindow>& values) {
    alignas(32) std::array<float, kPadded> v;
    for (std::size_t i = 0; i < HeldLevel::kWindow; ++i) v[i] = static_cast<float>(values[i]);
    v[kPadded - 1] = std::numeric_limits<float>::infinity();
    for (std::size_t i = 0; i < HeldLevel::kWindow; ++i) {
        int below = 0, upTo = 0;
        for (std::size_t j = 0; j < kPadded; ++j) {
            below += v[j] < v[i] ? 1 : 0;
            upTo += v[j] <= v[i] ? 1 : 0;
        }
        if (below <= HeldLevel::kWindow / 2 && HeldLevel::kWindow / 2 < upTo) return values[i];
    }
    return values[0]; // not reached: one value has the middle rank
}

// Median of the first `count`; reorders.
double middleOf(std::array<double, HeldLevel::kWindow>& values, int count) {
    if (count == HeldLevel::kWindow) return middleOfFull(values);
    const auto middle = values.begin() + count / 2;
    std::nth_element(values.begin(), middle, values.begin() + count);
    if (count % 2 == 1) return *middle;
    return 0.5 * (*std::max_element(values.begin(), middle) + *middle);
}
} // namespace

HeldLevel::HeldLevel(double resolution_V)
    : resolution_V_(resolution_V), floor_V_(resolution_V / std::sqrt(12.0)), before_V_(floor_V_), noise_V_(floor_V_),
      threshold_V_(0) {
    refresh();
}

void HeldLevel::restart() {
    // The quietest hold so far tells what the meter itself adds. A guess from few readings is not handed on: it errs
    // on the large side, and would grow from hold to hold; nor is a hold that a slow movement made restless.
    if (count_ >= kFewReadings) before_V_ = trusted_ ? std::min(before_V_, noise_V_) : noise_V_;
    trusted_ = trusted_ || count_ >= kFewReadings;
    count_ = 0;
    next_ = 0;
    sinceRefresh_ = 0;
    refresh();
}

double HeldLevel::settleTolerance_V() const {
    return std::max({3 * (count_ >= kFewReadings ? noise_V_ : before_V_), 2 * resolution_V_, kLeastSettle_V});
}

void HeldLevel::refresh() {
    sinceRefresh_ = 0;
    std::array<double, kWindow> work = ring_;
    level_V_ = count_ == 0 ? 0 : middleOf(work, count_);
    if (count_ < 3) {
        set(std::max(before_V_, floor_V_));
        return;
    }
    for (double& v : work) v = std::abs(v - level_V_);
    double noise_V = std::max(kMadToSigma * middleOf(work, count_), floor_V_);
    if (count_ < kFewReadings) {
        // Few readings: their MAD may be far too small by chance.
        const double missing = 1 - static_cast<double>(count_) / kFewReadings;
        noise_V = std::max(noise_V * (1 + missing), before_V_ * missing);
    }
    set(noise_V);
}

void HeldLevel::set(double noise_V) {
    noise_V_ = noise_V;
    // Counts that differ by exactly the threshold must not pass it by the last bit of a sum.
    threshold_V_ = std::max({kLeastThreshold_V, 6 * noise_V_, 3 * resolution_V_}) + kRoundOff_V;
}

} // namespace stillwire
