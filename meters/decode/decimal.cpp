// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/decimal.hpp"

#include <charconv>
#include <string>

namespace stillwire {

namespace {

constexpr std::size_t kLongest = 64; // longer than any instrument writes

bool isDigit(char c) { return c >= '0' && c <= '9'; }

std::size_t skipDigits(std::string_view text, std::size_t at) {
    while (at < text.size() && isDigit(text[at])) ++at;
    return at;
}

// Where the mantissa (sign, digits, point) ends; 0 if there is none.
std::size_t mantissaLength(std::string_view text) {
    std::size_t at = !text.empty() && (text[0] == '+' || text[0] == '-') ? 1 : 0;
    const std::size_t whole = skipDigits(text, at);
    std::size_t digits = whole - at;
    at = whole;
    if (at < text.size() && text[at] == '.') {
        const std::size_t end = skipDigits(text, at + 1);
        digits += end - at - 1;
        at = end;
    }
    return digits > 0 ? at : 0;
}

} // namespace

std::size_t decimalLength(std::string_view text) {
    const std::size_t mantissa = mantissaLength(text);
    if (mantissa == 0 || mantissa >= text.size() || (text[mantissa] != 'e' && text[mantissa] != 'E')) return mantissa;
    std::size_t at = mantissa + 1;
    if (at < text.size() && (text[at] == '+' || text[at] == '-')) ++at;
    const std::size_t end = skipDigits(text, at);
    return end > at ? end : mantissa;
}

std::optional<double> parseDecimal(std::string_view text, int shift10) {
    if (text.empty() || text.size() > kLongest || decimalLength(text) != text.size()) return std::nullopt;
    const std::size_t mantissa = mantissaLength(text);
    int exponent = 0;
    if (mantissa < text.size()) {
        std::string_view digits = text.substr(mantissa + 1);
        if (digits.front() == '+') digits.remove_prefix(1); // from_chars knows no plus
        if (std::from_chars(digits.data(), digits.data() + digits.size(), exponent).ec != std::errc{})
            return std::nullopt;
        if (exponent < -1000 || exponent > 1000) return std::nullopt;
    }
    const std::string_view number =
        text.substr(text.front() == '+' ? 1 : 0, mantissa - (text.front() == '+' ? 1 : 0));
    const std::string shifted = std::string(number) + "e" + std::to_string(exponent + shift10);
    double value = 0;
    const auto parsed = std::from_chars(shifted.data(), shifted.data() + shifted.size(), value);
    if (parsed.ec != std::errc{} || parsed.ptr != shifted.data() + shifted.size()) return std::nullopt;
    return value == 0 ? 0.0 : value;
}

} // namespace stillwire
