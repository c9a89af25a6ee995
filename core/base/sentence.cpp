// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/sentence.hpp"

#include <charconv>
#include <cmath>

namespace stillwire {

std::string fill(const std::string& pattern, const std::vector<std::string>& arguments) {
    std::string out;
    out.reserve(pattern.size() + 32);
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        const char c = pattern[i];
        const char next = i + 1 < pattern.size() ? pattern[i + 1] : '\0';
        if (c == '%' && next == '%') {
            out += '%';
            ++i;
        } else if (c == '%' && next >= '1' && next <= '9' &&
                   static_cast<std::size_t>(next - '1') < arguments.size()) {
            out += arguments[static_cast<std::size_t>(next - '1')];
            ++i;
        } else {
            out += c;
        }
    }
    return out;
}

std::string Sentence::english() const {
    std::vector<std::string> filled;
    filled.reserve(arguments.size());
    for (const Argument& a : arguments)
        filled.push_back(a.kind == Argument::Kind::sentence ? a.sentence.front().english() : a.text);
    return fill(pattern, filled);
}

Argument byName(std::string text) {
    Argument made(std::move(text));
    made.kind = Argument::Kind::name;
    return made;
}

Sentence verbatim(std::string text) { return {"%1", {std::move(text)}}; }

std::string plain(double value, int decimals) {
    // Not printf: a program with a window takes on the desktop's locale, and with it another decimal sign.
    char buffer[512]; // the longest double has 309 digits before the point
    const auto end = std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals).ptr;
    std::string text(buffer, end);
    // "-0.00" reads as a fault that is not there.
    if (text.find_first_not_of("-0.") == std::string::npos && text.front() == '-') text.erase(0, 1);
    return text;
}

std::string volts(double value_V, int decimals) { return plain(value_V, decimals) + " V"; }

std::string seconds(double value_s) {
    return plain(value_s, std::abs(value_s) < 0.095 ? 2 : (std::abs(value_s) < 9.95 ? 1 : 0)) + " s";
}

std::string secondsAtMost(double value_s) { return plain(std::ceil(100 * value_s - 1e-9) / 100, 2) + " s"; }

std::string percentAtMost(double share) { return plain(std::ceil(100 * share - 1e-9), 0) + " %"; }

} // namespace stillwire
