// SPDX-License-Identifier: GPL-3.0-or-later
// Whether two moments of a session differ at the end of the trace only, so that the rest need not be painted again.
#pragma once

#include "meters/session/session.hpp"

namespace stillwire {

// `after` may have readings that `before` has not; what the trace shows of the time before is the same. Of the strips
// on its time axis the machine's is too, the ribbon's may differ.
[[nodiscard]] bool onlyGrew(const SessionSnapshot& before, const SessionSnapshot& after);

} // namespace stillwire
