// SPDX-License-Identifier: GPL-3.0-or-later
// The fault bench as a meter on a link: real frame bytes, at the bench's own time, and a hand that answers the
// procedure.
#pragma once

#include "core/procedure/procedure.hpp"
#include "meters/bench/script.hpp"
#include "meters/bench/truth.hpp"
#include "meters/describe/description.hpp"
#include "meters/link/link.hpp"

#include <cstdint>
#include <functional>
#include <memory>
#include <vector>

namespace stillwire {

// All four share one bench, for one thread at a time; the functions may outlive the link.
struct SimulatedMeter {
    std::unique_ptr<Link> link;
    std::function<std::vector<Command>(const Prompt&, Time now)> hand; // as Session wants it
    std::function<void()> strike;                                      // a short dropout now, for a class to find
    std::function<Truth()> truth; // so far; its verdict takes the plan's steps as done in full
};

// `clock`: a clock that goes on by itself, e.g. bootTime; `speed`: how much faster the bench goes. Speed 0, or no
// clock: as fast as it is read. The bench starts with the key off and the lead in the air.
// Errors: as simulate().
[[nodiscard]] Result<SimulatedMeter> simulatedMeter(const BenchScript& script, const Sheet& sheet,
                                                    const MeterDescription& meter, std::uint64_t seed, double speed,
                                                    std::function<Time()> clock);

} // namespace stillwire
