// SPDX-License-Identifier: GPL-3.0-or-later
// Whole guided runs: a live procedure leads the simulated hand at the bench's meter. What a session does, without its
// thread.
#pragma once

#include "meters/bench/truth.hpp"
#include "meters/describe/description.hpp"
#include "tests/support/bench_runs.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

namespace stillwire::test {

enum class Words { kept, leftOut }; // left out: prompts without the sentences, which the hand must not need

struct GuidedOptions {
    std::optional<bench::FaultKind> fault{}; // none: a good sensor
    std::optional<BenchScript> script{};     // in place of `fault`, as it stands: quirks and patience are its own
    Sheet sheet = pedalSheet();
    MeterKind meter = MeterKind::fair;
    std::uint64_t seed = 1;
    Words words = Words::kept;
    std::function<void(Time, const Findings&)> judged{}; // called with all findings there were
};

struct Guided {
    std::vector<Reading> readings;
    std::vector<Mark> marks;
    Findings findings; // at the end
    Truth truth;
    bool finished = false;
    std::optional<double> aim_V; // the last that a prompt gave, and how near was near enough
    double aimWithin_V = 0;
    double shown_V = 0; // when it was given last
};

// Never fails: what goes into it is ours. A run that does not come to its end is left after half an hour.
[[nodiscard]] Guided guide(const GuidedOptions& options);

[[nodiscard]] MeterDescription describedMeter(MeterKind kind, FrameKind frame);

} // namespace stillwire::test
