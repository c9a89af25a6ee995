// SPDX-License-Identifier: GPL-3.0-or-later
// A decimal as a meter shows it, as the double nearest to it: 412.3 with a milli prefix is 0.4123, never
// 0.41230000000000006.
#pragma once

#include <optional>
#include <string_view>

namespace stillwire {

// Nothing a three-wire sensor or its supply can show; larger numbers are garbage, not volts.
inline constexpr double kLargestVolts_V = 1e5;

// `text` is a whole NRf number (IEEE 488.2: sign, digits with or without a point, exponent), shifted by a power of
// ten. Nothing if it is not exactly that, or leaves the range of a double. Never minus zero.
[[nodiscard]] std::optional<double> parseDecimal(std::string_view text, int shift10 = 0);

// How many characters at the start of `text` form the longest number, 0 if none does.
[[nodiscard]] std::size_t decimalLength(std::string_view text);

} // namespace stillwire
