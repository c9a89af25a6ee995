// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/slow_departure.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
constexpr double kApart_s = 0.5;
constexpr double kThresholds = 3;    // it must have gone further than this
constexpr double kEarly = 0.5;       // of that way may lie behind it half a second after it left
constexpr double kLargestStep = 0.4; // of the way, between two samples; the rest leaves room for an uneven hand
} // namespace

void SlowDeparture::begin(Time time, double volts_V, double held_V) {
    from_ = time;
    held_V_ = held_V;
    time_s_[0] = 0;
    volts_V_[0] = volts_V;
    count_ = 1;
    early_V_ = -1;
}

bool SlowDeparture::push(Time time, double volts_V, double threshold_V) {
    const double since_s = toSeconds(time - from_);
    if (count_ == 0 || since_s < time_s_[count_ - 1] + kApart_s) return false;
    if (count_ == kSamples) {
        std::move(time_s_.begin() + 1, time_s_.end(), time_s_.begin());
        std::move(volts_V_.begin() + 1, volts_V_.end(), volts_V_.begin());
        --count_;
    }
    time_s_[count_] = since_s;
    volts_V_[count_] = volts_V;
    ++count_;
    if (early_V_ < 0) early_V_ = std::abs(volts_V - held_V_);
    if (count_ < kSamples) return false;
    const Line line = robustLine(time_s_, volts_V_);
    const double way_V = line.slope * (time_s_.back() - time_s_.front());
    if (std::abs(way_V) < kThresholds * threshold_V || way_V * (volts_V - held_V_) <= 0) return false;
    if (early_V_ > kEarly * std::abs(way_V) + kThresholds * threshold_V) return false;
    // One sample may lie in a dropout.
    std::size_t uneven = 0;
    for (std::size_t i = 0; i < kSamples; ++i)
        if (std::abs(volts_V_[i] - line.at(time_s_[i])) > kLargestStep * std::abs(way_V)) ++uneven;
    return uneven <= 1;
}

} // namespace stillwire
