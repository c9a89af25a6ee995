// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shared/fitting_sheets.hpp"

#include "app/shared/resources.hpp"

#include <algorithm>
#include <set>

namespace stillwire {

namespace {

// How many of the sheet's windows hold a level; 0 if a level lies in none. The reference and the ground have no
// window and are no level of the signal.
std::size_t windowsHit(const Sheet& sheet, const std::vector<Stay>& plateaus) {
    std::set<std::string> hit;
    for (const Stay& stay : plateaus) {
        if (stay.level_V < sheet.maxDrop_V || sheet.reference.contains(stay.level_V)) continue;
        const auto position = std::find_if(sheet.positions.begin(), sheet.positions.end(),
                                           [&](const Position& p) { return p.window.contains(stay.level_V); });
        if (position == sheet.positions.end()) return 0;
        hit.insert(position->name);
    }
    return hit.size();
}

} // namespace

std::vector<std::string> fittingSheets(const std::vector<Stay>& plateaus) {
    std::vector<std::pair<std::size_t, std::string>> found;
    for (const Named& named : listNamed("sheets"))
        if (auto sheet = loadSheet(named.path))
            if (const std::size_t hit = windowsHit(*sheet, plateaus); hit > 0) found.emplace_back(hit, named.name);
    std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<std::string> names;
    for (const auto& [hit, name] : found) names.push_back(name);
    return names;
}

} // namespace stillwire
