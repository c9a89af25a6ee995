// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/number.hpp"

#include <algorithm>
#include <charconv>

namespace stillwire {

namespace {

constexpr std::int64_t kMostMicroseconds = 100'000'000'000'000'000;
constexpr std::size_t kLongestNumber = 400; // digits enough for any double written in full

bool isDigit(char c) { return c >= '0' && c <= '9'; }

// Plain digits with at most one point, exactly; nothing where it does not fit and the double has to do.
std::optional<std::int64_t> exactMicroseconds(std::string_view digits, std::int64_t unit) {
    std::int64_t whole = 0;
    std::size_t i = 0;
    for (; i < digits.size() && isDigit(digits[i]); ++i) {
        if (whole > kMostMicroseconds / 10) return std::nullopt;
        whole = whole * 10 + (digits[i] - '0');
    }
    if (i == 0 || whole > kMostMicroseconds / unit) return std::nullopt;
    const std::int64_t total = whole * unit;
    if (i == digits.size()) return total;
    if (digits[i] != '.') return std::nullopt;
    // A unit is a small figure times a power of ten, 864 · 10^8 for a day: fifteen decimals of it still fit, and
    // further ones change nothing.
    std::int64_t figure = unit, fraction = 0, scale = 1;
    while (figure % 10 == 0) figure /= 10;
    for (++i; i < digits.size(); ++i) {
        if (!isDigit(digits[i])) return std::nullopt;
        if (scale >= 1'000'000'000'000'000) continue;
        fraction = fraction * 10 + (digits[i] - '0');
        scale *= 10;
    }
    std::int64_t power = unit / figure;
    const std::int64_t shared = std::min(power, scale);
    power /= shared;
    scale /= shared;
    return total + (fraction * figure * power + scale / 2) / scale;
}

} // namespace

std::string_view trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::optional<double> parseNumber(std::string_view text, int exponent) {
    if (!text.empty() && text.front() == '+') text.remove_prefix(1);
    if (text.empty() || text.size() > kLongestNumber) return std::nullopt;
    // from_chars also takes "inf", "nan" and a second sign; none of these is a number here.
    const char first = text.front() == '-' && text.size() > 1 ? text[1] : text.front();
    if (!isDigit(first) && first != '.') return std::nullopt;
    double value = 0;
    const auto whole = [&](std::string_view t) {
        const auto [end, status] = std::from_chars(t.data(), t.data() + t.size(), value);
        return end == t.data() + t.size() && status == std::errc();
    };
    if (exponent == 0) {
        if (!whole(text)) return std::nullopt;
        return value;
    }
    // The exponent goes into the text, so that "812.5" millivolts are rounded once.
    int own = 0;
    const std::size_t e = text.find_first_of("eE");
    if (e != std::string_view::npos) {
        std::string_view digits = text.substr(e + 1);
        if (!digits.empty() && digits.front() == '+') digits.remove_prefix(1);
        const auto [end, status] = std::from_chars(digits.data(), digits.data() + digits.size(), own);
        if (end != digits.data() + digits.size() || status != std::errc() || own > 1000 || own < -1000) {
            return std::nullopt;
        }
    }
    if (!whole(std::string(text.substr(0, e)) + "e" + std::to_string(own + exponent))) return std::nullopt;
    return value;
}

std::optional<Time> parseTime(std::string_view text, std::int64_t unit) {
    const bool negative = !text.empty() && text.front() == '-';
    if (const auto exact = exactMicroseconds(negative ? text.substr(1) : text, unit)) {
        return Time(negative ? -*exact : *exact);
    }
    const auto value = parseNumber(text);
    if (!value) return std::nullopt;
    const double microseconds = *value * static_cast<double>(unit);
    if (!(std::abs(microseconds) < static_cast<double>(kMostMicroseconds))) return std::nullopt;
    return Time(std::llround(microseconds));
}

} // namespace stillwire
