// SPDX-License-Identifier: GPL-3.0-or-later
// 14 bytes of LCD segments: a common meter chip's display frame, layout from memory, unverified. Each byte carries
// its index 1..14 in the high nibble and four segments of the display in the low one.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>

namespace stillwire {

inline constexpr std::size_t kSegmentFrame = 14;
inline constexpr int kSegmentDigits = 4;

// Segments lit: byte index (0-based) and bit of the low nibble.
struct SegmentBit {
    std::size_t byte;
    std::uint8_t mask;
};
namespace lcd {
inline constexpr SegmentBit ac{0, 8}, dc{0, 4}, autoRange{0, 2}, rs232{0, 1}, minus{1, 8};
inline constexpr std::array<SegmentBit, 3> point = {{{3, 8}, {5, 8}, {7, 8}}}; // before the 2nd, 3rd, 4th digit
inline constexpr SegmentBit micro{9, 8}, nano{9, 4}, kilo{9, 2}, diode{9, 1};
inline constexpr SegmentBit milli{10, 8}, percent{10, 4}, mega{10, 2}, beep{10, 1};
inline constexpr SegmentBit farad{11, 8}, ohm{11, 4}, relative{11, 2}, hold{11, 1};
inline constexpr SegmentBit ampere{12, 8}, volt{12, 4}, hertz{12, 2}, lowBattery{12, 1};
} // namespace lcd

// Seven segments of digit 0..3: bits e f a (first byte) d c g b (second byte), from the highest.
inline constexpr std::uint8_t kBlank = 0x00, kLetterL = 0x68;
inline constexpr std::array<std::uint8_t, 10> kDigitSegments = {0x7D, 0x05, 0x5B, 0x1F, 0x27,
                                                                0x3E, 0x7E, 0x15, 0x7F, 0x3F};

[[nodiscard]] constexpr std::optional<int> digitOf(std::uint8_t segments) {
    for (std::size_t i = 0; i < kDigitSegments.size(); ++i)
        if (kDigitSegments[i] == segments) return static_cast<int>(i);
    return std::nullopt;
}

} // namespace stillwire
