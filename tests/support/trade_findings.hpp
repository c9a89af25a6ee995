// SPDX-License-Identifier: GPL-3.0-or-later
// The trade's table of findings (common practice, no source) and what answers each of them here.
#pragma once

#include <array>
#include <span>

namespace stillwire {

struct TradeFinding {
    const char* finding;
    const char* likely;                // what the trade takes it for
    std::array<const char*, 4> rows{}; // of the judgement table, by name; null: no more
    const char* outOfReach = nullptr;  // what a trace of one signal cannot tell, and what is said instead
};

[[nodiscard]] std::span<const TradeFinding> tradeFindings();

} // namespace stillwire
