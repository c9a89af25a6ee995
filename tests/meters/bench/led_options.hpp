// SPDX-License-Identifier: GPL-3.0-or-later
// What led_runs was asked for.
#pragma once

#include "tests/meters/bench/led_run.hpp"

#include <optional>
#include <vector>

namespace stillwire::led {

struct Options {
    std::vector<Subject> subjects; // every run wanted, seeds of one fault and meter together
    unsigned jobs = 1;
    bool misses = false;
    std::optional<unsigned> atMostWrong; // runs in which replace was said under another truth
};

inline constexpr const char* kUsage =
    "led_runs [--seeds N, 5 if absent] [--seed FIRST] [--fault NAME|good|all] [--meter NAME|all]\n"
    "  --jobs N           so many at a time\n"
    "  --misses           list the runs that end wrong, too\n"
    "  --at-most-wrong N  exit 1 if replace was said under another truth in more runs than N\n";

[[nodiscard]] std::optional<Options> parseOptions(int count, char** words); // none: wrong usage

} // namespace stillwire::led
