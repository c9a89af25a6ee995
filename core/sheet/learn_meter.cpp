// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/examination.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stillwire {

namespace {
constexpr std::size_t kSample = 4096;
constexpr double kGrid_V = 1e-6; // finer than any meter's count
constexpr double kLargest_V = 1e6;
} // namespace

// Interval: the median of the gaps. Resolution: the greatest common divisor of the readings on a 1 µV grid, taken up
// to the next power of ten a meter could count in. Accuracy 1 % + 5 counts, common practice for an unknown meter, no
// source.
MeterTraits learnMeter(const std::vector<Reading>& sample) {
    std::vector<double> gaps_s;
    std::int64_t divisor = 0;
    double largest_V = 0;
    const Reading* before = nullptr;
    for (std::size_t i = 0; i < std::min(sample.size(), kSample); ++i) {
        const Reading& reading = sample[i];
        if (reading.flags.has(Flag::ref)) continue;
        if (before && reading.time > before->time) gaps_s.push_back(toSeconds(reading.time - before->time));
        before = &reading;
        if (!reading.hasNumber() || std::abs(reading.volts_V) > kLargest_V) continue;
        largest_V = std::max(largest_V, std::abs(reading.volts_V));
        divisor = std::gcd(divisor, static_cast<std::int64_t>(std::llround(reading.volts_V / kGrid_V)));
    }
    MeterTraits meter;
    meter.name = "unknown meter";
    if (!gaps_s.empty()) {
        const auto middle = gaps_s.begin() + static_cast<std::ptrdiff_t>(gaps_s.size() / 2);
        std::nth_element(gaps_s.begin(), middle, gaps_s.end());
        meter.interval_s = *middle;
    }
    MeterRange range;
    range.fullScale_V = std::max(6.0, largest_V);
    if (divisor > 0) {
        std::int64_t count = 1;
        while (count * 10 <= divisor) count *= 10;
        range.resolution_V = static_cast<double>(count) * kGrid_V;
    }
    // A handful of equal readings says nothing of the grid they lie on.
    range.resolution_V = std::clamp(range.resolution_V, kGrid_V, 0.01);
    meter.ranges.push_back(range);
    return meter;
}

} // namespace stillwire
