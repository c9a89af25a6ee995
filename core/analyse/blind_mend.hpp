// SPDX-License-Identifier: GPL-3.0-or-later
// What to do about a meter that could not see, in plain words.
#pragma once

#include "core/findings/findings.hpp"

#include <vector>

namespace stillwire {

// Spans of one cause that lie in [from, to], cut to it.
struct BlindTime {
    int spans = 0;
    double total_s = 0;
    double longest_s = 0;
};
[[nodiscard]] BlindTime blindTime(const std::vector<BlindSpan>& blind, BlindCause cause, Time from, Time to);

// Three range changes within a minute are hunting: the level lies where two ranges meet. Own rule, no source.
inline constexpr int kHunting = 3;
inline constexpr Time kHuntingWithin = std::chrono::minutes(1);

// The mend for the cause that took most time in [from, to]; empty if there was none.
[[nodiscard]] Sentence blindMend(const std::vector<BlindSpan>& blind, Time from, Time to);

} // namespace stillwire
