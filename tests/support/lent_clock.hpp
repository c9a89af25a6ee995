// SPDX-License-Identifier: GPL-3.0-or-later
// The clocks of meters/link/clock.hpp, answered by the test program so that minutes pass in seconds: it defines both,
// and the library's own are never linked.
#pragma once

#include "core/base/time.hpp"

namespace stillwire::lent {

// From now on the clocks go `speed` times as fast, without a step; 0: they stand still.
void setClockSpeed(int speed);
// Both clocks step ahead.
void passBy(Time passed);
// The computer slept: the clock that goes on through it steps ahead, the one that stands still then does not.
void sleepFor(Time slept);

} // namespace stillwire::lent
