// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillwire {

double medianOf(std::vector<double> values) {
    if (values.empty()) return std::numeric_limits<double>::quiet_NaN();
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1) return *middle;
    return 0.5 * (*std::max_element(values.begin(), middle) + *middle);
}

double madOf(std::span<const double> values) {
    std::vector<double> work(values.begin(), values.end());
    const double middle = medianOf(work);
    for (double& v : work) v = std::abs(v - middle);
    return medianOf(std::move(work));
}

Line robustLine(std::span<const double> x, std::span<const double> y) {
    std::vector<double> slopes;
    for (std::size_t i = 0; i < x.size(); ++i)
        for (std::size_t j = i + 1; j < x.size(); ++j)
            if (x[j] != x[i]) slopes.push_back((y[j] - y[i]) / (x[j] - x[i]));
    Line line;
    line.slope = slopes.empty() ? 0.0 : medianOf(std::move(slopes));
    std::vector<double> offsets;
    for (std::size_t i = 0; i < x.size(); ++i) offsets.push_back(y[i] - line.slope * x[i]);
    line.at0 = medianOf(std::move(offsets));
    return line;
}

} // namespace stillwire
