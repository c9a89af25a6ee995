// SPDX-License-Identifier: GPL-3.0-or-later
// Time in a capture: whole microseconds since its start. Never negative, never read from a clock in core.
#pragma once

#include <chrono>
#include <cmath>

namespace stillwire {

using Time = std::chrono::microseconds;

// Divided, not multiplied: the result is the double nearest to the written decimal.
[[nodiscard]] constexpr double toSeconds(Time t) { return static_cast<double>(t.count()) / 1e6; }
[[nodiscard]] inline Time fromSeconds(double seconds) { return Time(std::llround(seconds * 1e6)); }

} // namespace stillwire
