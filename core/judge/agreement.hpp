// SPDX-License-Identifier: GPL-3.0-or-later
// Visits to a position: those that agree speak for it; one that stands apart decides nothing alone.
#pragma once

#include "core/findings/findings.hpp"
#include "core/sheet/sheet.hpp"

namespace stillwire {

// Says whether any two visits agree, and sets aside the visits of `position` (an index into the sheet) that lie
// further than limit_V, max(play, 6·noise, 3 counts), from every other one, where others agree. Hangs were told
// before. Fewer than three visits: none is.
void tellApart(const Sheet& sheet, std::size_t position, double limit_V, PositionLevel& level);

} // namespace stillwire
