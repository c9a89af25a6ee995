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
} // namespace

double independentUncertainty_V(const MeterTraits& meter, const Settled& settled) {
    const MeterRange& range = meter.rangeFor(settled.level_V);
    const double counts = range.accuracyCounts * range.resolution_V / kRectangular;
    const double scatter = kMedianScatter * settled.noise_V / std::sqrt(std::max(1.0, settled.readings));
    return std::sqrt(square(counts) + square(range.resolution_V) / 12 + square(scatter));
}

double percentUncertainty_V(const MeterTraits& meter, double level_V) {
    return meter.rangeFor(level_V).accuracyPercent / 100 * std::abs(level_V) / kRectangular;
}

double absoluteUncertainty_V(const MeterTraits& meter, const Settled& settled) {
    return std::hypot(independentUncertainty_V(meter, settled), percentUncertainty_V(meter, settled.level_V));
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
    const double uRaw = independentUncertainty_V(meter, raw);
    const double uR =
        supply.referenceMeasured ? independentUncertainty_V(meter, supply.reference) : supply.uReference_V;
    const double uG = supply.groundMeasured ? independentUncertainty_V(meter, supply.ground) : supply.uGround_V;
    const double uChange = supply.referenceChange_V / kRectangular;
    double sum = square(uRaw) + square(x) * (square(uR) + square(uChange)) + square(1 - x) * square(uG);

    struct Term {
        double weight, level_V;
        bool measured;
    };
    std::array<Term, 3> terms{Term{1, raw.level_V, true}, Term{-x, R, supply.referenceMeasured},
                              Term{-(1 - x), G, supply.groundMeasured}};
    for (std::size_t i = 0; i < terms.size(); ++i) {
        if (!terms[i].measured) continue;
        const MeterRange* range = &meter.rangeFor(terms[i].level_V);
        double shared = 0;
        for (std::size_t j = i; j < terms.size(); ++j) {
            if (!terms[j].measured || &meter.rangeFor(terms[j].level_V) != range) continue;
            shared += terms[j].weight * terms[j].level_V * range->accuracyPercent / 100 / kRectangular;
            terms[j].measured = false; // counted
        }
        sum += square(shared);
    }
    return {x * sheet.nominal_V, sheet.nominal_V / span * std::sqrt(sum)};
}

double shownFor_V(const Sheet& sheet, const Supply& supply, double level_V) {
    const double R = supply.reference.level_V, G = supply.ground.level_V;
    return G + level_V * (R - G) / sheet.nominal_V;
}

} // namespace stillwire
