// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/encode.hpp"

#include "core/base/sentence.hpp"
#include "meters/decode/segments.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace stillwire {

namespace {

using Bytes = std::vector<std::uint8_t>;

Bytes bytesOf(const std::string& text) { return {text.begin(), text.end()}; }

bool silent(const Reading& reading) {
    return !reading.hasNumber() && !reading.flags.has(Flag::overload) && !reading.flags.has(Flag::unit);
}

Bytes textLine(const Reading& reading, int decimals, bool decimalComma) {
    if (silent(reading)) return {};
    std::string line;
    if (reading.flags.has(Flag::unit))
        line = "0.00 Ohm";
    else if (reading.flags.has(Flag::overload))
        line = "OL V DC";
    else
        line = (reading.volts_V < 0 ? "" : "+") + plain(reading.volts_V, decimals) + " V DC";
    if (decimalComma) std::replace(line.begin(), line.end(), '.', ',');
    if (reading.flags.has(Flag::hold)) line += " HOLD";
    if (reading.flags.has(Flag::autorange)) line += " AUTO";
    if (reading.flags.has(Flag::lowbat)) line += " LOBAT";
    return bytesOf(line + "\r\n");
}

Bytes scpiReply(const Reading& reading) {
    if (reading.flags.has(Flag::overload)) return bytesOf("+9.90000000E+37\n");
    if (!reading.hasNumber()) return bytesOf("+9.91000000E+37\n");
    std::array<char, 40> text{};
    std::snprintf(text.data(), text.size(), "%+.8E\n", reading.volts_V);
    return bytesOf(text.data());
}

using Nibbles = std::array<std::uint8_t, kSegmentFrame>;

void light(Nibbles& frame, SegmentBit bit) {
    frame[bit.byte] = static_cast<std::uint8_t>(frame[bit.byte] | bit.mask);
}

void putSegments(Nibbles& frame, std::size_t digit, std::uint8_t segments) {
    frame[1 + 2 * digit] = static_cast<std::uint8_t>(frame[1 + 2 * digit] | segments >> 4);
    frame[2 + 2 * digit] = static_cast<std::uint8_t>(frame[2 + 2 * digit] | (segments & 0xF));
}

// Four digits and a point; false: too large for the display.
bool putNumber(Nibbles& frame, double volts_V, int decimals) {
    const bool milli = decimals > 3;
    double shown = std::abs(volts_V) * (milli ? 1e3 : 1.0);
    int places = std::min(milli ? decimals - 3 : decimals, 3);
    while (places > 0 && std::llround(shown * std::pow(10.0, places)) > 9999) --places;
    const long long count = std::llround(shown * std::pow(10.0, places));
    if (count > 9999) return milli ? putNumber(frame, volts_V, 3) : false;
    if (milli) light(frame, lcd::milli);
    if (volts_V < 0 && count > 0) light(frame, lcd::minus);
    if (places > 0) light(frame, lcd::point[static_cast<std::size_t>(3 - places)]);
    long long rest = count;
    for (std::size_t digit = kSegmentDigits; digit-- > 0; rest /= 10)
        putSegments(frame, digit, kDigitSegments[static_cast<std::size_t>(rest % 10)]);
    return true;
}

Bytes segmentFrame(const Reading& reading, int decimals) {
    Nibbles frame{};
    light(frame, lcd::rs232);
    if (reading.flags.has(Flag::unit)) {
        light(frame, lcd::ohm);
        putNumber(frame, 0, 2);
    } else {
        light(frame, lcd::dc);
        light(frame, lcd::volt);
        const bool fits = reading.hasNumber() && putNumber(frame, reading.volts_V, decimals);
        if (reading.flags.has(Flag::overload) || (reading.hasNumber() && !fits)) {
            putSegments(frame, 1, kDigitSegments[0]);
            putSegments(frame, 2, kLetterL);
        }
    }
    if (reading.flags.has(Flag::hold)) light(frame, lcd::hold);
    if (reading.flags.has(Flag::autorange)) light(frame, lcd::autoRange);
    if (reading.flags.has(Flag::lowbat)) light(frame, lcd::lowBattery);
    Bytes out;
    for (std::size_t i = 0; i < kSegmentFrame; ++i) out.push_back(static_cast<std::uint8_t>((i + 1) << 4 | frame[i]));
    return out;
}

// A character that means DC volts, or one that does not.
char functionCharacter(const AsciiLayout& layout, bool dcVolts) {
    if (dcVolts && !layout.dcVolts.empty()) return layout.dcVolts.front();
    char other = '0';
    while (!dcVolts && layout.dcVolts.find(other) != std::string::npos) ++other;
    return other;
}

void setBit(std::string& text, const AsciiLayout& layout, AsciiMeaning meaning) {
    for (const AsciiBit& bit : layout.bits)
        if (bit.means == meaning) {
            char& c = text[static_cast<std::size_t>(bit.at - 1)];
            c = static_cast<char>(static_cast<unsigned char>(c) | bit.mask);
        }
}

// The finest range that holds the number, no finer than the resolution; nothing if none does.
std::optional<std::pair<char, int>> rangeFor(const AsciiLayout& layout, double volts_V, int decimals) {
    const double most = std::pow(10.0, layout.digits) - 0.5;
    if (layout.rangeAt == 0) {
        if (std::abs(volts_V) / std::pow(10.0, layout.exponent10) >= most) return std::nullopt;
        return std::pair{'0', layout.exponent10};
    }
    std::optional<std::pair<char, int>> best;
    for (const auto& [character, exponent] : layout.rangeExponent10) {
        const bool holds = std::abs(volts_V) / std::pow(10.0, exponent) < most;
        if (holds && exponent >= -decimals && (!best || exponent < best->second))
            best = std::pair{character, exponent};
    }
    return best;
}

Bytes asciiFrame(const AsciiLayout& layout, const Reading& reading, int decimals) {
    if (silent(reading)) return {};
    std::string text(static_cast<std::size_t>(layout.length), '0');
    const bool unit = reading.flags.has(Flag::unit);
    const auto range = rangeFor(layout, reading.hasNumber() ? reading.volts_V : 0, decimals);
    if (layout.rangeAt > 0)
        text[static_cast<std::size_t>(layout.rangeAt - 1)] =
            range ? range->first : layout.rangeExponent10.begin()->first;
    if (layout.functionAt > 0)
        text[static_cast<std::size_t>(layout.functionAt - 1)] = functionCharacter(layout, !unit);
    const bool number = reading.hasNumber() && range && !unit;
    if (number) {
        std::array<char, 32> digits{};
        const long long count = std::llround(std::abs(reading.volts_V) / std::pow(10.0, range->second));
        std::snprintf(digits.data(), digits.size(), "%0*lld", layout.digits, count);
        text.replace(static_cast<std::size_t>(layout.digitsAt - 1), static_cast<std::size_t>(layout.digits),
                     digits.data());
        if (reading.volts_V < 0) setBit(text, layout, AsciiMeaning::minus);
    }
    if (!number && !unit) setBit(text, layout, AsciiMeaning::overload);
    if (unit && layout.functionAt == 0) setBit(text, layout, AsciiMeaning::ac);
    if (reading.flags.has(Flag::hold)) setBit(text, layout, AsciiMeaning::hold);
    if (reading.flags.has(Flag::autorange)) setBit(text, layout, AsciiMeaning::autorange);
    if (reading.flags.has(Flag::lowbat)) setBit(text, layout, AsciiMeaning::lowbat);
    return bytesOf(text + "\r\n");
}

} // namespace

int decimalsOf(double resolution_V) {
    int decimals = 0;
    for (double step = 1.0; step > resolution_V * 1.0000001 && decimals < 6; step /= 10) ++decimals;
    return decimals;
}

Bytes encodeFrame(const FrameSettings& frame, const Reading& reading, double resolution_V) {
    const int decimals = decimalsOf(resolution_V);
    switch (frame.kind) {
    case FrameKind::text:
    case FrameKind::polled: return textLine(reading, decimals, frame.decimalComma);
    case FrameKind::scpi: return scpiReply(reading);
    case FrameKind::segments: return segmentFrame(reading, decimals);
    case FrameKind::ascii: return asciiFrame(frame.ascii, reading, decimals);
    }
    return {};
}

} // namespace stillwire
