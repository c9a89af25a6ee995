// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/uart.hpp"

#include <algorithm>
#include <bit>
#include <cmath>

namespace stillwire::test {

namespace {

// The line as the sender drives it, one element a bit; high at rest.
std::vector<bool> levels(std::span<const std::uint8_t> sent, const UartSettings& s) {
    std::vector<bool> line(4, true);
    for (const std::uint8_t byte : sent) {
        const unsigned data = byte & ((1u << s.bits) - 1);
        line.push_back(false);
        for (int i = 0; i < s.bits; ++i) line.push_back((data >> i & 1) != 0);
        const bool odd = std::popcount(data) % 2 == 1;
        if (s.parity != Parity::none) line.push_back(s.parity == Parity::even ? odd : !odd);
        for (int i = 0; i < s.stopBits; ++i) line.push_back(true);
    }
    return line;
}

} // namespace

std::vector<std::uint8_t> receive(std::span<const std::uint8_t> sent, const UartSettings& sender,
                                  const UartSettings& receiver) {
    const std::vector<bool> line = levels(sent, sender);
    // In bits of the sender; after the last one the line rests.
    const auto levelAt = [&line](double at) {
        const auto index = static_cast<std::size_t>(at);
        return index >= line.size() || line[index];
    };
    const double bit = sender.baud / receiver.baud; // of the receiver, in bits of the sender
    const double end = static_cast<double>(line.size());
    const double step = std::min(bit, 1.0) / 16; // the receiver looks 16 times a bit
    std::vector<std::uint8_t> out;
    bool before = true;
    for (double at = 0; at < end;) {
        const bool now = levelAt(at);
        if (before && !now && !levelAt(at + bit / 2)) {
            unsigned data = 0;
            for (int i = 0; i < receiver.bits; ++i) data |= (levelAt(at + (1.5 + i) * bit) ? 1u : 0u) << i;
            const int checked = receiver.bits + (receiver.parity != Parity::none ? 1 : 0);
            const bool stop = levelAt(at + (1.5 + checked) * bit);
            out.push_back(stop ? static_cast<std::uint8_t>(data) : std::uint8_t{0});
            at += (1.5 + checked) * bit;
            before = levelAt(at);
            continue;
        }
        before = now;
        at += step;
    }
    return out;
}

} // namespace stillwire::test
