// SPDX-License-Identifier: GPL-3.0-or-later
// Median and spread that a few wild readings cannot move.
#pragma once

#include <span>
#include <vector>

namespace stillwire {

// 1/quantile of the normal distribution at 3/4: turns a median absolute deviation into a standard deviation.
inline constexpr double kMadToSigma = 1.482602218505602;
// sqrt(pi/2): turns the mean absolute deviation of normal readings into a standard deviation.
inline constexpr double kMeanDeviationToSigma = 1.2533141373155003;
// Standard deviation of the median of n normal readings, times sqrt(n)/sigma, for large n: the same number.
inline constexpr double kMedianScatter = kMeanDeviationToSigma;

// The mean of the middle two for an even count; NaN if empty. Takes a copy because it reorders.
[[nodiscard]] double medianOf(std::vector<double> values);
[[nodiscard]] double medianInPlace(std::span<double> values); // the same, and reorders what it is given
// Raw median absolute deviation from the median.
[[nodiscard]] double madOf(std::span<const double> values);

// Straight line through points by the median of all slopes and of all intercepts (Theil 1950, Sen 1968).
struct Line {
    double at0 = 0;
    double slope = 0;
    [[nodiscard]] double at(double x) const { return at0 + slope * x; }
};
[[nodiscard]] Line robustLine(std::span<const double> x, std::span<const double> y);

} // namespace stillwire
