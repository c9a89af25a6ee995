// SPDX-License-Identifier: GPL-3.0-or-later
// Play without marks: no pose says how long the arm was held over, but a hand that holds it one way and the other
// leaves shallow shifts of about a second, much alike, one after another.
#pragma once

#include "core/findings/findings.hpp"

#include <vector>

namespace stillwire {

// Makes `play` of them. In order of time; `resolution_V` is the meter's.
void tellUnmarkedPlay(std::vector<Excursion>& excursions, double resolution_V);

} // namespace stillwire
