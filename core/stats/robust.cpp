// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stats/robust.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace stillwire {

double medianInPlace(std::span<double> values) {
    if (values.empty()) return std::numeric_limits<double>::quiet_NaN();
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1) return *middle;
    return 0.5 * (*std::max_element(values.begin(), middle) + *middle);
}

double medianOf(std::vector<double> values) { return medianInPlace(values); }

double madOf(std::span<const double> values) {
    std::vector<double> work(values.begin(), values.end());
    const double middle = medianOf(work);
    for (double& v : work) v = std::abs(v - middle);
    return medianOf(std::move(work));
}

Line robustLine(std::span<const double> x, std::span<const double> y) {
    // A few points, as on a sweep, need no memory of their own.
    constexpr std::size_t kFew = 8;
    const std::size_t n = x.size();
    std::array<double, kFew*(kFew - 1) / 2> few{};
    std::vector<double> many(n > kFew ? n * (n - 1) / 2 : 0);
    const std::span<double> work = n > kFew ? std::span<double>(many) : std::span<double>(few);
    std::size_t count = 0;
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = i + 1; j < n; ++j)
            if (x[j] != x[i]) work[count++] = (y[j] - y[i]) / (x[j] - x[i]);
    Line line;
    if (count > 0) line.slope = medianInPlace(work.first(count));
    for (std::size_t i = 0; i < n; ++i) work[i] = y[i] - line.slope * x[i];
    line.at0 = medianInPlace(work.first(n));
    return line;
}

} // namespace stillwire
