// SPDX-License-Identifier: GPL-3.0-or-later
// One led run, watched: what was said on the way, when the decision stood, and what would have been right.
#pragma once

#include "core/findings/findings.hpp"
#include "tests/support/bench_runs.hpp"

#include <cstdint>
#include <optional>
#include <string>

namespace stillwire::led {

struct Subject {
    std::optional<bench::FaultKind> fault; // none: a good sensor
    test::MeterKind meter = test::MeterKind::fair;
    std::uint64_t seed = 1;
};
[[nodiscard]] std::string subjectName(const Subject& subject); // "--fault dirty-spot --meter fair --seed 3"

struct ReplaceSaid { // when it was decided first
    double at_s = 0;
    std::string why; // the first reason, and the condition where there was one
};

struct LedRun {
    Subject subject;
    Decision said = Decision::cannotTell, wanted = Decision::cannotTell; // at the end; by the truth
    double stands_s = 0; // from the start to the last change of the decision
    std::optional<ReplaceSaid> replace;
    std::string why;   // of the decision at the end
    std::string steps; // as they were opened, skipped and undone, with the turns of the sensor
    bool finished = false;

    [[nodiscard]] bool right() const { return said == wanted; }
    [[nodiscard]] bool replacedWrongly() const { return replace && wanted != Decision::replace; }
};

[[nodiscard]] LedRun ledRun(const Subject& subject);

} // namespace stillwire::led
