// SPDX-License-Identifier: GPL-3.0-or-later
// How an uncertainty is said: twice the standard uncertainty, and half a count is not "0.00 V".
#pragma once

#include "core/base/sentence.hpp"

namespace stillwire {

[[nodiscard]] inline std::string within(double u_V) { return volts(2 * u_V, 2 * u_V < 0.0095 ? 3 : 2); }

} // namespace stillwire
