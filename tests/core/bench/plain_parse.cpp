// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/bench/plain_parse.hpp"

#include "core/capture/writer.hpp"

#include <array>
#include <charconv>
#include <cstring>

namespace stillwire {

std::string benchCapture(std::size_t rows) {
    CaptureHeader header;
    std::string text = formatHeader(header) + kColumns;
    std::uint64_t noise = 12345;
    for (std::size_t i = 0; i < rows; ++i) {
        noise = noise * 6364136223846793005ULL + 1442695040888963407ULL;
        const auto microseconds = static_cast<std::int64_t>(i * 333'333 + (noise >> 50));
        const double volts = static_cast<double>(4497 + static_cast<int>((noise >> 40) % 7)) / 1000.0;
        text += formatRow(Reading{Time(microseconds), volts, {}});
    }
    return text;
}

namespace {

constexpr std::array<double, 10> kTenths = {1, 1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9};

// Digits with a point, up to the byte that is neither.
inline double take(const char*& p) {
    std::uint64_t value = 0;
    unsigned d = 0;
    while ((d = static_cast<unsigned char>(*p) - unsigned{'0'}) < 10) {
        value = value * 10 + d;
        ++p;
    }
    if (*p != '.') return static_cast<double>(static_cast<std::int64_t>(value));
    const char* point = p++;
    while ((d = static_cast<unsigned char>(*p) - unsigned{'0'}) < 10) {
        value = value * 10 + d;
        ++p;
    }
    return static_cast<double>(static_cast<std::int64_t>(value)) * kTenths[static_cast<std::size_t>(p - point - 1)];
}

const char* firstRow(const std::string& text) { return text.data() + text.find(kColumns) + std::strlen(kColumns); }

} // namespace

double plainParse(const std::string& text) {
    double sum = 0;
    const char* p = firstRow(text);
    const char* end = text.data() + text.size();
    while (p < end) {
        sum += take(p);
        ++p; // the comma
        sum += take(p);
        p += 3; // two commas and the end
    }
    return sum;
}

double plainParseFromChars(const std::string& text) {
    double sum = 0, value = 0;
    const char* p = firstRow(text);
    const char* end = text.data() + text.size();
    while (p < end) {
        p = std::from_chars(p, end, value).ptr + 1;
        sum += value;
        p = std::from_chars(p, end, value).ptr + 3;
        sum += value;
    }
    return sum;
}

} // namespace stillwire
