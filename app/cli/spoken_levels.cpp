// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/spoken_levels.hpp"

#include "core/judge/phrases.hpp"
#include "core/judge/within.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kOtherCold_V = 0.01; // else the first cold level is the level

Sentence nameOf(Conformance conformance) {
    switch (conformance) {
    case Conformance::inside: return Sentence{"inside"};
    case Conformance::outside: return Sentence{"outside"};
    case Conformance::undecided: break;
    }
    return "too close to call";
}

Line wireLine(const WireLevel& w, Sentence level) {
    Line line{std::move(level)};
    if (w.visits > 1) line.push_back({"It changed by %1 between looks.", {volts(w.change_V, 3)}});
    return line;
}

Line positionLine(const PositionLevel& p, bool turned) {
    const std::string least = plain(p.window_V.min_V, 2), most = volts(p.window_V.max_V);
    if (!p.level_V) return {{"%1: not measured; window %2 to %3.", {byName(p.name), least, most}}};
    Line line;
    const std::string level = levelTo(*p.level_V, p.u_V.value_or(0)), good = within(p.u_V.value_or(0));
    if (p.conformance)
        line.push_back({"%1: %2, good to %3; window %4 to %5: %6.",
                        {byName(p.name), level, good, least, most, nameOf(*p.conformance)}});
    else
        line.push_back({"%1: %2, good to %3; window %4 to %5.", {byName(p.name), level, good, least, most}});
    const Sentence visits = counted(p.visits.size(), "1 visit", "%1 visits");
    line.push_back(p.spread_V ? Sentence{"%1, spread %2.", {visits, volts(*p.spread_V, 3)}}
                              : Sentence{"%1.", {visits}});
    if (p.coldLevel_V && std::abs(*p.coldLevel_V - *p.level_V) >= kOtherCold_V)
        line.push_back({turned ? "First cold, and turned since: now it would be about %1." : "First cold: %1.",
                        {volts(*p.coldLevel_V)}});
    const auto hangs = std::count_if(p.visits.begin(), p.visits.end(), [](const Visit& v) { return v.hang; });
    if (hangs > 0)
        line.push_back(counted(static_cast<std::size_t>(hangs), "It hung short once.", "It hung short %1 times."));
    return line;
}

// Why no turn does it: the end that the best one would leave worst.
Sentence whyNoTurn(const Findings& f, const Sheet& sheet) {
    const AdjustmentAdvice& a = f.adjustment;
    if (!sheet.driftAllowance_V) return "Wanted, but this mount has no adjustment.";
    const PositionLevel* worst = nullptr;
    double least = 0;
    for (const PositionLevel& p : f.positions) {
        const auto after = a.after_V.find(p.name);
        if (after == a.after_V.end()) continue;
        const double margin =
            (p.window_V.half_V() - std::abs(after->second - p.window_V.middle_V())) / p.window_V.half_V();
        if (worst && margin >= least) continue;
        worst = &p;
        least = margin;
    }
    if (!worst || !a.shift_V) return "Wanted, but not every position was measured.";
    const double left_V = a.after_V.at(worst->name);
    const std::vector<Argument> figures{volts(std::abs(*a.shift_V)), byName(worst->name), volts(left_V),
                                        plain(worst->window_V.min_V, 2), volts(worst->window_V.max_V)};
    if (least <= 0)
        return {"Wanted, but no turn does it: the best, by %1 at rest, would leave %2 at %3, outside %4 to %5.",
                figures};
    return {
        "Wanted, but no turn does it: the best, by %1 at rest, would leave %2 at %3, too near a limit of %4 to %5.",
        figures};
}

} // namespace

Section levelsSection(const Findings& f, const Sheet& sheet) {
    Section s{"Levels", {}};
    if (f.reference)
        s.lines.push_back(wireLine(
            *f.reference, {"Reference: %1, good to %2; limits %3 to %4: %5.",
                           {volts(f.reference->level_V, 3), within(f.reference->u_V), plain(sheet.reference.min_V, 2),
                            volts(sheet.reference.max_V), nameOf(f.reference->conformance)}}));
    else
        s.lines.push_back({"Reference: not measured."});
    if (f.ground)
        s.lines.push_back(wireLine(*f.ground, {"Ground: %1, good to %2; at most %3: %4.",
                                               {volts(f.ground->level_V, 3), within(f.ground->u_V),
                                                volts(sheet.maxDrop_V), nameOf(f.ground->conformance)}}));
    else
        s.lines.push_back({"Ground: not measured."});
    for (const PositionLevel& p : f.positions) s.lines.push_back(positionLine(p, f.adjustment.turns > 0));
    return s;
}

Section adjustmentSection(const Findings& f, const Sheet& sheet) {
    const AdjustmentAdvice& a = f.adjustment;
    Section s{"Adjustment", {}};
    if (!a.wanted) return s;
    if (!a.feasible || !a.shift_V) {
        s.lines.push_back({whyNoTurn(f, sheet)});
        return s;
    }
    for (const PositionLevel& p : f.positions) {
        const auto aim = a.targetRaw_V.find(p.name), after = a.after_V.find(p.name);
        if (aim == a.targetRaw_V.end() || after == a.after_V.end()) continue;
        s.lines.push_back({{"Aim at %1 on the meter for \"%2\", which makes %3 at the nominal reference.",
                            {volts(aim->second), byName(p.name), volts(after->second)}}});
    }
    if (a.voltsPerTurn_V)
        s.lines.push_back({{"One part-turn moved it by about %1; part-turns made: %2.",
                            {volts(*a.voltsPerTurn_V, 3), std::to_string(a.turns)}}});
    return s;
}

} // namespace stillwire
