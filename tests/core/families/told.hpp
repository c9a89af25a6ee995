// SPDX-License-Identifier: GPL-3.0-or-later
// What an analyser told about a trace, in the words of the scorer. The only place that knows how findings are laid
// out.
#pragma once

#include "core/examination.hpp"
#include "tests/core/families/trace.hpp"

#include <string>
#include <vector>

namespace stillwire::families {

struct ToldPlateau {
    Span when;
    double level_V = 0;
};

struct ToldDropout {
    Span when;
    int readings = 0;
    double held_V = 0, extreme_V = 0;
};

struct ToldPhase {
    PhaseKind kind = PhaseKind::quiet;
    Span when;
    double level_V = 0; // 0: none was told
};

struct Told {
    std::vector<ToldPhase> phases;
    std::vector<ToldDropout> dropouts;
    std::vector<double> jumps_s;
    std::vector<Span> blind;
    std::vector<ToldPlateau> plateaus;
};

[[nodiscard]] Told toldBy(const Findings& findings);

// Runs of one path: all at once, and in the ways that have to come to the same.
[[nodiscard]] ExaminationSetup setupFor(const Trace& trace); // ends the program if the maker wrote a broken sheet
[[nodiscard]] Findings examineInBatches(const Trace& trace, const ExaminationSetup& setup, std::size_t most);
[[nodiscard]] Findings examineOneByOne(const Trace& trace, const ExaminationSetup& setup, std::size_t askEvery);

} // namespace stillwire::families
