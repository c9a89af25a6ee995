// SPDX-License-Identifier: GPL-3.0-or-later
// The words of the findings' kinds, as every output writes them.
#pragma once

#include "core/findings/findings.hpp"

namespace stillwire {

[[nodiscard]] const char* nameOf(BlindCause cause);
[[nodiscard]] const char* nameOf(PhaseKind kind);
[[nodiscard]] const char* nameOf(Direction direction);
[[nodiscard]] const char* nameOf(ExcursionKind kind);
[[nodiscard]] const char* nameOf(Likely likely);
[[nodiscard]] const char* nameOf(Conformance conformance);

} // namespace stillwire
