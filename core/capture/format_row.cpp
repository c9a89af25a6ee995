// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/writer.hpp"

#include <charconv>
#include <cmath>

namespace stillwire {

std::string formatVolts(double volts_V) {
    if (!std::isfinite(volts_V)) return {};
    if (volts_V == 0) return "0"; // a meter's "-0.000" is no other reading than 0
    char buffer[400];
    // Fixed notation while it is shorter to read; the far ends of the double range would fill a line with zeros.
    const double size = std::abs(volts_V);
    const bool plainRange = size >= 1e-9 && size < 1e12;
    const auto form = plainRange ? std::chars_format::fixed : std::chars_format::general;
    return {buffer, std::to_chars(buffer, buffer + sizeof buffer, volts_V, form).ptr};
}

std::string formatTime(Time time) {
    const std::int64_t microseconds = time.count();
    const std::int64_t size = microseconds < 0 ? -microseconds : microseconds;
    std::string text = (microseconds < 0 ? "-" : "") + std::to_string(size / 1'000'000);
    std::int64_t fraction = size % 1'000'000;
    if (fraction == 0) return text;
    std::string digits = std::to_string(fraction + 1'000'000).substr(1);
    digits.erase(digits.find_last_not_of('0') + 1);
    return text + "." + digits;
}

std::string formatRow(const Reading& reading) {
    ReadingFlags flags = reading.flags;
    const std::string volts = formatVolts(reading.volts_V);
    // The format wants a reason beside a missing number; a decoder that knows none saw something other than volts.
    if (volts.empty() && flags.none()) flags = Flag::unit;
    return formatTime(reading.time) + "," + volts + "," + flags.text() + ",\n";
}

std::string formatRow(const Mark& mark) {
    std::string text = mark.text();
    if (text.find_first_of(",\"\n\r") != std::string::npos ||
        (!text.empty() && (text.front() == ' ' || text.back() == ' '))) {
        std::string quoted = "\"";
        for (const char c : text) {
            if (c == '"') quoted += '"';
            quoted += c;
        }
        text = quoted + "\"";
    }
    return formatTime(mark.time) + ",,," + text + "\n";
}

} // namespace stillwire
