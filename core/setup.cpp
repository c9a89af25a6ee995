// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/setup.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stillwire {

namespace {

constexpr double kGrid_V = 1e-6; // finer than any meter's count
constexpr double kLargest_V = 1e6;

// Interval: the median of the gaps. Resolution: the greatest common divisor of the readings on a 1 µV grid, taken up
// to the next power of ten a meter could count in. Accuracy 1 % + 5 counts, common practice for an unknown meter, no
// source.
MeterTraits learnMeter(std::span<const Reading> sample) {
    std::vector<double> gaps_s;
    std::int64_t divisor = 0;
    double largest_V = 0;
    const Reading* before = nullptr;
    for (const Reading& reading : sample) {
        if (reading.flags.has(Flag::ref)) continue;
        if (before && reading.time > before->time) gaps_s.push_back(toSeconds(reading.time - before->time));
        before = &reading;
        if (!reading.hasNumber() || std::abs(reading.volts_V) > kLargest_V) continue;
        largest_V = std::max(largest_V, std::abs(reading.volts_V));
        divisor = std::gcd(divisor, static_cast<std::int64_t>(std::llround(reading.volts_V / kGrid_V)));
    }
    MeterTraits meter;
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

} // namespace

Result<ExaminationSetup> examinationSetup(const CaptureHeader& header, const SetupOverrides& given,
                                          std::span<const Reading> first, const std::string& where) {
    const std::optional<Sheet>& sheet = given.sheet ? given.sheet : header.sheet;
    if (!sheet)
        return Error{.where = where,
                     .what = "has no sensor sheet in its header",
                     .mend = "name one with --sheet (`stillwire sheets` lists them)"};
    ExaminationSetup setup{.sheet = *sheet,
                           .meter = (given.meter ? given.meter : header.meter).value_or(MeterTraits{}),
                           .probe = header.probe,
                           .black = header.black,
                           .sections = header.sections,
                           .referenceMeter = header.referenceMeter,
                           .assumed = header.assumed};
    setup.assumed.insert(setup.assumed.end(), sheet->doubts.begin(), sheet->doubts.end());
    MeterTraits& meter = setup.meter;
    // Without ranges its accuracy at least is assumed.
    setup.meterKnown = !meter.ranges.empty();
    setup.meterLearnt = meter.interval_s <= 0 || meter.ranges.empty();
    if (!setup.meterLearnt) return setup;
    const MeterTraits seen = learnMeter(first.first(std::min(first.size(), kTeachingReadings)));
    if (meter.interval_s <= 0) meter.interval_s = seen.interval_s;
    if (meter.ranges.empty()) meter.ranges = seen.ranges;
    return setup;
}

} // namespace stillwire
