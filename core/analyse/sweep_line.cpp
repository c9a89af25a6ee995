// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/sweep_line.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace stillwire {

namespace {
constexpr double kNoises = 6;
// A hand does not sweep evenly: one reading's worth of movement is no fault.
constexpr double kSteps = 1.5;
constexpr double kUneven = 4;
constexpr double kLeastStep_V = 0.004;
} // namespace

void SweepLine::reset() {
    count_ = 0;
    open_.reset();
}

bool SweepLine::even() const {
    if (count_ < kWindow) return false;
    // Steps between neighbours, without the two of an excursion that has just ended.
    std::array<double, kWindow - 3> steps{};
    std::size_t n = 0;
    for (std::size_t i = 1; i < kWindow; ++i)
        if (i != kWindow / 2 - 1 && i != kWindow / 2) steps[n++] = volts_V_[i] - volts_V_[i - 1];
    const auto [least, most] = std::minmax_element(steps.begin(), steps.end());
    if (*least * *most <= 0) return false;
    const double small_V = std::min(std::abs(*least), std::abs(*most));
    const double large_V = std::max(std::abs(*least), std::abs(*most));
    return large_V <= kUneven * small_V && large_V >= kLeastStep_V;
}

std::optional<Excursion> SweepLine::push(Time time, double volts_V, double threshold_V) {
    if (count_ == kWindow) {
        std::move(time_s_.begin() + 1, time_s_.end(), time_s_.begin());
        std::move(volts_V_.begin() + 1, volts_V_.end(), volts_V_.begin());
        std::move(time_.begin() + 1, time_.end(), time_.begin());
        --count_;
    }
    const auto newest = static_cast<std::size_t>(count_++);
    time_[newest] = time;
    time_s_[newest] = toSeconds(time);
    volts_V_[newest] = volts_V;
    if (count_ < kWindow) return std::nullopt;

    const Line line = robustLine(time_s_, volts_V_);
    constexpr std::size_t middle = kWindow / 2;
    std::vector<double> residuals;
    for (std::size_t i = 0; i < kWindow; ++i)
        if (i != middle) residuals.push_back(std::abs(volts_V_[i] - line.at(time_s_[i])));
    const double noise_V = std::max(kMadToSigma * medianOf(residuals), resolution_V_ / std::sqrt(12.0));
    const double step_V = std::abs(line.slope) * (time_s_[kWindow - 1] - time_s_[0]) / (kWindow - 1);
    const double limit_V = std::max({threshold_V, kNoises * noise_V, kSteps * step_V});
    const double line_V = line.at(time_s_[middle]);
    const double offset_V = volts_V_[middle] - line_V;
    const Direction direction = offset_V < 0 ? Direction::down : Direction::up;

    std::optional<Excursion> ended;
    const bool off = std::abs(offset_V) >= limit_V;
    if (open_ && (!off || direction != open_->direction)) {
        open_->open = false;
        ended = open_;
        open_.reset();
    }
    if (!off) return ended;
    if (!open_) {
        open_ = Excursion{};
        open_->from = time_[middle];
        open_->held_V = line_V;
        open_->extreme_V = volts_V_[middle];
        open_->threshold_V = limit_V;
        open_->direction = direction;
        open_->open = true;
    }
    open_->to = time_[middle];
    ++open_->readings;
    if (std::abs(offset_V) > open_->depth_V()) {
        open_->held_V = line_V;
        open_->extreme_V = volts_V_[middle];
    }
    return ended;
}

} // namespace stillwire
