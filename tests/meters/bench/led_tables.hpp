// SPDX-License-Identifier: GPL-3.0-or-later
// Led runs as tables on stdout: how they ended, and when the verdict stood.
#pragma once

#include "tests/meters/bench/led_run.hpp"

#include <vector>

namespace stillwire::led {

// Runs of one fault and meter stand together. Each prints a table and what has to be said below it.
void printEnds(const std::vector<LedRun>& runs);
void printTimes(const std::vector<LedRun>& runs);
void printMisses(const std::vector<LedRun>& runs);

} // namespace stillwire::led
