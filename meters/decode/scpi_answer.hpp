// SPDX-License-Identifier: GPL-3.0-or-later
// Answers of a SCPI instrument that are no readings.
#pragma once

#include "meters/decode/decoder.hpp"

#include <string_view>

namespace stillwire {

// `*IDN?` (IEEE 488.2: four fields, maker, model, serial number and firmware, joined by commas) or `SYST:ERR?`
// (SCPI-1999: a whole number from -32768 to 32767 and a text of at most 255 characters in quotes). Nothing: neither.
[[nodiscard]] std::optional<Answer> parseScpiAnswer(std::string_view line);

} // namespace stillwire
