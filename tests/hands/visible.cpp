// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/visible.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::hands {

double threshold_V(double noise_V, double count_V) { return std::max({0.02, 6 * noise_V, 3 * count_V}); }

double chanceToShow(double interval_s, double aperture_s, double threshold_V, double depth_V, double lasts_s) {
    const double m = aperture_s * threshold_V / depth_V;
    if (m > std::min(aperture_s, lasts_s)) return 0;
    return std::min(1.0, (aperture_s + lasts_s - 2 * m) / interval_s);
}

double shortestSure_s(double interval_s, double aperture_s, double threshold_V, double depth_V) {
    const double m = aperture_s * threshold_V / depth_V;
    return std::max(m, interval_s - aperture_s + 2 * m);
}

double surelySeen_s(const Meter& meter, double level_V, double depth_V) {
    const Range& range = meter.rangeFor(level_V);
    // Noise is as shown, and rounding adds to it; a fifth more so that chance takes nothing off.
    const double noise_V = meter.noise_V(range) + 0.3 * range.resolution_V;
    const double h_V = 1.2 * threshold_V(noise_V, range.resolution_V);
    double lasts_s = 1.02 * shortestSure_s(meter.interval_s, meter.aperture_s, h_V, depth_V) + 0.004;
    // Each reading wholly inside takes a filtered display another share of the way.
    if (meter.follow < 1) {
        const double readings = std::ceil(std::log(1 - std::min(0.99, h_V / depth_V)) / std::log(1 - meter.follow));
        lasts_s = std::max(lasts_s, meter.aperture_s + (readings + 1) * meter.interval_s);
    }
    return lasts_s;
}

} // namespace stillwire::hands
