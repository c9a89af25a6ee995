// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/levels.hpp"

#include "core/stats/exact.hpp"
#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

Settled settled(const Plateau& plateau) {
    return {plateau.level_V, plateau.noise_V, static_cast<double>(plateau.readings)};
}

// Several stays on one wire: their median, the widest noise, all readings together.
std::optional<WireLevel> wireLevel(const LevelEvidence& evidence, const std::vector<Plateau>& stays, Wire wire,
                                   Settled& out) {
    std::vector<double> levels;
    WireLevel level;
    double noise_V = 0, readings = 0;
    for (const Plateau& stay : stays) {
        if (stay.place.wire != wire || stay.place.poseIndex >= 0) continue;
        if (evidence.places->undone(stay.place.stepVisit)) continue;
        if (levels.empty()) level.lowest_V = level.highest_V = stay.level_V;
        level.lowest_V = std::min(level.lowest_V, stay.lowest_V);
        level.highest_V = std::max(level.highest_V, stay.highest_V);
        levels.push_back(stay.level_V);
        noise_V = std::max(noise_V, stay.noise_V);
        readings += static_cast<double>(stay.readings);
    }
    if (levels.empty()) return std::nullopt;
    level.visits = static_cast<int>(levels.size());
    level.change_V =
        *std::max_element(levels.begin(), levels.end()) - *std::min_element(levels.begin(), levels.end());
    level.level_V = medianOf(levels);
    out = {level.level_V, noise_V, readings};
    level.u_V = absoluteUncertainty_V(*evidence.meter, out);
    return level;
}

Supply weighSupply(const LevelEvidence& evidence, const std::vector<Plateau>& stays, Levels& levels) {
    const Sheet& sheet = *evidence.sheet;
    Supply supply = assumedSupply(sheet, evidence.blackOnSensorGround);
    Settled seen;
    levels.reference = wireLevel(evidence, stays, Wire::reference, seen);
    if (!levels.reference && evidence.secondReference) {
        levels.reference = wireLevel(evidence, {*evidence.secondReference}, Wire::reference, seen);
    }
    if (levels.reference) {
        WireLevel& r = *levels.reference;
        r.probabilityInside = probabilityInside(r.level_V, r.u_V, sheet.reference.min_V, sheet.reference.max_V);
        r.conformance = conformanceOf(r.probabilityInside);
        supply.reference = seen;
        supply.referenceMeasured = true;
        supply.referenceChange_V = r.change_V;
    }
    levels.ground = wireLevel(evidence, stays, Wire::ground, seen);
    if (levels.ground) {
        WireLevel& g = *levels.ground;
        g.probabilityInside = normalCdf((sheet.maxDrop_V - g.level_V) / g.u_V);
        g.conformance = conformanceOf(g.probabilityInside);
        // With the black lead on the sensor's own ground the drop is in neither reading.
        if (!evidence.blackOnSensorGround) {
            supply.ground = seen;
            supply.groundMeasured = true;
        }
    }
    if (supply.reference.level_V - supply.ground.level_V < 0.1 * sheet.nominal_V) {
        // A dead reference or a ground up at the reference: a ratio to them would mean nothing.
        const Supply plain = assumedSupply(sheet, evidence.blackOnSensorGround);
        supply.reference = plain.reference;
        supply.uReference_V = plain.uReference_V;
        supply.referenceMeasured = false;
        supply.ground = plain.ground;
        supply.uGround_V = plain.uGround_V;
        supply.groundMeasured = false;
    }
    return supply;
}

bool isVisit(const Plateau& stay, const PlaceBook& places) {
    const Place& place = stay.place;
    if (place.wire != Wire::signal || place.position < 0 || place.poseIndex >= 0) return false;
    if (places.undone(place.stepVisit)) return false;
    if (!place.step) return true;
    return *place.step != Step::wiggleShaft && *place.step != Step::wiggleHarness;
}

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

void findHangs(const Sheet& sheet, std::size_t rest, PositionLevel& position, const std::vector<bool>& returned,
               double noise_V, double resolution_V, Levels& levels) {
    const double limit_V = std::max({sheet.play_V, 6 * noise_V, 3 * resolution_V});
    std::vector<double> back;
    for (std::size_t i = 0; i < position.visits.size(); ++i)
        if (returned[i]) back.push_back(position.visits[i].level_V);
    if (back.size() < 2) return;
    // The visits that came back furthest are the good ones; with the rest at one end of travel that is one extreme.
    double good_V = back.front();
    for (const double level_V : back)
        if (towardsPressed(sheet, rest, level_V, good_V) > 0 && towardsPressed(sheet, rest, good_V, level_V) <= 0)
            good_V = level_V;
    const bool between = rest > 0 && rest + 1 < sheet.positions.size();
    if (between) good_V = medianOf(back);
    std::vector<double> goods, hangs;
    for (std::size_t i = 0; i < position.visits.size(); ++i) {
        if (!returned[i]) continue;
        const bool hang = towardsPressed(sheet, rest, good_V, position.visits[i].level_V) > limit_V;
        position.visits[i].hang = hang;
        (hang ? hangs : goods).push_back(position.visits[i].level_V);
    }
    levels.hangs = static_cast<int>(hangs.size());
    if (!hangs.empty()) {
        levels.hangLevel_V = medianOf(hangs);
        levels.goodRest_V = medianOf(goods);
    }
}

void judgePosition(const Sheet& sheet, const MeterTraits& meter, const Supply& supply, PositionLevel& position,
                   const std::vector<Settled>& raw, const std::optional<Settled>& cold) {
    std::vector<double> levels, raws;
    double worst = 2;
    const auto weigh = [&](double level_V, double u_V) {
        worst = std::min(worst, probabilityInside(level_V, u_V, position.window_V.min_V, position.window_V.max_V));
    };
    for (const Visit& visit : position.visits) {
        if (visit.hang) continue;
        levels.push_back(visit.level_V);
        raws.push_back(visit.raw_V);
        weigh(visit.level_V, visit.u_V);
    }
    if (levels.empty()) return;
    position.level_V = medianOf(levels);
    position.raw_V = medianOf(raws);
    Settled middle = raw.front();
    middle.level_V = *position.raw_V;
    for (const Settled& s : raw) middle.noise_V = std::max(middle.noise_V, s.noise_V);
    position.u_V = ratiometricLevel(sheet, meter, supply, middle).u_V;
    position.spread_V =
        *std::max_element(levels.begin(), levels.end()) - *std::min_element(levels.begin(), levels.end());
    if (cold) {
        const Level level = ratiometricLevel(sheet, meter, supply, *cold);
        position.coldLevel_V = level.level_V;
        weigh(level.level_V, level.u_V);
    }
    position.probabilityInside = worst;
    position.conformance = conformanceOf(worst);
}

} // namespace

Conformance conformanceOf(double probability) {
    if (probability >= kSureInside) return Conformance::inside;
    return probability <= kSureOutside ? Conformance::outside : Conformance::undecided;
}

std::vector<Plateau> settledStays(const std::vector<Plateau>& plateaus) {
    std::vector<Plateau> stays;
    for (std::size_t begin = 0; begin < plateaus.size();) {
        const Place& place = plateaus[begin].place;
        std::size_t end = begin;
        const Plateau* best = nullptr;
        bool anyMoved = false;
        while (end < plateaus.size() && plateaus[end].place.from == place.from &&
               plateaus[end].place.stepVisit == place.stepVisit && plateaus[end].place.position == place.position)
            anyMoved = anyMoved || (plateaus[end].moved && plateaus[end].readings >= 2), ++end;
        for (std::size_t i = begin; i < end; ++i) {
            const Plateau& plateau = plateaus[i];
            if (plateau.readings < 2) continue;
            if (place.moveAsked && anyMoved && !plateau.moved) continue; // the hand had not moved yet
            if (!best || plateau.readings >= best->readings) best = &plateau;
        }
        if (best) stays.push_back(*best);
        begin = end;
    }
    return stays;
}

Levels weighLevels(const LevelEvidence& evidence) {
    const Sheet& sheet = *evidence.sheet;
    const MeterTraits& meter = *evidence.meter;
    const std::vector<Plateau> stays = settledStays(*evidence.plateaus);
    Levels levels;
    levels.supply = weighSupply(evidence, stays, levels);
    const std::size_t rest = static_cast<std::size_t>(&sheet.rest() - sheet.positions.data());

    double turnsDone = 0;
    int turnCount = 0;
    for (const Plateau& stay : stays) {
        turnCount = std::max(turnCount, stay.place.turnCount);
        turnsDone = stay.place.turns;
    }
    levels.adjusted = turnCount > 0;
    (void)turnsDone;

    std::vector<std::vector<Settled>> raw(sheet.positions.size());
    std::vector<std::optional<Settled>> cold(sheet.positions.size());
    std::vector<double> coldDelta_V(sheet.positions.size(), 0);
    std::vector<bool> returned;
    std::vector<bool> confirmed(sheet.positions.size(), false);
    double noise_V = 0;
    int previous = -1;
    for (const Position& position : sheet.positions) {
        PositionLevel level;
        level.name = position.name;
        level.window_V = position.window;
        levels.positions.push_back(std::move(level));
    }
    for (const Plateau& stay : stays) {
        if (!isVisit(stay, *evidence.places)) continue;
        const auto index = static_cast<std::size_t>(stay.place.position);
        const bool cameBack = index == rest && previous >= 0 && static_cast<std::size_t>(previous) != rest;
        previous = stay.place.position;
        const bool warm = stay.place.warm || stay.place.step == Step::confirm || stay.place.step == Step::adjust;
        if (!cold[index] && !warm) cold[index] = Settled{stay.early_V, stay.noise_V, 10};
        // After turning, what was before is history; only the cold level is carried along, moved as the rest moved.
        if (stay.place.turnCount < turnCount) {
            // From the last level before the first turn: each turn since has moved the cold one too.
            if (stay.place.turnCount == 0) coldDelta_V[index] = stay.level_V;
            continue;
        }
        if (turnCount > 0 && stay.place.step == Step::confirm) confirmed[index] = true;
        const Settled seen = settled(stay);
        const Level level = ratiometricLevel(sheet, meter, levels.supply, seen);
        Visit visit;
        visit.from = stay.from;
        visit.to = stay.to;
        visit.raw_V = stay.level_V;
        visit.level_V = level.level_V;
        visit.u_V = level.u_V;
        visit.readings = static_cast<int>(stay.readings);
        visit.step = stay.place.step;
        levels.positions[index].visits.push_back(visit);
        raw[index].push_back(seen);
        if (index == rest) {
            returned.push_back(cameBack);
            noise_V = std::max(noise_V, stay.noise_V);
            if (cameBack) ++levels.releases;
        }
    }
    levels.confirmed = std::all_of(confirmed.begin(), confirmed.end(), [](bool b) { return b; });
    findHangs(sheet, rest, levels.positions[rest], returned, noise_V, meter.rangeFor(0).resolution_V, levels);
    for (std::size_t i = 0; i < levels.positions.size(); ++i) {
        if (raw[i].empty()) continue;
        if (turnCount > 0 && cold[i] && coldDelta_V[i] != 0) {
            std::vector<double> now;
            for (const Settled& s : raw[i]) now.push_back(s.level_V);
            cold[i]->level_V += medianOf(now) - coldDelta_V[i];
        }
        judgePosition(sheet, meter, levels.supply, levels.positions[i], raw[i], cold[i]);
    }
    return levels;
}

} // namespace stillwire
