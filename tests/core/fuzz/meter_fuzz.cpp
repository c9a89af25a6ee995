// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/from_toml.hpp"
#include "tests/core/fuzz/invariants.hpp"

#include <cstdint>

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    auto meter = parseMeterTraits(std::string(data, data + size), "fuzz");
    if (!meter) {
        checkError(meter.error());
        return 0;
    }
    double last_V = 0;
    for (const MeterRange& r : meter->ranges) {
        require(r.resolution_V > 0 && r.resolution_V < r.fullScale_V && r.fullScale_V >= last_V, "ranges ascend");
        require(r.accuracyPercent >= 0 && r.accuracyCounts >= 0, "accuracy is no less than nothing");
        last_V = r.fullScale_V;
    }
    require(meter->interval_s >= 0 && (!meter->aperture_s || *meter->aperture_s > 0), "times make sense");
    auto again = parseMeterTraits(describe(*meter), "again");
    require(again.ok() && describe(*again) == describe(*meter), "a description reads back the same");
    return 0;
}
