// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/adjustment.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace stillwire {

namespace {

constexpr double kLeastShare = 0.5; // of an end that no turn has taught about; common practice, no source
constexpr double kRoundOff_V = 1e-9;
constexpr double kMostDoubt = 0.2;        // of the allowance: more uncertainty than this does not excuse a level
constexpr double kLeastLearning_V = 0.02; // a smaller movement of the rest level teaches nothing of the shares

double smallestMargin(const std::vector<ShiftDemand>& demands, double shift_V) {
    double least = 1e9;
    for (const ShiftDemand& demand : demands) least = std::min(least, demand.margin(shift_V));
    return least;
}

// Levels by position at each count of turns, nominal.
using TurnHistory = std::map<double, std::map<int, double>>;

// What turns have shown while the mount was loose, and after it was tightened: a stay after tightening lies elsewhere
// for another reason than a turn.
struct Lessons {
    TurnHistory loose, tight;
};

Lessons lessonsOf(const AdjustmentEvidence& evidence) {
    const Sheet& sheet = *evidence.sheet;
    const Supply& supply = evidence.levels->supply;
    Lessons lessons;
    for (const Plateau& stay : *evidence.stays) {
        if (stay.place.wire != Wire::signal || stay.place.position < 0 || stay.place.poseIndex >= 0) continue;
        const double span = supply.reference.level_V - supply.ground.level_V;
        const double level_V = (stay.level_V - supply.ground.level_V) * sheet.nominal_V / span;
        const bool turned = stay.place.turnCount > 0;
        const bool adjusting = stay.place.step == Step::adjust;
        if (!turned || adjusting) lessons.loose[stay.place.turns][stay.place.position] = level_V;
        if (!turned || !adjusting) lessons.tight[stay.place.turns][stay.place.position] = level_V;
    }
    return lessons;
}

// The history that has more turns at which all these positions are known; the loose one of equals.
const TurnHistory& betterOf(const Lessons& lessons, const std::vector<int>& positions) {
    const auto turns = [&](const TurnHistory& history) {
        return std::count_if(history.begin(), history.end(), [&](const auto& at) {
            return std::all_of(positions.begin(), positions.end(), [&](int p) { return at.second.count(p) > 0; });
        });
    };
    return turns(lessons.loose) >= turns(lessons.tight) ? lessons.loose : lessons.tight;
}

// How much each end moves when the rest level moves by one, from the first and the last turns at which both are
// known.
void learnShares(const Lessons& lessons, int rest, const Sheet& sheet, AdjustmentAdvice& advice) {
    for (std::size_t i = 0; i < sheet.positions.size(); ++i) {
        const TurnHistory& history = betterOf(lessons, {rest, static_cast<int>(i)});
        double share = 1;
        double widest = kLeastLearning_V;
        for (auto a = history.begin(); a != history.end(); ++a) {
            for (auto b = std::next(a); b != history.end(); ++b) {
                const int end = static_cast<int>(i);
                if (!a->second.count(rest) || !b->second.count(rest) || !a->second.count(end) ||
                    !b->second.count(end))
                    continue;
                const double moved = b->second.at(rest) - a->second.at(rest);
                if (std::abs(moved) < widest) continue;
                widest = std::abs(moved);
                share = (b->second.at(end) - a->second.at(end)) / moved;
            }
        }
        advice.share[sheet.positions[i].name] = share;
    }
}

std::vector<ShiftDemand> demandsOf(const Levels& levels, const std::map<std::string, double>& share) {
    std::vector<ShiftDemand> demands;
    for (const PositionLevel& position : levels.positions) {
        if (!position.level_V) continue;
        demands.push_back({*position.level_V, share.at(position.name), position.window_V});
        if (position.coldLevel_V)
            demands.push_back({*position.coldLevel_V, share.at(position.name), position.window_V});
    }
    return demands;
}

// How far from a limit is far enough. In a window too narrow for the allowance, half way to the limit is as good as
// it gets.
double enough_V(const Sheet& sheet, const Window& window) {
    return std::min(sheet.driftAllowance_V.value_or(0), 0.5 * window.half_V());
}

// Is there a shift that brings each of them so far from its limits? With shares that are a guess, a level that may as
// well lie at the allowance does not speak against it.
bool somewhereFarEnough(const Sheet& sheet, const std::vector<ShiftDemand>& demands) {
    double least_V = -1e9, most_V = 1e9;
    for (const ShiftDemand& d : demands) {
        const double off_V = (1 - kMostDoubt) * enough_V(sheet, d.window);
        const double a = (d.window.min_V + off_V - d.level_V) / d.share;
        const double b = (d.window.max_V - off_V - d.level_V) / d.share;
        least_V = std::max(least_V, std::min(a, b));
        most_V = std::min(most_V, std::max(a, b));
    }
    return least_V <= most_V + kRoundOff_V;
}

// Outside, undecided, or nearer to a limit than the allowance. Against an assumed reference, or one that wanders,
// only what lies outside as it stands counts: what is merely uncertain then wants the reference measured, not the
// sensor turned.
bool wantsAdjustment(const Sheet& sheet, const Levels& levels, const PositionLevel& position) {
    const Window& window = position.window_V;
    if (!levels.supply.steady())
        return !window.contains(*position.level_V) ||
               (position.coldLevel_V && !window.contains(*position.coldLevel_V));
    if (position.conformance != Conformance::inside) return true;
    const double wanted_V = enough_V(sheet, window);
    return std::any_of(position.visits.begin(), position.visits.end(), [&](const Visit& visit) {
        // A level that may as well lie at the allowance is left alone.
        const double doubt_V = std::min(visit.u_V, kMostDoubt * wanted_V);
        return !visit.standsApart() &&
               std::min(visit.level_V - window.min_V, window.max_V - visit.level_V) < wanted_V - doubt_V;
    });
}

} // namespace

double ShiftDemand::margin(double shift_V) const {
    return (window.half_V() - std::abs(level_V + share * shift_V - window.middle_V())) / window.half_V();
}

double bestShift_V(const std::vector<ShiftDemand>& demands) {
    // Each margin is the lower of two straight lines in the shift; a concave maximum lies where two lines cross.
    struct Straight {
        double at0, slope;
    };
    std::vector<Straight> lines;
    for (const ShiftDemand& d : demands) {
        const double half = d.window.half_V();
        lines.push_back({(d.window.max_V - d.level_V) / half, -d.share / half});
        lines.push_back({(d.level_V - d.window.min_V) / half, d.share / half});
    }
    double best = 0, bestMargin = smallestMargin(demands, 0);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        for (std::size_t j = i + 1; j < lines.size(); ++j) {
            const double slope = lines[i].slope - lines[j].slope;
            if (std::abs(slope) < 1e-12) continue;
            const double shift = (lines[j].at0 - lines[i].at0) / slope;
            const double margin = smallestMargin(demands, shift);
            if (margin > bestMargin + 1e-12) {
                bestMargin = margin;
                best = shift;
            }
        }
    }
    return best;
}

std::optional<TurnSlope> turnSlope(const std::vector<double>& turns, const std::vector<double>& level_V,
                                   double uLevel_V) {
    const auto n = static_cast<double>(turns.size());
    if (turns.size() < 3) return std::nullopt; // two turns or more
    double meanTurn = 0, meanLevel = 0;
    for (std::size_t i = 0; i < turns.size(); ++i) {
        meanTurn += turns[i] / n;
        meanLevel += level_V[i] / n;
    }
    double sxx = 0, sxy = 0;
    for (std::size_t i = 0; i < turns.size(); ++i) {
        sxx += (turns[i] - meanTurn) * (turns[i] - meanTurn);
        sxy += (turns[i] - meanTurn) * (level_V[i] - meanLevel);
    }
    if (sxx <= 0) return std::nullopt;
    TurnSlope slope;
    slope.voltsPerTurn_V = sxy / sxx;
    double residual = 0;
    for (std::size_t i = 0; i < turns.size(); ++i)
        residual += std::pow(level_V[i] - meanLevel - slope.voltsPerTurn_V * (turns[i] - meanTurn), 2);
    const double scatter_V = std::max(uLevel_V, std::sqrt(residual / std::max(1.0, n - 2)));
    slope.u_V = scatter_V / std::sqrt(sxx);
    return slope;
}

AdjustmentAdvice adviseAdjustment(const AdjustmentEvidence& evidence) {
    const Sheet& sheet = *evidence.sheet;
    const Levels& levels = *evidence.levels;
    const int rest = static_cast<int>(&sheet.rest() - sheet.positions.data());
    AdjustmentAdvice advice;
    const Lessons lessons = lessonsOf(evidence);
    learnShares(lessons, rest, sheet, advice);
    const TurnHistory& history = betterOf(lessons, {rest});
    std::vector<double> turns, restLevels;
    for (const auto& [turn, byPosition] : history) {
        if (!byPosition.count(rest)) continue;
        turns.push_back(turn);
        restLevels.push_back(byPosition.at(rest));
    }
    advice.turns = turns.empty() ? 0 : static_cast<int>(turns.size()) - 1;
    const double u_V = levels.positions[static_cast<std::size_t>(rest)].u_V.value_or(0);
    if (const std::optional<TurnSlope> slope = turnSlope(turns, restLevels, u_V)) {
        advice.voltsPerTurn_V = slope->voltsPerTurn_V;
        advice.uVoltsPerTurn_V = slope->u_V;
    }

    std::vector<ShiftDemand> demands = demandsOf(levels, advice.share);
    for (const PositionLevel& position : levels.positions)
        if (position.level_V && wantsAdjustment(sheet, levels, position)) advice.wanted = true;
    if (demands.empty()) return advice;
    double shift_V = bestShift_V(demands);
    // Feasible, unless the levels it leads to would want the sensor turned again.
    bool wouldDo = std::all_of(demands.begin(), demands.end(), [&](const ShiftDemand& d) {
        return d.margin(shift_V) * d.window.half_V() > enough_V(sheet, d.window) - kRoundOff_V;
    });
    if (!wouldDo && history.size() < 2) {
        // Nobody has turned it yet, and the ends need not move alike: one that would go too far gets the benefit of
        // the doubt. The figures are those of equal shares as long as these bring every end inside.
        std::map<std::string, double> lazy = advice.share;
        for (auto& [name, share] : lazy)
            if (name != sheet.rest().name) share = kLeastShare;
        const std::vector<ShiftDemand> other = demandsOf(levels, lazy);
        const double otherShift_V = bestShift_V(other);
        wouldDo = somewhereFarEnough(sheet, other);
        if (smallestMargin(demands, shift_V) <= 0 && smallestMargin(other, otherShift_V) > 0) {
            shift_V = otherShift_V;
            demands = other;
            advice.share = lazy;
            advice.sharesAssumed = wouldDo = true; // turns will tell
        }
    }
    advice.shift_V = shift_V;
    advice.margin = smallestMargin(demands, shift_V);
    for (const PositionLevel& position : levels.positions) {
        if (!position.level_V) continue;
        const double after_V = *position.level_V + advice.share.at(position.name) * shift_V;
        advice.after_V[position.name] = after_V;
        advice.targetRaw_V[position.name] = shownFor_V(sheet, levels.supply, after_V);
    }
    advice.feasible = sheet.driftAllowance_V.has_value() && *advice.margin > 0 && wouldDo;
    return advice;
}

} // namespace stillwire
