// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/visibility.hpp"

#include <algorithm>

namespace stillwire {

namespace {
constexpr double kLeastApertureShare = 0.1;

double chanceAt(double interval_s, double aperture_s, double threshold_V, double depth_V, double duration_s) {
    const double overlap_s = aperture_s * threshold_V / depth_V;
    if (overlap_s > std::min(aperture_s, duration_s)) return 0;
    return std::clamp((aperture_s + duration_s - 2 * overlap_s) / interval_s, 0.0, 1.0);
}

double shortestAt(double interval_s, double aperture_s, double threshold_V, double depth_V) {
    const double overlap_s = aperture_s * threshold_V / depth_V;
    return std::max(overlap_s, interval_s - aperture_s + 2 * overlap_s);
}
} // namespace

double poseThreshold_V(double threshold_V, double play_V, double resolution_V) {
    return std::max(threshold_V, play_V + resolution_V);
}

double chanceToShow(const Sight& sight, double depth_V, double duration_s) {
    const double T = sight.interval_s, h = sight.threshold_V;
    if (sight.aperture_s) return chanceAt(T, *sight.aperture_s, h, depth_V, duration_s);
    return std::min(chanceAt(T, kLeastApertureShare * T, h, depth_V, duration_s),
                    chanceAt(T, T, h, depth_V, duration_s));
}

std::optional<double> shortestVisible_s(const Sight& sight, double depth_V) {
    const double T = sight.interval_s, h = sight.threshold_V;
    if (!(depth_V >= h) || depth_V <= 0) return std::nullopt;
    if (sight.aperture_s) return shortestAt(T, *sight.aperture_s, h, depth_V);
    return std::max(shortestAt(T, kLeastApertureShare * T, h, depth_V), shortestAt(T, T, h, depth_V));
}

} // namespace stillwire
