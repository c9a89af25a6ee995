// SPDX-License-Identifier: GPL-3.0-or-later
// What bytes of an unknown meter look like: text lines, LCD-segment frames, packets. Pure.
#pragma once

#include "core/base/sentence.hpp"
#include "meters/describe/description.hpp"
#include "meters/find/heard.hpp"

#include <optional>
#include <string>

namespace stillwire {

enum class ByteShape { nothing, textLines, lcdFrames, packets, unknown };

struct Likeness {
    std::size_t bytes = 0;
    ByteShape shape = ByteShape::nothing;
    double printable = 0; // share of bytes that are printable ASCII, a tab or a line end
    // Read with eight bits, every byte carries this parity in its top bit: the meter sends seven bits and it.
    std::optional<Parity> parity;
    std::string line;                      // the last whole line, of text
    std::optional<std::size_t> lineLength; // if all whole lines have it
    std::size_t packetBytes = 0;           // of packets of one length, with pauses between them; 0: none
    double interval_s = 0;                 // from packet to packet; 0: not seen
};

[[nodiscard]] Likeness likenessOf(const Heard& heard);

// "text lines of 11 characters, such as …": what to tell a person.
[[nodiscard]] Sentence likenessSays(const Likeness& look);

// The bytes as seven bits, the top one off.
[[nodiscard]] Heard sevenBits(const Heard& heard);

// "8N1", "7O2"
[[nodiscard]] std::string framingText(const LinkSettings& link);

// One row of at most 16 bytes: "2b 30 2e 38 …  +0.8…", the first part padded.
inline constexpr std::size_t kBytesInARow = 16;
[[nodiscard]] std::string hexRow(std::span<const std::uint8_t> bytes);

} // namespace stillwire
