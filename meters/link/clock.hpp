// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/time.hpp"

namespace stillwire {

[[nodiscard]] Time bootTime();  // CLOCK_BOOTTIME: goes on while the computer sleeps
[[nodiscard]] Time awakeTime(); // CLOCK_MONOTONIC: stands still then

} // namespace stillwire
