// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/case_facts.hpp"

#include "core/judge/adjustment.hpp"
#include "core/judge/phrases.hpp"
#include "core/judge/telling_stays.hpp"
#include "core/judge/within.hpp"
#include "core/stats/exact.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kSignificant = 0.05;
constexpr double kLeaning = 0.15; // against a side with but one short dropout
constexpr double kLeastTurn_V = 0.01;
constexpr double kStuckShare = 0.10;                      // of the sheet's span: less movement than this is none
constexpr double kLoadedLeast = 0.70, kLoadedMost = 0.90; // of its aim, what a load leaves. Own rule, no source
constexpr double kAlike = 0.06;                           // the positions' shares differ by no more
constexpr double kLowLeast = 0.02, kLowAlike = 0.3;       // a smaller share is drift; spread, of the share
constexpr double kNearlySame = 0.5;                       // of the low end's way up, at the high end
constexpr double kGroundLeast_V = 0.1;
constexpr double kSameWire_V = 0.02; // two readings of one wire differ by no more

// Where the meter left its range, the other side may have failed as well.
bool moreOften(const ShakenTally& a, const ShakenTally& b, int chosenFrom = 1) {
    const double sure = b.decides || b.offScale > 1 ? kSignificant : kLeaning;
    const int poses = b.poses + b.offScale;
    return poses > 0 &&
           chosenFrom * greaterRateTest(a.faultPoses, std::max(1, a.poses), b.suspectPoses, poses) < sure;
}

bool clean(const ShakenTally& tally) { return !tally.any && tally.offScale == 0; }
// One is none, once it has been answered.
bool answered(const ShakenTally& tally, bool stillAsked) {
    return seenOnce(tally) && tally.offScale == 0 && !stillAsked;
}

// Every end, and more than once: one visit is none.
bool allMeasured(const Case& c) {
    return std::all_of(c.findings->positions.begin(), c.findings->positions.end(),
                       [&](const PositionLevel& p) { return p.level_V && p.agreed; });
}

// The reference was measured, and neither wire is bad where it was.
bool wiresGood(const Case& c) {
    const std::optional<WireLevel>&r = c.findings->reference, &g = c.findings->ground;
    return r && r->conformance != Conformance::outside && (!g || g->conformance != Conformance::outside);
}

// A resistance is there in every visit; what differs from one to the next is the arm.
bool repeats(const Case& c) {
    return std::all_of(c.findings->positions.begin(), c.findings->positions.end(),
                       [&](const PositionLevel& p) { return p.spread_V.value_or(0) <= c.sheet->play_V; });
}

} // namespace

bool seenOnce(const ShakenTally& tally) { return tally.any && !tally.decides; }

bool doneSince(const Case& c, Step step, Time since) {
    const std::vector<StepVisit>& all = c.timeline->stepVisits();
    return std::any_of(all.begin(), all.end(), [&](const StepVisit& visit) {
        return visit.step == step && !visit.undone && visit.closed && visit.from > since;
    });
}

bool movesUntouched(const Case& c) {
    return c.untouched.any && (c.untouched.decides || !doneSince(c, Step::coldStart, c.untouched.newest));
}

// Does the signal stay at a rail wherever the pedal is put?
bool stuck(const Case& c, bool high) {
    int measured = 0;
    double low_V = 1e9, high_V = -1e9;
    for (const PositionLevel& position : c.findings->positions) {
        if (!position.raw_V) continue;
        ++measured;
        low_V = std::min(low_V, *position.raw_V);
        high_V = std::max(high_V, *position.raw_V);
    }
    if (measured < 2 || high_V - low_V > kStuckShare * c.sheet->span_V()) return false;
    return high ? low_V >= (1 - kRailShare) * c.levels->supply.reference.level_V
                : readsNothing(Wire::signal, high_V, *c.sheet);
}

// Would the levels fit if the cold one were left out? Then it is the temperature, not the span.
bool onlyColdIsOff(const Case& c) {
    std::vector<ShiftDemand> demands;
    bool cold = false;
    for (const PositionLevel& p : c.findings->positions) {
        if (!p.level_V) continue;
        demands.push_back({*p.level_V, c.findings->adjustment.share.at(p.name), p.window_V});
        cold = cold || (p.coldLevel_V && std::abs(*p.coldLevel_V - *p.level_V) > c.sheet->play_V);
    }
    if (!cold || demands.empty()) return false;
    const double shift_V = c.sheet->driftAllowance_V ? bestShift_V(demands) : 0.0;
    return std::all_of(demands.begin(), demands.end(), [&](const ShiftDemand& d) { return d.margin(shift_V) > 0; });
}

bool spanOff(const Case& c) {
    const AdjustmentAdvice& a = c.findings->adjustment;
    if (!allMeasured(c) || !a.wanted || a.feasible || onlyColdIsOff(c) || movesUntouched(c)) return false;
    // Without an adjustable mount, or a steady reference, a level that is merely undecided is no linkage fault.
    const bool sure = c.levels->supply.steady() && c.sheet->driftAllowance_V.has_value();
    return sure || misplaced(c);
}

std::optional<double> lowAlike(const Case& c) {
    if (!wiresGood(c)) return std::nullopt;
    double least = 1, most = 0;
    bool anyOutside = false;
    for (std::size_t i = 0; i < c.findings->positions.size(); ++i) {
        const PositionLevel& p = c.findings->positions[i];
        if (!p.level_V) return std::nullopt;
        const double kept = *p.level_V / c.sheet->positions[i].aim_V;
        least = std::min(least, kept);
        most = std::max(most, kept);
        anyOutside = anyOutside || p.conformance == Conformance::outside;
    }
    if (!anyOutside || least < kLoadedLeast || most > kLoadedMost || most - least > kAlike) return std::nullopt;
    return 1 - (least + most) / 2;
}

std::optional<double> lowShare(const Case& c) {
    if (!allMeasured(c) || !wiresGood(c) || !repeats(c)) return std::nullopt;
    double least = 1, most = 0;
    for (std::size_t i = 0; i < c.findings->positions.size(); ++i) {
        const double low = 1 - *c.findings->positions[i].level_V / c.sheet->positions[i].aim_V;
        least = std::min(least, low);
        most = std::max(most, low);
    }
    if (least < kLowLeast || most - least > kLowAlike * least) return std::nullopt;
    return (least + most) / 2;
}

std::optional<double> groundSide_V(const Case& c) {
    if (!allMeasured(c) || !wiresGood(c) || !repeats(c)) return std::nullopt;
    const std::vector<Position>& sheet = c.sheet->positions;
    const auto up_V = [&](std::size_t i) { return *c.findings->positions[i].level_V - sheet[i].aim_V; };
    const auto byAim = [](const Position& a, const Position& b) { return a.aim_V < b.aim_V; };
    const auto low = static_cast<std::size_t>(std::min_element(sheet.begin(), sheet.end(), byAim) - sheet.begin());
    const auto high = static_cast<std::size_t>(std::max_element(sheet.begin(), sheet.end(), byAim) - sheet.begin());
    const double ground_V = up_V(low) / (1 - sheet[low].aim_V / c.sheet->nominal_V);
    if (ground_V < kGroundLeast_V || std::abs(up_V(high)) > kNearlySame * up_V(low)) return std::nullopt;
    return ground_V;
}

bool misplaced(const Case& c) {
    return std::any_of(c.findings->positions.begin(), c.findings->positions.end(),
                       [](const PositionLevel& p) { return p.conformance == Conformance::outside; });
}

const PositionLevel& worstPosition(const Case& c) {
    const std::vector<PositionLevel>& all = c.findings->positions;
    return *std::min_element(all.begin(), all.end(), [](const PositionLevel& a, const PositionLevel& b) {
        return a.probabilityInside.value_or(2) < b.probabilityInside.value_or(2);
    });
}

// The stay furthest out of (or nearest to leaving) its window, hangs left out: what the conformance speaks of.
double worstLevel_V(const PositionLevel& p) {
    const auto margin = [&](double v) { return std::min(v - p.window_V.min_V, p.window_V.max_V - v); };
    double worst_V = *p.level_V;
    for (const Visit& visit : p.visits)
        if (!visit.standsApart() && margin(visit.level_V) < margin(worst_V)) worst_V = visit.level_V;
    if (p.coldLevel_V && margin(*p.coldLevel_V) < margin(worst_V)) worst_V = *p.coldLevel_V;
    return worst_V;
}

Sentence leftItsRange(int poses, Wiggled shaken) {
    return shaken == Wiggled::shaft
               ? Sentence{"The meter changed its range in %1 of the shaft, where the level should have stood still.",
                          {countedPoses(poses)}}
               : Sentence{
                     "The meter changed its range in %1 of the harness, where the level should have stood still.",
                     {countedPoses(poses)}};
}

Sentence tooCloseToCall(const PositionLevel& p) {
    const double level_V = worstLevel_V(p);
    const double limit_V = level_V > p.window_V.middle_V() ? p.window_V.max_V : p.window_V.min_V;
    return {"%1 %2, good to %3: too close to the %4 limit to call.",
            {byName(p.name), levelTo(level_V, *p.u_V), within(*p.u_V), volts(limit_V)}};
}

bool bySection(const Case& c) {
    const std::vector<StepCoverage>& all = c.findings->steps;
    return std::any_of(all.begin(), all.end(), [](const StepCoverage& one) { return !one.section.empty(); });
}

bool stillWanted(const Case& c, Step step, const std::string& section) {
    const std::vector<StepCoverage>& all = c.findings->steps;
    return std::any_of(all.begin(), all.end(), [&](const StepCoverage& one) {
        return one.step == step && one.section == section && one.again + one.posesFor95.value_or(0) > 0;
    });
}

bool loneInASection(const Case& c) {
    const bool named = bySection(c);
    return std::any_of(c.sections.begin(), c.sections.end(), [&](const auto& one) {
        return seenOnce(one.second) && stillWanted(c, Step::wiggleHarness, named ? one.first : std::string());
    });
}

bool shaftDecides(const Case& c) {
    const bool silent = clean(c.harness) || answered(c.harness, loneInASection(c));
    return c.shaft.decides && (silent || moreOften(c.shaft, c.section));
}
bool harnessDecides(const Case& c) {
    const bool silent = clean(c.shaft) || answered(c.shaft, stillWanted(c, Step::wiggleShaft));
    return c.harness.decides && (silent || moreOften(c.section, c.shaft, c.shakenSections));
}

bool connectorTold(const Case& c) {
    return c.shaft.decides && c.held.poses > 0 && c.heldWanted == 0 && clean(c.held);
}

bool othersRuledOut(const Case& c) {
    const bool heldTells = c.held.poses == 0 || c.held.any || c.heldWanted == 0; // not in the capture: a condition
    return c.harnessEnough && heldTells;
}

bool someWireReadsNothing(const Case& c) {
    const std::optional<WireLevel>&r = c.findings->reference, &g = c.findings->ground;
    const double below_V = -std::max(kRailShare * c.sheet->nominal_V, c.sheet->maxDrop_V);
    if (r && readsNothing(Wire::reference, r->level_V, *c.sheet)) return true;
    if (g && (g->level_V < below_V || readsNothing(Wire::ground, g->level_V, *c.sheet))) return true;
    return stuck(c, false) || stuck(c, true);
}

bool leadOnSignal(const Case& c) {
    const auto readsIt = [&](const std::optional<WireLevel>& wire) {
        if (!wire || wire->conformance != Conformance::outside) return false;
        const std::vector<PositionLevel>& all = c.findings->positions;
        return std::any_of(all.begin(), all.end(), [&](const PositionLevel& p) {
            return p.raw_V &&
                   std::abs(*p.raw_V - wire->worst_V) <= std::max(kSameWire_V, 3 * c.findings->meter.resolution_V);
        });
    };
    return readsIt(c.findings->reference) || readsIt(c.findings->ground);
}

// A turn of less than a hundredth of a volt is none: what is uncertain there wants a better reading. A level that
// moves with nobody touching is not steady enough to be turned anywhere.
bool adjustable(const Case& c) {
    const AdjustmentAdvice& a = c.findings->adjustment;
    const bool sure = c.levels->supply.referenceMeasured || misplaced(c); // against an assumed one nothing is close
    return sure && allMeasured(c) && !movesUntouched(c) && a.wanted && a.feasible &&
           std::abs(a.shift_V.value_or(0)) >= kLeastTurn_V;
}

} // namespace stillwire
