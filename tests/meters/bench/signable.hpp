// SPDX-License-Identifier: GPL-3.0-or-later
// What a master mechanic who knows the bench's truth would sign, worked out from the truth alone: nothing of the
// judgement is used here.
#pragma once

#include "meters/bench/simulate.hpp"

#include <set>

namespace stillwire::test {

// Deep enough to be told from play by every meter of ours.
inline constexpr double kTellable_V = 0.10;

struct Signable {
    Decision right = Decision::keep; // by the order of the rows
    // What may be signed as well, `right` among them: the same rows with the count of poses read a little more, or a
    // little less, strictly. Both faults are there in such a case, and either answer leads to the other.
    std::set<Decision> accepted;
    // A range change or an overload swallowed some of an event: what may be signed if it is taken for shown that the
    // level left its range there; and that one cannot tell.
    std::set<Decision> inTheDark;
};

// Which of the rows about dropouts hold depends on what reached a reading; all else on what stands still.
[[nodiscard]] Signable signable(const Simulation& run, const BenchScript& script, const Sheet& sheet);

// Did an event reach a reading by more than kTellable_V, be it one that the meter left dark for it? What never showed
// cannot be held against a keep.
[[nodiscard]] bool showed(const Simulation& run);

} // namespace stillwire::test
