// SPDX-License-Identifier: GPL-3.0-or-later
// What a serial receiver makes of a sender with other settings: start bit, data bits, parity and stop bits as levels
// on a line, sampled in the middle of the receiver's own bits. For wrong baud rates and framings in tests.
#pragma once

#include "meters/describe/description.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace stillwire::test {

struct UartSettings {
    double baud = 9600;
    int bits = 8;
    Parity parity = Parity::none;
    int stopBits = 1;
};

// Bytes sent back to back, then the line at rest. A byte whose stop bit is missing reads as 0 (as a terminal without
// parity marking gives a framing error, from memory); a wrong parity bit is not looked at.
[[nodiscard]] std::vector<std::uint8_t> receive(std::span<const std::uint8_t> sent, const UartSettings& sender,
                                                const UartSettings& receiver);

} // namespace stillwire::test
