// SPDX-License-Identifier: GPL-3.0-or-later
// The clocks of meters/link/clock.hpp, answered by the test program so that minutes pass in seconds: it defines both,
// and the library's own are never linked.
#pragma once

namespace stillwire::lent {

// From now on the clocks go `speed` times as fast, without a step.
void setClockSpeed(int speed);

} // namespace stillwire::lent
