// SPDX-License-Identifier: GPL-3.0-or-later
// From volts shown to nominal volts, with the uncertainty of each.
#pragma once

#include "core/sheet/meter_traits.hpp"
#include "core/sheet/sheet.hpp"

#include <optional>

namespace stillwire {

// A settled median as the meter showed it.
struct Settled {
    double level_V = 0;
    double noise_V = 0;  // of one reading
    double readings = 1; // how many
};

// Half-widths are turned into standard uncertainties as rectangular (JCGM 100:2008, 4.3.7).
// Counts term, resolution and the scatter of the median (1.2533·noise/√n); the percent term apart, for it is common
// to readings on one range.
[[nodiscard]] double independentUncertainty_V(const MeterTraits& meter, const Settled& settled);
[[nodiscard]] double percentUncertainty_V(const MeterTraits& meter, double level_V);
// An absolute statement about one reading: (percent + counts)/√3, resolution and scatter.
[[nodiscard]] double absoluteUncertainty_V(const MeterTraits& meter, const Settled& settled);

// The reference and the ground that levels are measured against.
struct Supply {
    Settled reference;
    bool referenceMeasured = false; // else: nominal, good to the window of the sheet
    double uReference_V = 0;        // if not measured
    double referenceChange_V = 0;   // largest change seen between two measurements
    // "Less than 0.1 V while moved" (common practice, no source): more, and levels against it are only a guess.
    [[nodiscard]] bool steady() const { return referenceMeasured && referenceChange_V < 0.1; }
    const MeterTraits* referenceMeter = nullptr; // another meter measured it: no gain error in common; null: the same
    Settled ground;
    bool groundMeasured = false; // else: half of max_drop, rectangular from 0 to max_drop; or exactly 0
    double uGround_V = 0;        // if not measured
};

// What stands in for a wire that was not measured.
[[nodiscard]] Supply assumedSupply(const Sheet& sheet, bool blackOnSensorGround);

struct Level {
    double level_V = 0; // nominal
    double u_V = 0;     // k = 1
};

// level = (raw - G)·nominal/(R - G); x = (raw - G)/(R - G).
// u(level) = nominal/(R - G)·√(u_raw² + x²·u_R² + (1-x)²·u_G² + change + percent), where the percent terms of
// readings on one range of one meter share one gain error and are added before squaring: for raw, R and G on one
// range they cancel. Precondition: R > G.
[[nodiscard]] Level ratiometricLevel(const Sheet& sheet, const MeterTraits& meter, const Supply& supply,
                                     const Settled& raw);

// The inverse: what the meter will show when the level is `level_V`.
[[nodiscard]] double shownFor_V(const Sheet& sheet, const Supply& supply, double level_V);

} // namespace stillwire
