// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/agreement.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kRail_V = 0.1; // nominal. Own rule, no source

// Of a visit that stands apart from the others: where the hand or the lead was.
Likely likelyOf(const Sheet& sheet, std::size_t position, const Visit& visit, double others_V) {
    if (visit.raw_V <= kRail_V || visit.raw_V >= sheet.nominal_V - kRail_V) return Likely::lead;
    const bool rest = sheet.positions[position].rest;
    for (std::size_t i = 0; i < sheet.positions.size(); ++i) {
        if (i == position || (!rest && !sheet.positions[i].rest)) continue;
        const double way_V = sheet.positions[i].window.middle_V() - sheet.positions[position].window.middle_V();
        if ((visit.level_V - others_V) * way_V > 0) return rest ? Likely::resting : Likely::unfinished;
    }
    return Likely::unknown;
}

} // namespace

void tellApart(const Sheet& sheet, std::size_t position, double limit_V, PositionLevel& level) {
    const auto agrees = [&](const Visit& visit) {
        return !visit.hang && std::any_of(level.visits.begin(), level.visits.end(), [&](const Visit& other) {
            return &other != &visit && !other.hang && std::abs(other.level_V - visit.level_V) <= limit_V;
        });
    };
    const auto ally = std::find_if(level.visits.begin(), level.visits.end(), agrees);
    level.agreed = ally != level.visits.end();
    if (!level.agreed) return;
    for (Visit& visit : level.visits)
        if (!visit.hang && !visit.aside && !agrees(visit))
            visit.aside = likelyOf(sheet, position, visit, ally->level_V);
}

} // namespace stillwire
