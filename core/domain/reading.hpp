// SPDX-License-Identifier: GPL-3.0-or-later
// A reading: made once, quantised once. Live, replay and import hand exactly this to the recorder and the analyser.
#pragma once

#include "core/base/time.hpp"

#include <cstdint>
#include <limits>
#include <string>
#include <string_view>

namespace stillwire {

// What came with a number, or instead of one. Bits of ReadingFlags. `unit` (not DC volts) is ours beside the five of
// the capture format.
enum class Flag : std::uint8_t { overload = 1, hold = 2, autorange = 4, lowbat = 8, ref = 16, unit = 32 };

class ReadingFlags {
public:
    constexpr ReadingFlags() = default;
    constexpr ReadingFlags(Flag flag) : bits_(static_cast<std::uint8_t>(flag)) {}
    [[nodiscard]] constexpr bool has(Flag flag) const { return (bits_ & static_cast<std::uint8_t>(flag)) != 0; }
    [[nodiscard]] constexpr bool none() const { return bits_ == 0; }
    constexpr ReadingFlags& operator|=(ReadingFlags other) {
        bits_ = static_cast<std::uint8_t>(bits_ | other.bits_);
        return *this;
    }
    friend constexpr ReadingFlags operator|(ReadingFlags a, ReadingFlags b) { return a |= b; }
    friend constexpr bool operator==(ReadingFlags, ReadingFlags) = default;

    [[nodiscard]] std::string text() const;                    // "hold lowbat", in the format's order
    [[nodiscard]] static ReadingFlags parse(std::string_view); // unknown words are ignored

private:
    std::uint8_t bits_ = 0;
};

// `time`: when the last byte of its frame arrived. `volts_V`: NaN if the meter gave no number.
struct Reading {
    Time time{0};
    double volts_V = std::numeric_limits<double>::quiet_NaN();
    ReadingFlags flags;

    [[nodiscard]] bool hasNumber() const { return volts_V == volts_V; }
};

} // namespace stillwire
