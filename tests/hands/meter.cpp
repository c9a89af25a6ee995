// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/meter.hpp"

#include "tests/hands/text.hpp"

#include <cmath>

namespace stillwire::hands {

const Range& Meter::rangeFor(double v_V) const {
    for (const Range& range : ranges)
        if (std::abs(v_V) <= range.fullScale_V) return range;
    return ranges.back();
}

double Meter::u_V(double v_V, bool shared) const {
    const double count_V = rangeFor(v_V).resolution_V;
    const double percent_V = shared ? 0 : 0.01 * percent * std::abs(v_V);
    // Three rectangular terms: counts, the last digit, and percent of reading where it does not cancel.
    const double squares = counts * counts * count_V * count_V + 0.25 * count_V * count_V + percent_V * percent_V;
    return std::sqrt(squares / 3);
}

double Meter::settles_s() const {
    if (follow >= 1) return 0;
    return interval_s * std::log(4 / ranges.back().resolution_V) / -std::log(1 - follow);
}

std::string Meter::toml() const {
    if (described == Described::not_at_all) return {};
    std::string toml = text("format = 1\nname = \"Invented logger\"\ninterval_s = %.3f\n", interval_s);
    if (described == Described::whole) toml += text("aperture_s = %.4f\n", aperture_s);
    for (const Range& r : ranges)
        toml += text("[[range]]\nfull_scale_V = %.1f\nresolution_V = %.4f\naccuracy_percent = %.2f\n"
                     "accuracy_counts = %.0f\n",
                     r.fullScale_V, r.resolution_V, percent, counts);
    return toml;
}

std::string Meter::words() const {
    const char* known = described == Described::whole             ? "described"
                        : described == Described::withoutAperture ? "aperture unknown"
                                                                  : "undescribed";
    return text("%.2f s, aperture %.0f ms, %g mV%s%s, %s", interval_s, 1000 * aperture_s,
                1000 * ranges.front().resolution_V, ranges.size() > 1 ? ", autorange" : "",
                follow < 1 ? ", filter" : "", known);
}

Meter anyMeter(Dice& dice) {
    Meter meter;
    meter.interval_s = dice.pick({0.1, 0.2, 0.25, 0.33, 0.33, 0.4, 0.5});
    meter.aperture_s = meter.interval_s * dice.logBetween(0.03, 1.0);
    meter.noise_counts = dice.between(0.2, 0.7);
    const double known = dice.uniform();
    meter.described = known < 0.6    ? Described::whole
                      : known < 0.75 ? Described::withoutAperture
                                     : Described::not_at_all;
    const bool guessed = meter.described == Described::not_at_all;
    meter.percent = guessed ? 1.0 : dice.pick({0.3, 0.5, 0.8});
    meter.counts = guessed ? 5 : dice.pick({2.0, 3.0});
    const double kind = dice.uniform();
    if (kind < 0.08) {
        meter.ranges = {{4, 0.001}, {40, 0.01}};
    } else if (kind < 0.16) {
        meter.ranges = {{0.6, 0.0001}, {6, 0.001}};
    } else {
        meter.ranges = {{dice.pick({6.0, 20.0}), dice.pick({0.001, 0.001, 0.01})}};
    }
    meter.deadRows = dice.chance(0.5);
    if (dice.chance(0.15)) meter.follow = dice.between(0.4, 0.8);
    for (Range& r : meter.ranges) {
        r.gain = 1 + 0.01 * meter.percent * dice.between(-0.9, 0.9);
        r.offset_V = r.resolution_V * dice.between(-1.5, 1.5);
    }
    return meter;
}

} // namespace stillwire::hands
