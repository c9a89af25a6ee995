// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/sweep_line.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
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

bool SweepLine::even(int readings) const {
    if (count_ < kWindow) return false;
    // Steps between neighbours, without those into it, in it and out of it.
    const int last = kWindow / 2, first = std::max(1, last - readings);
    double least_V = std::numeric_limits<double>::infinity(), most_V = -least_V;
    for (int i = 1; i < kWindow; ++i) {
        if (i >= first && i <= last) continue;
        const double step_V = volts_V_[static_cast<std::size_t>(i)] - volts_V_[static_cast<std::size_t>(i - 1)];
        least_V = std::min(least_V, step_V);
        most_V = std::max(most_V, step_V);
    }
    if (least_V * most_V <= 0) return false;
    const double small_V = std::min(std::abs(least_V), std::abs(most_V));
    const double large_V = std::max(std::abs(least_V), std::abs(most_V));
    return large_V <= kUneven * small_V && large_V >= kLeastStep_V;
}

// The middle reading goes on from the three before it, or leads to the three after it: a hand that changes its pace.
bool SweepLine::bends(double limit_V) const {
    constexpr std::size_t middle = kWindow / 2;
    const std::span<const double> t(time_s_), v(volts_V_);
    const auto near = [&](std::size_t from) {
        const Line line = robustLine(t.subspan(from, middle), v.subspan(from, middle));
        return std::abs(v[middle] - line.at(t[middle])) <= 0.5 * limit_V;
    };
    return near(0) || near(middle + 1);
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
    std::array<double, kWindow - 1> residuals_V{};
    for (std::size_t i = 0, n = 0; i < kWindow; ++i)
        if (i != middle) residuals_V[n++] = std::abs(volts_V_[i] - line.at(time_s_[i]));
    const double noise_V = std::max(kMadToSigma * medianInPlace(residuals_V), resolution_V_ / std::sqrt(12.0));
    const double step_V = std::abs(line.slope) * (time_s_[kWindow - 1] - time_s_[0]) / (kWindow - 1);
    const double limit_V = std::max({threshold_V, kNoises * noise_V, kSteps * step_V});
    const double line_V = line.at(time_s_[middle]);
    const double offset_V = volts_V_[middle] - line_V;
    const Direction direction = offset_V < 0 ? Direction::down : Direction::up;

    std::optional<Excursion> ended;
    const bool off = std::abs(offset_V) >= limit_V;
    if (open_ && (!off || direction != open_->direction)) {
        open_->open = false;
        if (open_->readings > 1 || !bend_) ended = open_;
        open_.reset();
    }
    if (!off) return ended;
    if (!open_) {
        open_ = Excursion{};
        bend_ = bends(limit_V);
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
