// SPDX-License-Identifier: GPL-3.0-or-later
// How far to turn the sensor on its mount, and whether turning can help at all.
#pragma once

#include "core/analyse/plateau_book.hpp"
#include "core/findings/findings.hpp"
#include "core/judge/levels.hpp"
#include "core/sheet/sheet.hpp"

#include <vector>

namespace stillwire {

struct AdjustmentEvidence {
    const Sheet* sheet = nullptr;
    const Levels* levels = nullptr;
    const std::vector<Plateau>* stays = nullptr; // settledStays()
};

// The shift that leaves the largest smallest margin over all positions, cold levels too; margin = distance to the
// nearer limit in half-windows, negative outside. Each position takes its share of the shift: 1 until turns have
// taught better.
[[nodiscard]] AdjustmentAdvice adviseAdjustment(const AdjustmentEvidence& evidence);

// One level that must fit its window: margin(s) = (half - |level + share·s - middle|)/half.
struct ShiftDemand {
    double level_V = 0;
    double share = 1;
    Window window;
    [[nodiscard]] double margin(double shift_V) const;
};
// The best shift, exactly: the best margin is where two of the straight margins cross (or at a window's middle).
[[nodiscard]] double bestShift_V(const std::vector<ShiftDemand>& demands);

// Least-squares slope of level over turns, with its standard uncertainty; needs readings at three or more different
// turns.
struct TurnSlope {
    double voltsPerTurn_V = 0;
    double u_V = 0;
};
[[nodiscard]] std::optional<TurnSlope> turnSlope(const std::vector<double>& turns, const std::vector<double>& level_V,
                                                 double uLevel_V);

} // namespace stillwire
