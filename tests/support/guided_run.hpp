// SPDX-License-Identifier: GPL-3.0-or-later
// Whole led runs out of the plain generator: reference, ground, cold start, both wiggles, full press, releases.
#pragma once

#include "tests/support/trace_maker.hpp"

#include <optional>
#include <string>
#include <vector>

namespace stillwire::test {

struct GuidedRun {
    double rest_V = 4.4, pressed_V = 0.9;
    std::optional<double> cold_V; // the level at rest during cold-start; absent: as later
    double reference_V = 5.0, ground_V = 0.0;
    int shaftEvery = 0, harnessEvery = 0; // a dropout in every so many poses; 0: none
    double depth_V = -2.0, duration_s = 0.6, play_V = 0;
    int poses = 32;
    std::vector<double> returns_V; // where each release comes back to; empty: three to rest_V
    std::string arm;               // answered in `lift` after the last release; empty: no lift
};

[[nodiscard]] TraceMaker guided(const GuidedRun& run, std::uint64_t seed = 1, MakerMeter meter = {});

// Verdict, reasons and excursions, for a failing test to print.
[[nodiscard]] std::string whatItSaid(const Findings& findings);

} // namespace stillwire::test
