// SPDX-License-Identifier: GPL-3.0-or-later
// Small captures written by hand, not by the fault bench: plain levels, a count of noise, and what a test adds.
#pragma once

#include "tests/support/pedal_sheet.hpp"

#include <string>

namespace stillwire::testing {

inline constexpr const char* kMeterToml = R"(format = 1
name = "Text-line logger"
interval_s = 0.33
aperture_s = 0.10
[[range]]
full_scale_V = 6.0
resolution_V = 0.001
accuracy_percent = 0.5
accuracy_counts = 2
)";

struct Wanted {
    double reference_V = 5.0, ground_V = 0.02, released_V = 0.82, pressed_V = 4.10;
    bool dropoutsInShaft = false;
    bool header = true, sheet = true, meter = true, marks = true;
    int poses = 34;
};

// Reference, ground, cold-start, both wiggles, full-press and four releases, three readings a second.
[[nodiscard]] std::string madeCapture(const Wanted& wanted = {});

} // namespace stillwire::testing
