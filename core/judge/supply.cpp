// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/supply.hpp"

#include "core/stats/exact.hpp"
#include "core/stats/robust.hpp"

#include <algorithm>

namespace stillwire {

namespace {

constexpr double kLeastSpan = 0.1; // of the nominal: a ratio to less than this means nothing

// Several stays on one wire: their median, the widest noise, all readings together.
std::optional<WireLevel> wireLevel(const LevelEvidence& evidence, const std::vector<Plateau>& stays, Wire wire,
                                   const MeterTraits& meter, Settled& out) {
    std::vector<double> levels;
    WireLevel level;
    double noise_V = 0, readings = 0;
    for (const Plateau& stay : stays) {
        if (stay.place.wire != wire || stay.place.poseIndex >= 0) continue;
        if (evidence.timeline->undone(stay.place.stepVisit)) continue;
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
    level.lowestVisit_V = *std::min_element(levels.begin(), levels.end());
    level.highestVisit_V = *std::max_element(levels.begin(), levels.end());
    out = {level.level_V, noise_V, readings};
    level.u_V = absoluteUncertainty_V(meter, out);
    return level;
}

} // namespace

Settled settledOf(const Plateau& plateau) {
    return {plateau.level_V, plateau.noise_V, static_cast<double>(plateau.readings)};
}

Supply weighSupply(const LevelEvidence& evidence, const std::vector<Plateau>& stays, Levels& levels) {
    const Sheet& sheet = *evidence.sheet;
    Supply supply = assumedSupply(sheet, evidence.blackOnSensorGround);
    Settled seen;
    levels.reference = wireLevel(evidence, stays, Wire::reference, *evidence.meter, seen);
    if (!levels.reference && evidence.secondReference != nullptr && !evidence.secondReference->empty()) {
        levels.reference =
            wireLevel(evidence, *evidence.secondReference, Wire::reference, *evidence.referenceMeter, seen);
        supply.referenceMeter = evidence.referenceMeter;
    }
    if (levels.reference) {
        WireLevel& r = *levels.reference;
        // Of the worst visit: a reference that was good once is not good.
        const auto inside = [&](double level_V) {
            return probabilityInside(level_V, r.u_V, sheet.reference.min_V, sheet.reference.max_V);
        };
        r.worst_V = inside(r.lowestVisit_V) < inside(r.highestVisit_V) ? r.lowestVisit_V : r.highestVisit_V;
        r.probabilityInside = inside(r.worst_V);
        r.conformance = conformanceOf(r.probabilityInside);
        supply.reference = seen;
        supply.referenceMeasured = true;
        supply.referenceChange_V = r.change_V;
    }
    levels.ground = wireLevel(evidence, stays, Wire::ground, *evidence.meter, seen);
    if (levels.ground) {
        WireLevel& g = *levels.ground;
        g.worst_V = g.highestVisit_V;
        g.probabilityInside = normalCdf((sheet.maxDrop_V - g.worst_V) / g.u_V);
        g.conformance = conformanceOf(g.probabilityInside);
        // With the black lead on the sensor's own ground the drop is in neither reading.
        if (!evidence.blackOnSensorGround) {
            supply.ground = seen;
            supply.groundMeasured = true;
        }
    }
    if (supply.reference.level_V - supply.ground.level_V < kLeastSpan * sheet.nominal_V) {
        // A dead reference or a ground up at the reference: a ratio to them would mean nothing.
        const Supply plain = assumedSupply(sheet, evidence.blackOnSensorGround);
        supply.reference = plain.reference;
        supply.uReference_V = plain.uReference_V;
        supply.referenceMeasured = false;
        supply.referenceMeter = nullptr;
        supply.ground = plain.ground;
        supply.uGround_V = plain.uGround_V;
        supply.groundMeasured = false;
    }
    return supply;
}

} // namespace stillwire
