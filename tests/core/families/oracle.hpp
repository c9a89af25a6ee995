// SPDX-License-Identifier: GPL-3.0-or-later
// Tellers that know the truth. One tells all of it: the scorer has to find nothing wrong with it, or the truth does
// not agree with itself. The other knows every level but sees dropouts only by the stated threshold: what is out of
// its reach is out of everybody's who keeps to the threshold reading by reading.
#pragma once

#include "tests/core/families/told.hpp"

namespace stillwire::families {

enum class Teller { analyser, truth, threshold };

[[nodiscard]] Told tellAll(const Trace& trace);
[[nodiscard]] Told tellByThreshold(const Trace& trace);

} // namespace stillwire::families
