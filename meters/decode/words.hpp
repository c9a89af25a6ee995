// SPDX-License-Identifier: GPL-3.0-or-later
// The words meters write beside a number: units with their prefixes, overload, and states.
#pragma once

#include "core/domain/reading.hpp"
#include "meters/decode/decoder.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace stillwire {

// `known` but not `dcVolts`: ohms, amperes, AC volts and the like. Prefixes m, k, and µ as UTF-8, Latin-1 or the
// letter u.
struct Unit {
    bool known = false;
    bool dcVolts = false;
    int exponent10 = 0; // of volts: -3 for mV
};
[[nodiscard]] Unit parseUnit(std::string_view token);

[[nodiscard]] bool isOverloadWord(std::string_view token); // OL, 0L, O.L, with or without a sign

// A word that says how the meter stands. `notDcVolts`: AC, a relative reading, a low-impedance input, another
// function.
struct FrameWord {
    ReadingFlags flags;
    bool notDcVolts = false;
    NotVolts because = NotVolts::unsaid;
};
[[nodiscard]] std::optional<FrameWord> parseStateWord(std::string_view token); // nothing: a word we do not know

// What a meter calls the function it measures with ("DCV", "VOLT:DC", "OHM"): true for DC volts.
[[nodiscard]] bool isDcVoltsFunction(std::string_view function);

[[nodiscard]] std::string upperCase(std::string_view text); // ASCII letters only

} // namespace stillwire
