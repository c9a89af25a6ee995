// SPDX-License-Identifier: GPL-3.0-or-later
// Tiles the capture with phases: quiet by default, travel where the level moved, wiggle where it was wiggled, blind
// above all.
#pragma once

#include "core/analyse/plateau_book.hpp"
#include "core/domain/timeline.hpp"
#include "core/findings/findings.hpp"

#include <vector>

namespace stillwire {

struct TimeSpan {
    Time from{0}, to{0};
};

struct PhaseEvidence {
    Time from{0}, to{0};                            // the capture
    const std::vector<TimeSpan>* travels = nullptr; // in order
    const std::vector<TimeSpan>* wiggles = nullptr;
    const std::vector<BlindSpan>* blind = nullptr;
    const std::vector<LevelJump>* jumps = nullptr; // a jump parts two quiet phases
    const std::vector<Plateau>* plateaus = nullptr;
};

[[nodiscard]] std::vector<Phase> buildPhases(const PhaseEvidence& evidence);

// Marked: from the first pose of a wiggle step to its end, or to the next position mark (the whole step if it has no
// poses).
[[nodiscard]] std::vector<TimeSpan> markedWiggles(const Timeline& timeline, Time end);
// Unmarked: from 1 s before the first to 1 s after the last of three or more dropouts off one level, none more than
// 20 s from the next, no travel between. Both in order of time.
[[nodiscard]] std::vector<TimeSpan> unmarkedWiggles(const std::vector<Excursion>& dropouts,
                                                    const std::vector<TimeSpan>& travels);

} // namespace stillwire
