// SPDX-License-Identifier: GPL-3.0-or-later
// What the judgement needs of a meter. How to talk to it is meters/describe's business.
#pragma once

#include "core/base/result.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

// Accuracy is ±(percent of reading + counts), one count being the resolution.
struct MeterRange {
    double fullScale_V = 6.0;
    double resolution_V = 0.001;
    double accuracyPercent = 1.0;
    double accuracyCounts = 5;
};

struct MeterTraits {
    std::string name;
    double interval_s = 0;            // 0: unknown, taken from the trace
    std::optional<double> aperture_s; // absent: unknown
    std::vector<MeterRange> ranges;   // ascending full scale; empty: unknown, taken from the trace
    std::string toml;                 // the whole description as text, for the capture header

    // The aperture; unknown, it may be as long as the interval.
    [[nodiscard]] double longestAperture_s() const { return aperture_s.value_or(interval_s); }
    // The smallest range that holds |v|, or the largest; precondition: ranges is not empty.
    [[nodiscard]] const MeterRange& rangeFor(double v_V) const;
};

// Reads the keys above and leaves the rest ([link], [frame]) alone. Errors as parseSheet.
[[nodiscard]] Result<MeterTraits> parseMeterTraits(std::string_view toml, const std::string& where);

} // namespace stillwire
