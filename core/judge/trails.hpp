// SPDX-License-Identifier: GPL-3.0-or-later
// Dropouts that run on into later poses: what these show of their own, and which of them could show nothing.
#pragma once

#include "core/judge/pose_evidence.hpp"

#include <functional>
#include <set>

namespace stillwire {

using Counts = std::function<bool(const Excursion&)>; // which excursions are meant

// The poses in which such an excursion was renewed.
[[nodiscard]] std::set<int> renewedIn(const CoverageEvidence& evidence, const Counts& counts);

// The poses of which an earlier pose's excursion leaves fewer than `fewest` readings free. They are no trials for the
// bound: what happens in them may not show (Clopper and Pearson 1934 want trials that can succeed).
[[nodiscard]] std::set<int> hiddenBehind(const CoverageEvidence& evidence, const Counts& counts, int fewest);

} // namespace stillwire
