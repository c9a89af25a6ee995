// SPDX-License-Identifier: GPL-3.0-or-later
// Where the excursions of a run are others than its truth has.
#pragma once

#include "core/findings/findings.hpp"
#include "meters/bench/simulate.hpp"

#include <string>

namespace stillwire::test {

// Events that reached a reading by more than kTellable_V and that no excursion covers, and excursions that no event
// reached, each with time, step and depth; empty if there are none.
[[nodiscard]] std::string differences(const Findings& findings, const Simulation& run);

} // namespace stillwire::test
