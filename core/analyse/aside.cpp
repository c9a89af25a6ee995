// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/aside.hpp"

#include "core/analyse/aside_parts.hpp"

#include <algorithm>

namespace stillwire {

std::vector<Aside> tellAside(std::vector<Excursion>& excursions, std::vector<LevelJump>& jumps,
                             const AsideEvidence& evidence) {
    const Travel travel(evidence);
    tellMovements(excursions, travel, evidence);
    tellLeans(excursions, evidence);
    tellLeads(excursions, evidence);
    std::vector<Aside> asides = lateStarts(evidence, travel);
    for (const Excursion& e : excursions)
        if (e.kind == ExcursionKind::aside)
            asides.push_back({e.from, overAt(e, evidence), e.held_V, e.extreme_V, e.step, e.likely});
    std::erase_if(jumps, [&](const LevelJump& jump) {
        const Wire wire = evidence.timeline->at(jump.at - evidence.aperture).wire;
        std::optional<Likely> likely;
        if (wire == Wire::signal) likely = asMovement(jump, travel, evidence);
        if (wire == Wire::reference) likely = asSag(jump, evidence);
        if (likely) asides.push_back({jump.at, jump.at, jump.from_V, jump.to_V, jump.step, *likely});
        return likely.has_value();
    });
    return asides;
}

void addVisitsApart(const std::vector<PositionLevel>& positions, std::vector<Aside>& asides) {
    for (const PositionLevel& position : positions)
        for (const Visit& visit : position.visits)
            if (visit.aside)
                asides.push_back({visit.from, visit.to, position.raw_V.value_or(visit.raw_V), visit.raw_V, visit.step,
                                  *visit.aside});
    std::sort(asides.begin(), asides.end(), [](const Aside& a, const Aside& b) { return a.from < b.from; });
}

} // namespace stillwire
