// SPDX-License-Identifier: GPL-3.0-or-later
// The sheet of an invented pedal, as text: what captures and sessions of the tests are judged by.
#pragma once

namespace stillwire::test {

inline constexpr const char* kPedalSheet = R"(format = 1
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

} // namespace stillwire::test
