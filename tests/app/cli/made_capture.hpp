// SPDX-License-Identifier: GPL-3.0-or-later
// Small captures written by hand, not by the fault bench: plain levels, a count of noise, and what a test adds.
#pragma once

#include <string>

namespace stillwire::testing {

inline constexpr const char* kSheetToml = R"(format = 1
name = "Resurfacer drive pedal"
[reference]
nominal_V = 5.0
min_V = 4.75
max_V = 5.25
[ground]
max_drop_V = 0.10
[[position]]
name = "released"
rest = true
min_V = 0.70
max_V = 0.95
aim_V = 0.82
[[position]]
name = "pressed"
min_V = 3.90
max_V = 4.30
[adjustment]
drift_allowance_V = 0.05
[drive]
none_at_V = 1.10
full_at_V = 3.60
debounce_s = 0.05
)";

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
