// SPDX-License-Identifier: GPL-3.0-or-later
// The plain row, `12.345678,4.123,,` or `12.345678,4.123`, in one pass over its bytes. Everything else, however
// valid, is left to the slow way; both give the same reading.
#pragma once

#include "core/base/time.hpp"

#include <array>
#include <cstddef>
#include <cstdint>

namespace stillwire::plain_row {

// No plain row is longer: 9 + 1 + 6 + 1 + 1 + 16 + 3 + 2 bytes. With as many behind it no byte needs a bounds check.
inline constexpr std::ptrdiff_t kLongest = 40;

// Exact in a double, so that an exact integer below 2^53 divided by one of them is rounded once, as strtod would:
// Clinger 1990, "How to read floating point numbers accurately", section 1.
inline constexpr std::array<double, 17> kPowers = {1e0, 1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7, 1e8,
                                                   1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16};
inline constexpr std::array<std::int64_t, 7> kMicroseconds = {1'000'000, 100'000, 10'000, 1'000, 100, 10, 1};

[[nodiscard]] inline unsigned digit(const char* p) { return static_cast<unsigned char>(*p) - unsigned{'0'}; }

// Fills time and volts and returns the byte after the '\n', or null if the row is not plain. `commas`: how many
// follow the volts. Precondition: kLongest readable bytes from p on.
[[nodiscard]] inline const char* parse(const char* p, int commas, Time& time, double& volts_V) {
    std::uint64_t whole = 0;
    const char* start = p;
    unsigned d = digit(p);
    for (; d < 10; d = digit(++p)) whole = whole * 10 + d;
    std::ptrdiff_t digits = p - start;
    if (digits == 0 || digits > 9) return nullptr;
    std::uint64_t microseconds = whole * 1'000'000;
    if (*p == '.') {
        std::uint64_t fraction = 0;
        start = ++p;
        for (d = digit(p); d < 10; d = digit(++p)) fraction = fraction * 10 + d;
        digits = p - start;
        if (digits == 0 || digits > 6) return nullptr;
        microseconds += fraction * static_cast<std::uint64_t>(kMicroseconds[static_cast<std::size_t>(digits)]);
    }
    if (*p != ',') return nullptr;
    ++p;
    const bool negative = *p == '-';
    if (negative) ++p;
    std::uint64_t mantissa = 0;
    std::size_t decimals = 0;
    start = p;
    for (d = digit(p); d < 10; d = digit(++p)) mantissa = mantissa * 10 + d;
    digits = p - start;
    if (digits == 0 || digits > 6) return nullptr; // up to 999999 V: larger ones are refused the slow way
    if (*p == '.') {
        start = ++p;
        for (d = digit(p); d < 10; d = digit(++p)) mantissa = mantissa * 10 + d;
        decimals = static_cast<std::size_t>(p - start);
        digits += p - start;
        if (decimals == 0 || digits > 15) return nullptr; // 999'999'999'999'999 is below 2^53
    }
    for (int i = 0; i < commas; ++i, ++p) {
        if (*p != ',') return nullptr;
    }
    if (*p == '\r') ++p;
    if (*p != '\n') return nullptr;
    const double size_V = static_cast<double>(static_cast<std::int64_t>(mantissa)) / kPowers[decimals];
    volts_V = negative ? -size_V : size_V;
    time = Time(static_cast<std::int64_t>(microseconds));
    return p + 1;
}

} // namespace stillwire::plain_row
