// SPDX-License-Identifier: GPL-3.0-or-later
// One run with its truth, from a request and a seed.
#pragma once

#include "core/domain/mark.hpp"
#include "core/domain/reading.hpp"
#include "tests/hands/led_hand.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace stillwire::hands {

struct Request {
    std::string kind = "none"; // of the table, "none", or "several": three of them at different steps
    std::string step;          // empty: any
    Fault fault = Fault::none;
    std::uint64_t seed = 1;
    bool oldSteps = false;
    bool spare = true;
    bool quickLead = false;    // the lead goes from wire to wire at once after the mark, and never hangs for long
    bool withoutAct = false;   // the same run, but nothing happens in it
    std::vector<Step> again{}; // steps done once more at the end, without anything happening in them
};

struct LedRun {
    Request request;
    Subject subject;
    std::vector<Act> acts;
    std::vector<Span> faultTimes;
    Scene scene;
    std::vector<Reading> readings;
    std::vector<Mark> marks;
    std::string capture; // the bytes of the file
};

// Nothing if the act has no occasion in this run.
[[nodiscard]] std::optional<LedRun> makeRun(const Request& request);
// Kinds and steps in which they can happen.
[[nodiscard]] std::vector<std::pair<Kind, std::string>> whatCanHappen(bool oldSteps);
[[nodiscard]] std::string nameOf(const Request& request); // of files
[[nodiscard]] std::string truthToml(const LedRun& run);

} // namespace stillwire::hands
