// SPDX-License-Identifier: GPL-3.0-or-later
// Where along the track the trouble is: dropouts and noise by place, and the time spent there.
#pragma once

#include "core/domain/reading.hpp"
#include "core/findings/findings.hpp"
#include "core/sheet/sheet.hpp"

#include <array>
#include <cmath>
#include <vector>

namespace stillwire {

class WearMap {
public:
    static constexpr int kBins = 20;

    explicit WearMap(const Sheet& sheet);

    void held(const Reading* first, std::size_t count, double level_V) {
        Bin& bin = bins_[binOf(level_V)];
        bin.readings += static_cast<long>(count);
        double deviation_V = bin.deviation_V;
        for (const Reading* r = first; r != first + count; ++r) deviation_V += std::abs(r->volts_V - level_V);
        bin.deviation_V = deviation_V;
    }
    void moving(double volts_V) { ++bins_[binOf(volts_V)].readings; }
    void dropout(double held_V) { ++bins_[binOf(held_V)].dropouts; }
    [[nodiscard]] std::vector<WearBin> bins(double interval_s) const;

private:
    struct Bin {
        long readings = 0;
        int dropouts = 0;
        double deviation_V = 0;
    };
    [[nodiscard]] std::size_t binOf(double volts_V) const {
        const double place = (volts_V - low_V_) * perVolt_;
        return place <= 0 ? 0 : (place >= kBins - 1 ? kBins - 1 : static_cast<std::size_t>(place));
    }

    double low_V_, perVolt_;
    std::array<Bin, kBins> bins_{};
};

} // namespace stillwire
