// SPDX-License-Identifier: GPL-3.0-or-later
// Which of the sheets that are known would fit what stood still in a trace.
#pragma once

#include "core/findings/findings.hpp"

#include <string>
#include <vector>

namespace stillwire {

// Names, best first: every level of the signal lies in a window, and more windows have one.
[[nodiscard]] std::vector<std::string> fittingSheets(const std::vector<Stay>& plateaus);

} // namespace stillwire
