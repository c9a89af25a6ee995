// SPDX-License-Identifier: GPL-3.0-or-later
// Guided runs on the fault bench with their truth, for whoever tests what a trace means. Figures are invented.
#pragma once

#include "meters/bench/faults.hpp"
#include "meters/bench/simulate.hpp"

#include <cstdint>
#include <optional>

namespace stillwire::test {

// Our three scenarios as values (the files in resources/sheets hold the same figures).
[[nodiscard]] Sheet pedalSheet();  // at rest at 0.82 V, pressed 4.10 V
[[nodiscard]] Sheet depthSheet();  // high at rest
[[nodiscard]] Sheet twoWaySheet(); // rests in the middle

enum class MeterKind {
    fair,   // 3/s, 0.1 s aperture, 1 mV, 0.5 % + 2
    brisk,  // 5/s, 0.18 s
    slow,   // 2/s, 0.4 s, with a display filter
    coarse, // 3/s, 10 mV counts, 1 % + 3
    ranging // 4000 counts: autorange at 4.000 V, dark for a second
};
inline constexpr MeterKind kMeterKinds[] = {MeterKind::fair, MeterKind::brisk, MeterKind::slow, MeterKind::coarse,
                                            MeterKind::ranging};
[[nodiscard]] const char* meterName(MeterKind kind);
[[nodiscard]] MeterTraits meterTraits(MeterKind kind);
[[nodiscard]] bench::MeterQuirks meterQuirks(MeterKind kind);

// A guided run, marked, all required steps. No fault: a good sensor.
[[nodiscard]] BenchScript benchScript(std::optional<bench::FaultKind> fault, MeterKind meter = MeterKind::fair);
// Never fails: what goes into it is ours.
[[nodiscard]] Simulation benchRun(std::optional<bench::FaultKind> fault, std::uint64_t seed,
                                  MeterKind meter = MeterKind::fair);
[[nodiscard]] Simulation benchRun(const BenchScript& script, const Sheet& sheet, std::uint64_t seed,
                                  MeterKind meter = MeterKind::fair);

// Good sensors that look worse than they are.
[[nodiscard]] BenchScript withPlay(double play_V);     // 5 to 40 mV under side load
[[nodiscard]] BenchScript withTremor(double tremor_V); // an unsteady hand on the pedal
// The same doings with no marks in the capture.
[[nodiscard]] BenchScript unmarked(BenchScript script);

} // namespace stillwire::test
