// SPDX-License-Identifier: GPL-3.0-or-later
// What the analyser says of a run, from the bytes of its file.
#pragma once

#include "tests/hands/make_run.hpp"

#include <string>
#include <vector>

namespace stillwire::hands {

struct Judged {
    Decision decision = Decision::cannotTell;
    std::string reason;            // the first
    std::vector<std::string> next; // what it asks for
    std::vector<Step> again;       // the steps of those
    std::string error;             // the capture could not be read
};

[[nodiscard]] Judged judge(const LedRun& run);
[[nodiscard]] bool right(const LedRun& run, const Judged& judged);

} // namespace stillwire::hands
