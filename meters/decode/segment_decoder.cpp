// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/segment_decoder.hpp"

#include "meters/decode/decimal.hpp"

namespace stillwire {

namespace {

using Frame = std::array<std::uint8_t, kSegmentFrame>; // low nibbles

bool lit(const Frame& frame, SegmentBit bit) { return (frame[bit.byte] & bit.mask) != 0; }

std::uint8_t segmentsOf(const Frame& frame, std::size_t digit) {
    return static_cast<std::uint8_t>((frame[1 + 2 * digit] & 0x7) << 4 | frame[2 + 2 * digit]);
}

ReadingFlags flagsOf(const Frame& frame) {
    ReadingFlags flags;
    if (lit(frame, lcd::hold)) flags |= Flag::hold;
    if (lit(frame, lcd::autoRange)) flags |= Flag::autorange;
    if (lit(frame, lcd::lowBattery)) flags |= Flag::lowbat;
    return flags;
}

bool isDcVolts(const Frame& frame) {
    for (const SegmentBit other :
         {lcd::ac, lcd::diode, lcd::beep, lcd::percent, lcd::farad, lcd::ohm, lcd::ampere, lcd::hertz, lcd::relative})
        if (lit(frame, other)) return false;
    return lit(frame, lcd::volt) && lit(frame, lcd::dc);
}

// Volts per unit shown; nothing if two prefixes are lit, or one that volts never have.
std::optional<int> exponentOf(const Frame& frame) {
    if (lit(frame, lcd::nano) || lit(frame, lcd::mega)) return std::nullopt;
    const int count = lit(frame, lcd::micro) + lit(frame, lcd::milli) + lit(frame, lcd::kilo);
    if (count > 1) return std::nullopt;
    return lit(frame, lcd::micro) ? -6 : lit(frame, lcd::milli) ? -3 : lit(frame, lcd::kilo) ? 3 : 0;
}

enum class Shows { number, overload, blank, nothing };

struct Display {
    Shows shows = Shows::nothing;
    std::string number; // as NRf text
};

// One character for each digit: a figure, 'L', ' ' or '?' for segments that form none of these.
std::string charactersOf(const Frame& frame) {
    std::string out;
    for (std::size_t digit = 0; digit < kSegmentDigits; ++digit) {
        const std::uint8_t segments = segmentsOf(frame, digit);
        const auto value = digitOf(segments);
        out += value ? static_cast<char>('0' + *value) : segments == kBlank ? ' ' : segments == kLetterL ? 'L' : '?';
    }
    return out;
}

Display displayOf(const Frame& frame) {
    const std::string characters = charactersOf(frame);
    if (characters == "    ") return {Shows::blank, {}};
    if (characters.find('L') != std::string::npos) {
        // "0L" and its like; an L among figures is damage.
        const bool alone = characters.find_first_not_of(" 0L") == std::string::npos;
        return {alone && characters.find('L') == characters.rfind('L') ? Shows::overload : Shows::nothing, {}};
    }
    const std::size_t first = characters.find_first_not_of(' ');
    if (characters.find_first_not_of("0123456789", first) != std::string::npos) return {};
    std::string number;
    int points = 0;
    for (std::size_t digit = 0; digit < kSegmentDigits; ++digit) {
        if (digit > 0 && lit(frame, lcd::point[digit - 1])) {
            if (digit < first || ++points > 1) return {};
            number += '.';
        }
        if (digit >= first) number += characters[digit];
    }
    return {Shows::number, number};
}

} // namespace

void SegmentDecoder::drop(std::size_t bytes, Sentence why) {
    if (bytes == 0) return;
    dropped_ += bytes;
    complaint_ = std::move(why);
}

void SegmentDecoder::push(std::span<const std::uint8_t> bytes, Time arrived, std::vector<Reading>& out) {
    for (const std::uint8_t byte : bytes) {
        const std::size_t index = byte >> 4;
        if (index != filled_ + 1) {
            drop(filled_, "bytes of a frame are missing");
            filled_ = 0;
            if (index != 1) {
                drop(1, "bytes that are no LCD-segment frame: check baud rate and kind");
                continue;
            }
        }
        frame_[filled_++] = byte & 0x0F;
        if (filled_ == kSegmentFrame) {
            filled_ = 0;
            frame(arrived, out);
        }
    }
}

void SegmentDecoder::frame(Time arrived, std::vector<Reading>& out) {
    Reading reading{.time = arrived, .flags = flagsOf(frame_)};
    if (!isDcVolts(frame_)) {
        // Only the annunciators matter: a display in ohms is none of ours, whole or not.
        reading.flags |= Flag::unit;
        notVolts_ = lit(frame_, lcd::relative) ? NotVolts::relative
                    : lit(frame_, lcd::ac)     ? NotVolts::alternating
                                               : NotVolts::unsaid;
        out.push_back(reading);
        return;
    }
    const Display display = displayOf(frame_);
    const auto exponent = exponentOf(frame_);
    if (display.shows == Shows::overload) reading.flags |= Flag::overload;
    if (display.shows == Shows::blank) reading.flags |= Flag::autorange; // between two ranges the figures go out
    if (display.shows == Shows::number && exponent) {
        const auto volts = parseDecimal((lit(frame_, lcd::minus) ? "-" : "") + display.number, *exponent);
        if (volts) reading.volts_V = *volts;
    }
    if (!exponent || (!reading.hasNumber() && (display.shows == Shows::number || display.shows == Shows::nothing))) {
        drop(kSegmentFrame, "a display that shows no number: a frame was damaged");
        return;
    }
    out.push_back(reading);
}

void SegmentDecoder::reset() {
    dropped_ += filled_;
    filled_ = 0;
}

} // namespace stillwire
