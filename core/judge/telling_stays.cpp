// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/telling_stays.hpp"

#include <algorithm>

namespace stillwire {

bool readsNothing(Wire wire, double level_V, const Sheet& sheet) {
    if (wire == Wire::ground) return level_V >= sheet.nominal_V / 2;
    return level_V <= kRailShare * sheet.nominal_V;
}

std::vector<Plateau> tellingStays(std::vector<Plateau> stays, const Sheet& sheet) {
    std::erase_if(stays, [](const Plateau& stay) { return stay.place.keyOff; });
    const auto nothing = [&](const Plateau& stay) { return readsNothing(stay.place.wire, stay.level_V, sheet); };
    const auto alike = [](const Plateau& a, const Plateau& b) {
        return a.place.wire == b.place.wire && a.place.position == b.place.position;
    };
    std::vector<Plateau> telling;
    for (const Plateau& stay : stays) {
        const bool others = std::any_of(stays.begin(), stays.end(),
                                        [&](const Plateau& other) { return alike(stay, other) && !nothing(other); });
        if (!nothing(stay) || !others) telling.push_back(stay);
    }
    return telling;
}

} // namespace stillwire
