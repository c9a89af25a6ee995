// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/hangs.hpp"

#include "core/stats/exact.hpp"
#include "core/stats/robust.hpp"

#include <algorithm>

namespace stillwire {

namespace {

constexpr double kPartedBy = 3; // a gap this many times wider than either side is spread. Own rule, no source

// How far `level` lies from `from` towards any other position, in the direction of travel that leads there.
double towardsPressed(const Sheet& sheet, std::size_t rest, double from_V, double level_V) {
    double most = 0;
    for (std::size_t i = 0; i < sheet.positions.size(); ++i) {
        if (i == rest) continue;
        const double away = sheet.positions[i].window.middle_V() - sheet.positions[rest].window.middle_V();
        most = std::max(most, (level_V - from_V) * (away > 0 ? 1 : -1));
    }
    return most;
}

// Spread rather than parted into good releases and bad ones: slack or binding. Without a gap it is spread wherever it
// lies; inside the window a gap must part it plainly.
bool scattered(std::vector<const Visit*> back, bool someCameBack, double gap_V, const Window& window) {
    std::sort(back.begin(), back.end(), [](const Visit* a, const Visit* b) { return a->level_V < b->level_V; });
    const double low_V = back.front()->level_V, high_V = back.back()->level_V;
    bool outside = false, gap = false, parted = false;
    for (std::size_t i = 0; i < back.size(); ++i) {
        const double p = probabilityInside(back[i]->level_V, back[i]->u_V, window.min_V, window.max_V);
        outside = outside || p <= kSureOutside;
        if (i == 0) continue;
        const double here_V = back[i]->level_V - back[i - 1]->level_V;
        const double wider_V = std::max(back[i - 1]->level_V - low_V, high_V - back[i]->level_V);
        gap = gap || here_V > gap_V;
        parted = parted || (here_V > gap_V && here_V > kPartedBy * wider_V);
    }
    return (!gap && someCameBack) || (!outside && !parted);
}

} // namespace

void findHangs(const Sheet& sheet, double limit_V, const Releases& releases, Levels& levels) {
    const std::size_t rest = releases.rest;
    PositionLevel& position = levels.positions[rest];
    std::vector<double> back;
    std::vector<const Visit*> visitsBack;
    for (std::size_t i = 0; i < position.visits.size(); ++i) {
        if (!releases.returned[i]) continue;
        back.push_back(position.visits[i].level_V);
        visitsBack.push_back(&position.visits[i]);
    }
    if (back.size() < 2) return;
    // The visits that came back furthest are the good ones; with the rest at one end of travel that is one extreme.
    double good_V = back.front();
    for (const double level_V : back)
        if (towardsPressed(sheet, rest, level_V, good_V) > 0 && towardsPressed(sheet, rest, good_V, level_V) <= 0)
            good_V = level_V;
    const bool between = rest > 0 && rest + 1 < sheet.positions.size();
    if (between) good_V = medianOf(back);
    const auto [low, high] = std::minmax_element(back.begin(), back.end());
    const bool unsteady = *high - *low > limit_V || releases.armOnStop == false;
    const bool noneCameBack = !between && releases.before_V && unsteady &&
                              towardsPressed(sheet, rest, *releases.before_V, good_V) > limit_V;
    if (noneCameBack) good_V = *releases.before_V;
    std::vector<double> goods, hangs;
    bool hungWhenAsked = false;
    for (std::size_t i = 0; i < position.visits.size(); ++i) {
        if (!releases.returned[i]) continue;
        Visit& visit = position.visits[i];
        visit.hang = towardsPressed(sheet, rest, good_V, visit.level_V) > limit_V;
        (visit.hang ? hangs : goods).push_back(visit.level_V);
        if (visit.from <= releases.answered) hungWhenAsked = visit.hang;
    }
    if (!hangs.empty() && scattered(visitsBack, !noneCameBack, limit_V, position.window_V)) {
        for (Visit& visit : position.visits) visit.hang = false;
        levels.scattered = true;
        levels.scatterLow_V = *low;
        levels.scatterHigh_V = *high;
        return;
    }
    if (hangs.size() == 1 && !noneCameBack) { // one is none
        for (Visit& visit : position.visits) {
            if (visit.hang) visit.aside = Likely::resting;
            visit.hang = false;
        }
        return;
    }
    levels.hangs = static_cast<int>(hangs.size());
    if (hangs.empty()) return;
    levels.hangLevel_V = medianOf(hangs);
    levels.goodRest_V = goods.empty() ? good_V : medianOf(goods);
    // An arm on its stop after a good release says nothing of the bad ones; one off its stop says it all.
    if (hungWhenAsked || releases.armOnStop == false) levels.hungOnStop = releases.armOnStop;
}

} // namespace stillwire
