// SPDX-License-Identifier: GPL-3.0-or-later
// How an uncertainty is said: twice the standard uncertainty, and half a count is not "0.00 V"; and a level to as
// many decimals as it is good to.
#pragma once

#include "core/base/sentence.hpp"

#include <algorithm>

namespace stillwire {

[[nodiscard]] inline int decimalsFor(double u_V) { return 2 * u_V < 0.0095 ? 3 : 2; }
[[nodiscard]] inline std::string within(double u_V) { return volts(std::max(2 * u_V, 0.001), decimalsFor(u_V)); }
[[nodiscard]] inline std::string levelTo(double level_V, double u_V) { return volts(level_V, decimalsFor(u_V)); }

} // namespace stillwire
