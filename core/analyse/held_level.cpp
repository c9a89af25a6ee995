// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/held_level.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
constexpr double kLeastThreshold_V = 0.02;
constexpr double kLeastSettle_V = 0.005;
constexpr int kFewReadings = 16; // below this the MAD is too rough to be trusted alone
constexpr int kRefreshEvery = 8;
} // namespace

HeldLevel::HeldLevel(double resolution_V)
    : resolution_V_(resolution_V), floor_V_(resolution_V / std::sqrt(12.0)), before_V_(floor_V_), noise_V_(floor_V_),
      threshold_V_(0) {
    refreshNoise();
}

void HeldLevel::restart() {
    before_V_ = noise_V_;
    count_ = 0;
    next_ = 0;
    sinceRefresh_ = 0;
    refreshNoise();
}

void HeldLevel::add(double volts_V) {
    const auto end = sorted_.begin() + count_;
    if (count_ == kWindow) {
        // Slide the elements between the leaving and the entering one by one place.
        auto gone = std::lower_bound(sorted_.begin(), end, ring_[static_cast<std::size_t>(next_)]);
        const auto place = std::upper_bound(sorted_.begin(), end, volts_V);
        if (place > gone) {
            std::move(gone + 1, place, gone);
            *(place - 1) = volts_V;
        } else {
            std::move_backward(place, gone, gone + 1);
            *place = volts_V;
        }
    } else {
        const auto place = std::upper_bound(sorted_.begin(), end, volts_V);
        std::move_backward(place, end, end + 1);
        *place = volts_V;
        ++count_;
    }
    ring_[static_cast<std::size_t>(next_)] = volts_V;
    next_ = next_ + 1 == kWindow ? 0 : next_ + 1;
    if (++sinceRefresh_ >= kRefreshEvery || count_ < kFewReadings) refreshNoise();
}

double HeldLevel::level_V() const {
    if (count_ == 0) return 0;
    const auto middle = static_cast<std::size_t>(count_ / 2);
    return count_ % 2 == 1 ? sorted_[middle] : 0.5 * (sorted_[middle - 1] + sorted_[middle]);
}

double HeldLevel::settleTolerance_V() const { return std::max({3 * noise_V_, 2 * resolution_V_, kLeastSettle_V}); }

void HeldLevel::refreshNoise() {
    sinceRefresh_ = 0;
    if (count_ < 3) {
        noise_V_ = std::max(before_V_, floor_V_);
    } else {
        // The k-th smallest deviation, walking outwards from the median on both sides.
        const double middle = level_V();
        auto low = static_cast<std::size_t>(count_ / 2);
        auto high = low;
        double deviation = 0;
        for (int taken = 0; taken <= count_ / 2; ++taken) {
            const double below = low > 0 ? middle - sorted_[low - 1] : 1e300;
            const double above = high < static_cast<std::size_t>(count_) ? sorted_[high] - middle : 1e300;
            if (below < above) {
                deviation = below;
                --low;
            } else {
                deviation = above;
                ++high;
            }
        }
        noise_V_ = std::max(kMadToSigma * deviation, floor_V_);
        if (count_ < kFewReadings) {
            // Few readings: their MAD may be far too small by chance.
            const double share = static_cast<double>(count_) / kFewReadings;
            noise_V_ = std::max(noise_V_ * (1 + (1 - share)), before_V_ * (1 - share));
        }
    }
    threshold_V_ = std::max({kLeastThreshold_V, 6 * noise_V_, 3 * resolution_V_});
}

} // namespace stillwire
