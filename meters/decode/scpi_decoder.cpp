// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/scpi_decoder.hpp"

#include "meters/decode/decimal.hpp"
#include "meters/decode/scpi_answer.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kOverloadFrom = 9.895e37;
constexpr double kNotANumberFrom = 9.905e37;

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
    return text;
}

} // namespace

Sentence ScpiDecoder::line(std::string_view text, Time arrived, std::vector<Reading>& out) {
    const std::size_t before = out.size();
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find_first_of(",;", at), text.size());
        const auto value = parseDecimal(trimmed(text.substr(at, end - at)));
        // One field that is no number (an error queue entry, an identity) makes the whole line something else.
        Reading reading{.time = arrived, .flags = {}};
        if (!value || (std::abs(*value) >= kLargestVolts_V && std::abs(*value) < kOverloadFrom)) {
            out.resize(before);
            answer_ = parseScpiAnswer(trimmed(text));
            if (answer_) return {};
            return {"not a reading: %1", {quoteLine(text)}};
        }
        if (std::abs(*value) >= kNotANumberFrom)
            reading.flags = Flag::unit;
        else if (std::abs(*value) >= kOverloadFrom)
            reading.flags = Flag::overload;
        else
            reading.volts_V = *value;
        out.push_back(reading);
        at = end + 1;
    }
    return {};
}

} // namespace stillwire
