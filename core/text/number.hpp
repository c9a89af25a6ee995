// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers out of text, the same under every locale. The whole text must be the number: "4.5x" is none.
#pragma once

#include "core/base/time.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace stillwire {

[[nodiscard]] std::string_view trimmed(std::string_view text); // spaces and tabs off both ends

// The double nearest to the decimal times 10^exponent; a leading '+' is fine. Nothing if not a number or not finite.
[[nodiscard]] std::optional<double> parseNumber(std::string_view text, int exponent = 0);

// A decimal of `unit` microseconds each ("12.5" of 1'000'000 is 12.5 s), to the nearest microsecond, halves away from
// zero. Nothing if not a number or beyond ±1e17 µs (3000 years).
[[nodiscard]] std::optional<Time> parseTime(std::string_view text, std::int64_t unit = 1'000'000);

} // namespace stillwire
