// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/ratiometric.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillwire {

namespace {
const double kRectangular = std::sqrt(3.0);
double square(double v) { return v * v; }
double scatterOf(const Settled& settled) {
    return kMedianScatter * settled.noise_V / std::sqrt(std::max(1.0, settled.readings));
}
} // namespace

double independentUncertainty_V(const MeterTraits& meter, const Settled& settled) {
    const MeterRange& range = meter.rangeFor(settled.level_V);
    const double counts = range.accuracyCounts * range.resolution_V / kRectangular;
    return std::sqrt(square(counts) + square(range.resolution_V) / 12 + square(scatterOf(settled)));
}

double percentUncertainty_V(const MeterTraits& meter, double level_V) {
    return meter.rangeFor(level_V).accuracyPercent / 100 * std::abs(level_V) / kRectangular;
}

double absoluteUncertainty_V(const MeterTraits& meter, const Settled& settled) {
    const MeterRange& range = meter.rangeFor(settled.level_V);
    const double counts = range.accuracyCounts * range.resolution_V / kRectangular;
    const double scatter = scatterOf(settled);
    return std::sqrt(square(percentUncertainty_V(meter, settled.level_V) + counts) + square(range.resolution_V) / 12 +
                     square(scatter));
}

Supply assumedSupply(const Sheet& sheet, bool blackOnSensorGround) {
    Supply supply;
    supply.reference.level_V = sheet.nominal_V;
    supply.uReference_V = sheet.reference.half_V() / kRectangular;
    if (!blackOnSensorGround) {
        supply.ground.level_V = sheet.maxDrop_V / 2;
        supply.uGround_V = sheet.maxDrop_V / 2 / kRectangular;
    }
    return supply;
}

Level ratiometricLevel(const Sheet& sheet, const MeterTraits& meter, const Supply& supply, const Settled& raw) {
    const double R = supply.reference.level_V, G = supply.ground.level_V;
    const double span = R - G;
    const double x = (raw.level_V - G) / span;
    struct Term {
        double weight; // of this reading in x, times the span
        const Settled* settled;
        bool measured;
        double assumed_u_V;
        const MeterTraits* by;
    };
    const MeterTraits* second = supply.referenceMeter != nullptr ? supply.referenceMeter : &meter;
    std::array<Term, 3> terms{Term{1, &raw, true, 0, &meter},
                              Term{-x, &supply.reference, supply.referenceMeasured, supply.uReference_V, second},
                              Term{-(1 - x), &supply.ground, supply.groundMeasured, supply.uGround_V, &meter}};
    double sum = square(x * supply.referenceChange_V / kRectangular);
    for (std::size_t i = 0; i < terms.size(); ++i) {
        if (!terms[i].settled) continue; // taken with an earlier one
        if (!terms[i].measured) {
            sum += square(terms[i].weight * terms[i].assumed_u_V);
            continue;
        }
        // Those on one range share one gain error.
        const MeterTraits* by = terms[i].by;
        const MeterRange* range = &by->rangeFor(terms[i].settled->level_V);
        double shared = 0, apart = 0;
        int members = 0;
        const double alone = square(terms[i].weight * absoluteUncertainty_V(*by, *terms[i].settled));
        for (std::size_t j = i; j < terms.size(); ++j) {
            Term& term = terms[j];
            if (!term.settled || !term.measured || term.by != by) continue;
            if (&by->rangeFor(term.settled->level_V) != range) continue;
            shared += term.weight * term.settled->level_V * range->accuracyPercent / 100 / kRectangular;
            apart += square(term.weight * independentUncertainty_V(*by, *term.settled));
            ++members;
            if (j != i) term.settled = nullptr;
        }
        sum += members == 1 ? alone : square(shared) + apart;
    }
    return {x * sheet.nominal_V, sheet.nominal_V / span * std::sqrt(sum)};
}

double shownFor_V(const Sheet& sheet, const Supply& supply, double level_V) {
    const double R = supply.reference.level_V, G = supply.ground.level_V;
    return G + level_V * (R - G) / sheet.nominal_V;
}

} // namespace stillwire
