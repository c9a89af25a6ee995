// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/wear_map.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>

namespace stillwire {

WearMap::WearMap(const Sheet& sheet) {
    double low = sheet.positions.front().window.middle_V();
    double high = low;
    for (const Position& position : sheet.positions) {
        low = std::min(low, position.window.middle_V());
        high = std::max(high, position.window.middle_V());
    }
    low_V_ = low;
    perVolt_ = high > low ? kBins / (high - low) : 0.0;
}

std::vector<WearBin> WearMap::bins(double interval_s) const {
    std::vector<WearBin> out;
    for (std::size_t i = 0; i < kBins; ++i) {
        const Bin& bin = bins_[i];
        WearBin told;
        told.from = static_cast<double>(i) / kBins;
        told.to = static_cast<double>(i + 1) / kBins;
        told.time_s = static_cast<double>(bin.readings) * interval_s;
        told.dropouts = bin.dropouts;
        if (bin.readings > 0)
            told.noise_V = kMeanDeviationToSigma * bin.deviation_V / static_cast<double>(bin.readings);
        out.push_back(told);
    }
    return out;
}

} // namespace stillwire
