// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/meter_traits.hpp"

#include "core/sheet/from_toml.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr int kMeterFormat = 1;

MeterRange readRange(KeyReader& keys, const TomlNode& node, std::size_t number) {
    const std::string path = "range " + std::to_string(number);
    MeterRange range;
    range.fullScale_V = keys.number(node, path, "full_scale_V", 1e-3, 1e6);
    range.resolution_V = keys.number(node, path, "resolution_V", 1e-9, 1e6);
    if (!keys.failed() && range.resolution_V >= range.fullScale_V) {
        keys.complain(node.find("resolution_V"), {"%1: resolution_V is not below full_scale_V", {path}},
                      "resolution_V is the step of the last digit");
    }
    if (const auto percent = keys.optionalNumber(node, path, "accuracy_percent", 0, 100))
        range.accuracyPercent = *percent;
    if (const auto counts = keys.optionalNumber(node, path, "accuracy_counts", 0, 1e6))
        range.accuracyCounts = *counts;
    return range;
}

} // namespace

const MeterRange& MeterTraits::rangeFor(double v_V) const {
    const double size_V = std::abs(v_V);
    const auto found =
        std::find_if(ranges.begin(), ranges.end(), [&](const MeterRange& r) { return size_V <= r.fullScale_V; });
    return found == ranges.end() ? ranges.back() : *found;
}

Result<MeterTraits> meterTraitsFromToml(const TomlNode& root, const TomlOrigin& origin) {
    KeyReader keys(origin);
    MeterTraits meter;
    keys.format(root, kMeterFormat);
    if (const auto* name = keys.text(root, "", "name", true)) meter.name = *name;
    keys.takeNumber(root, "interval_s", 1e-4, 3600, meter.interval_s);
    meter.aperture_s = keys.optionalNumber(root, "", "aperture_s", 1e-6, 3600);
    // It would make more visible than the meter can have seen.
    if (!keys.failed() && meter.interval_s > 0 && meter.aperture_s.value_or(0) > meter.interval_s)
        keys.complain(
            root.find("aperture_s"),
            {"aperture_s %1 is longer than interval_s %2", {plain(*meter.aperture_s, 4), plain(meter.interval_s, 4)}},
            "a meter averages over a part of its interval at most: correct one of them");
    if (const TomlArray* ranges = keys.tables(root, "range")) {
        for (std::size_t i = 0; i < ranges->size(); ++i) meter.ranges.push_back(readRange(keys, (*ranges)[i], i + 1));
    }
    if (keys.failed()) return keys.error();
    std::stable_sort(meter.ranges.begin(), meter.ranges.end(),
                     [](const MeterRange& a, const MeterRange& b) { return a.fullScale_V < b.fullScale_V; });
    return meter;
}

Result<MeterTraits> parseMeterTraits(std::string_view toml, const std::string& where) {
    auto root = parseToml(toml, where);
    if (!root) return root.error();
    auto meter = meterTraitsFromToml(*root, {where});
    if (meter) meter->toml = std::string(toml);
    return meter;
}

} // namespace stillwire
