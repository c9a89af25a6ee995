// SPDX-License-Identifier: GPL-3.0-or-later
// The steps by which the truth is told; in their order.
#pragma once

#include "tests/core/families/trace.hpp"

namespace stillwire::families {

// How long a reading still remembers what was before: the aperture, the filter, the display.
[[nodiscard]] double memory_s(const Meter& meter);
[[nodiscard]] double silenceLimit_s(const Meter& meter); // beyond it the meter counts as blind
[[nodiscard]] double shortestStay_s(const Meter& meter); // flat for longer: a movement there, not a dropout

void tellRequired(const Wire& wire, Trace& trace);
void tellBlind(Trace& trace);
void tellMoves(const Wire& wire, Trace& trace);
void tellPlateaus(const Wire& wire, Trace& trace);
void tellWiggles(const Wire& wire, Trace& trace);
void tellCalm(const Wire& wire, Trace& trace);

} // namespace stillwire::families
