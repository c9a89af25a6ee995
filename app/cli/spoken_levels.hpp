// SPDX-License-Identifier: GPL-3.0-or-later
// The sections of the spoken report about levels: what they are, and how far to turn.
#pragma once

#include "app/cli/spoken.hpp"

namespace stillwire {

[[nodiscard]] Section levelsSection(const Findings& findings, const Sheet& sheet);
// Empty if no adjustment is wanted.
[[nodiscard]] Section adjustmentSection(const Findings& findings, const Sheet& sheet);

} // namespace stillwire
