// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/renewal_watch.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
// Own rule, no source: it must have come back by so many thresholds and by so much of its depth, and leave again by
// as many and by so much of that.
constexpr double kThresholds = 2;
constexpr double kBackShare = 0.3, kShare = 0.25;
} // namespace

void RenewalWatch::away(Time began, double offset_V, double threshold_V) {
    const double depth_V = std::abs(offset_V);
    const bool up = offset_V > 0;
    if (!inside_ || up != up_) {
        inside_ = true;
        up_ = up;
        deepest_V_ = nearest_V_ = depth_V;
        return;
    }
    const double cameBack_V = deepest_V_ - nearest_V_;
    const double least_V = kThresholds * threshold_V;
    if (cameBack_V >= std::max(least_V, kBackShare * deepest_V_) &&
        depth_V - nearest_V_ >= std::max(least_V, kShare * cameBack_V)) {
        renewals_.push_back(began);
        deepest_V_ = nearest_V_ = depth_V;
        return;
    }
    if (depth_V > deepest_V_) deepest_V_ = nearest_V_ = depth_V;
    nearest_V_ = std::min(nearest_V_, depth_V);
}

} // namespace stillwire
