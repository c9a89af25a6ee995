// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/ascii_decoder.hpp"

#include "meters/decode/decimal.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

char at(std::string_view text, int position) { return text[static_cast<std::size_t>(position - 1)]; }

struct StatusBits {
    bool minus = false, overload = false;
    NotVolts because = NotVolts::unsaid;
    ReadingFlags flags;
};

StatusBits statusOf(std::string_view text, const AsciiLayout& layout) {
    StatusBits out;
    for (const AsciiBit& bit : layout.bits) {
        if ((static_cast<unsigned char>(at(text, bit.at)) & bit.mask) == 0) continue;
        switch (bit.means) {
        case AsciiMeaning::minus: out.minus = true; break;
        case AsciiMeaning::overload: out.overload = true; break;
        case AsciiMeaning::lowbat: out.flags |= Flag::lowbat; break;
        case AsciiMeaning::hold: out.flags |= Flag::hold; break;
        case AsciiMeaning::autorange: out.flags |= Flag::autorange; break;
        case AsciiMeaning::ac: out.because = NotVolts::alternating; break;
        case AsciiMeaning::relative: out.because = NotVolts::relative; break;
        case AsciiMeaning::lowImpedance: out.because = NotVolts::lowImpedance; break;
        }
    }
    return out;
}

} // namespace

Sentence AsciiDecoder::line(std::string_view text, Time arrived, std::vector<Reading>& out) {
    if (text.size() != static_cast<std::size_t>(layout_.length))
        return {"a frame of %1 characters in place of %2",
                {std::to_string(text.size()), std::to_string(layout_.length)}};
    if (std::any_of(text.begin(), text.end(), [](char c) { return c < 0x20 || c == 0x7F; })) // signed: also over 0x7F
        return {"not text: %1; check the baud rate and the bits", {quoteLine(text)}};
    const StatusBits status = statusOf(text, layout_);
    Reading reading{.time = arrived, .flags = status.flags};
    const bool otherFunction =
        layout_.functionAt > 0 && layout_.dcVolts.find(at(text, layout_.functionAt)) == std::string::npos;
    int exponent = layout_.exponent10;
    if (layout_.rangeAt > 0) {
        const auto range = layout_.rangeExponent10.find(at(text, layout_.rangeAt));
        if (range != layout_.rangeExponent10.end())
            exponent = range->second;
        else if (!otherFunction)
            return {"a range character that the layout does not list: %1", {quoteLine(text)}};
    }
    const std::string_view digits =
        text.substr(static_cast<std::size_t>(layout_.digitsAt - 1), static_cast<std::size_t>(layout_.digits));
    if (otherFunction || status.because != NotVolts::unsaid) {
        notVolts_ = status.because;
        reading.flags |= Flag::unit;
    } else if (status.overload) {
        reading.flags |= Flag::overload;
    } else {
        const bool all = std::all_of(digits.begin(), digits.end(), [](char c) { return c >= '0' && c <= '9'; });
        const auto value =
            all ? parseDecimal((status.minus ? "-" : "") + std::string(digits), exponent) : std::nullopt;
        if (!value || !(std::abs(*value) < kLargestVolts_V)) return {"no number in %1", {quoteLine(text)}};
        reading.volts_V = *value;
    }
    out.push_back(reading);
    return {};
}

} // namespace stillwire
