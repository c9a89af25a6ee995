// SPDX-License-Identifier: GPL-3.0-or-later
// Is it worse cold? Poses with a dropout, cold against warm.
#pragma once

#include "core/findings/findings.hpp"
#include "core/judge/coverage.hpp"

#include <optional>

namespace stillwire {

// Exact conditional test of the two rates per pose; absent without warm poses. A rate that is not significantly lower
// warm clears nothing; nor does one that is.
[[nodiscard]] std::optional<ColdWarm> compareColdWarm(const CoverageEvidence& evidence);

} // namespace stillwire
