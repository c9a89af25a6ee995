// SPDX-License-Identifier: GPL-3.0-or-later
// The one time axis that trace, ribbon and machine strip share, and the trace's scale of volts. Pure arithmetic.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

namespace stillwire {

struct TimeAxis {
    double from_s = 0, to_s = 60;
    double left = 0, right = 1; // pixels

    friend bool operator==(const TimeAxis&, const TimeAxis&) = default;
    [[nodiscard]] double x(double time_s) const {
        return left + (time_s - from_s) / (to_s - from_s) * (right - left);
    }
    [[nodiscard]] double time_s(double x) const { return from_s + (x - left) / (right - left) * (to_s - from_s); }
    [[nodiscard]] double span_s() const { return to_s - from_s; }
};

struct VoltAxis {
    double low_V = 0, high_V = 5.25;
    double top = 0, bottom = 1; // pixels

    friend bool operator==(const VoltAxis&, const VoltAxis&) = default;
    [[nodiscard]] double y(double volts_V) const {
        return bottom - (volts_V - low_V) / (high_V - low_V) * (bottom - top);
    }
};

// Places for labels: 1, 2 or 5 times a power of ten apart, at least `atLeast` apart.
[[nodiscard]] inline double niceStep(double atLeast) {
    const double power = std::pow(10.0, std::floor(std::log10(atLeast)));
    for (double factor : {1.0, 2.0, 5.0})
        if (factor * power >= atLeast * (1 - 1e-9)) return factor * power;
    return 10 * power;
}

// Seconds: 1, 2, 5, 10, 15, 30 s, then minutes and hours in the same manner.
[[nodiscard]] inline double niceSeconds(double atLeast) {
    for (double step : {1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 300.0, 600.0, 900.0, 1800.0, 3600.0})
        if (step >= atLeast) return step;
    return 3600.0 * std::ceil(atLeast / 3600.0);
}

[[nodiscard]] inline std::vector<double> ticks(double from, double to, double step) {
    std::vector<double> at;
    for (double k = std::ceil(from / step - 1e-9); k * step <= to + step * 1e-9; ++k) at.push_back(k * step);
    return at;
}

} // namespace stillwire
