// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/lost_motion.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr std::size_t kFewest = 2;
constexpr double kTogether = 3; // the gap is so many times what either side is spread by. Own rule, no source

double spread_V(const std::vector<double>& levels) {
    const auto [low, high] = std::minmax_element(levels.begin(), levels.end());
    return *high - *low;
}

} // namespace

std::optional<LostMotion> findLostMotion(const Sheet& sheet, const std::vector<Arrival>& arrivals, double limit_V) {
    for (std::size_t i = 1; i + 1 < sheet.positions.size(); ++i) {
        const int at = static_cast<int>(i);
        std::vector<double> fromBefore, fromAfter;
        for (const Arrival& a : arrivals)
            if (a.at == at && a.from >= 0) (a.from < at ? fromBefore : fromAfter).push_back(a.level_V);
        if (fromBefore.size() < kFewest || fromAfter.size() < kFewest) continue;
        const double before_V = medianOf(fromBefore), after_V = medianOf(fromAfter);
        const double gap_V = std::abs(before_V - after_V);
        if (gap_V <= limit_V || gap_V < kTogether * std::max(spread_V(fromBefore), spread_V(fromAfter))) continue;
        return LostMotion{sheet.positions[i].name, sheet.positions[i - 1].name, sheet.positions[i + 1].name, before_V,
                          after_V};
    }
    return std::nullopt;
}

} // namespace stillwire
