// SPDX-License-Identifier: GPL-3.0-or-later
// The one door to the fault bench: a script, a sheet, a meter and a seed in; a capture and its truth out.
#pragma once

#include "core/base/result.hpp"
#include "core/capture/reader.hpp"
#include "core/sheet/meter_traits.hpp"
#include "core/sheet/sheet.hpp"
#include "meters/bench/script.hpp"
#include "meters/bench/setup.hpp"
#include "meters/bench/truth.hpp"

#include <cstdint>
#include <string>

namespace stillwire {

struct Simulation {
    Capture capture; // header, readings, marks and rows as a recording would hold them
    Truth truth;
};

// Errors: a sheet with fewer than two positions; levels that do not fit the sheet; a fault of no known name.
[[nodiscard]] Result<Simulation> simulate(const BenchScript& script, const Sheet& sheet, const MeterTraits& meter,
                                          std::uint64_t seed);

// The setup with the script's named faults in it, and levels filled from the sheet.
[[nodiscard]] Result<bench::BenchSetup> prepare(const BenchScript& script, const Sheet& sheet);

// Fills reference, ground, levels, verdict and causes: the judgement table applied to what is true.
// `hangs` and what was done must be in `truth` already.
void judgeTruth(Truth& truth, const bench::BenchSetup& setup, const BenchPlan& plan, const Sheet& sheet);

} // namespace stillwire
