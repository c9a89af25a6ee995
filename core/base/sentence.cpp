// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/sentence.hpp"

#include <cmath>
#include <cstdio>

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

std::string Sentence::english() const { return fill(pattern, arguments); }

std::string plain(double value, int decimals) {
    char buffer[64];
    std::snprintf(buffer, sizeof buffer, "%.*f", decimals, value);
    std::string text = buffer;
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
