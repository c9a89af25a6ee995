// SPDX-License-Identifier: GPL-3.0-or-later
// The faults by name, with figures that make them plain to a fair meter. All figures are invented for demos and
// tests.
#pragma once

#include "core/sheet/sheet.hpp"
#include "meters/bench/setup.hpp"

#include <array>
#include <optional>
#include <string_view>

namespace stillwire::bench {

enum class FaultKind {
    wornTrack,
    dirtySpot,
    connectorFretting,
    harnessOpen,
    harnessShortToGround,
    harnessShortToSupply,
    brokenStrand,
    referenceSag,
    groundResistance,
    mountRotated,
    weakSpring,
    wrongSpan
};
inline constexpr int kFaultKinds = 12;

[[nodiscard]] std::string_view faultName(FaultKind kind); // "worn-track"
[[nodiscard]] std::optional<FaultKind> faultByName(std::string_view name);

// Adds the fault. Levels of `setup` are filled from the sheet's aims where they are empty. `harnessOpen` lies between
// a sensor-side probe and the controller, where that probe cannot see it: it moves the probe to the controller's
// side. Returns the new intermittent fault, to be tuned; null for the faults that stand still.
Intermittent* addFault(BenchSetup& setup, FaultKind kind, const Sheet& sheet);

// Index of the rest position in the order of travel.
[[nodiscard]] std::size_t restIndex(const Sheet& sheet);

} // namespace stillwire::bench
