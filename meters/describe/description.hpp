// SPDX-License-Identifier: GPL-3.0-or-later
// A meter description: what the judgement needs (MeterTraits), how to talk to the meter, what its frames look like.
#pragma once

#include "core/base/result.hpp"
#include "core/base/time.hpp"
#include "core/sheet/meter_traits.hpp"

#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

class Decoder; // meters/decode/decoder.hpp

enum class Parity { none, odd, even };
enum class FlowControl { none, hardware, software };

// [link]. Lines are raised by default: some adapters take their power from them.
struct LinkSettings {
    int baud = 9600;
    int bits = 8; // 7 or 8
    Parity parity = Parity::none;
    int stopBits = 1;
    FlowControl flow = FlowControl::none;
    bool dtr = true;
    bool rts = true;
    std::string pollCommand; // with its line end; empty: the meter sends by itself
    Time pollInterval{0};    // from one poll to the next; 0: interval_s
    // Asked once after the start-up commands, and the second also when a poll was not answered. Of a polled scpi
    // meter
    // `*IDN?` and `SYST:ERR?` unless the description says otherwise; empty: not asked.
    std::string identifyCommand, errorCommand;
    std::vector<std::string> startCommands; // sent once after opening, each with its line end
    std::vector<std::string> leaveCommands; // hand the front panel back
};

enum class FrameKind { text, scpi, segments, ascii, polled };
[[nodiscard]] const char* frameKindName(FrameKind kind);

// What one bit of one character of a fixed-length frame means.
enum class AsciiMeaning { minus, overload, lowbat, hold, autorange, ac, relative, lowImpedance };
struct AsciiBit {
    int at = 1; // position of the character, the first is 1
    unsigned mask = 0;
    AsciiMeaning means = AsciiMeaning::minus;
};

// Fixed-length ASCII digits. Positions count from 1; 0: the frame has no such character.
struct AsciiLayout {
    int length = 0; // characters of a frame without its line end
    int digitsAt = 0, digits = 0;
    int rangeAt = 0;
    std::map<char, int> rangeExponent10; // volts = digits · 10^exponent
    int exponent10 = 0;                  // used if rangeAt is 0
    int functionAt = 0;
    std::string dcVolts; // the function characters that mean DC volts
    std::vector<AsciiBit> bits;
};

// [frame].
struct FrameSettings {
    FrameKind kind = FrameKind::text;
    std::string
        pattern; // RE2 with the named groups value, unit, function, flags; empty: the first number in the line
    bool decimalComma = false;
    AsciiLayout ascii; // of kind ascii
};

struct MeterDescription {
    MeterTraits traits;
    LinkSettings link;
    FrameSettings frame;
};

// [link] and [frame] may be absent or partial: the defaults above. Errors name `where`, the line and the mend: what
// parseMeterTraits refuses, a value out of its range, a pattern that RE2 does not take or that lacks the group
// `value`.
[[nodiscard]] Result<MeterDescription> parseMeterDescription(std::string_view toml, const std::string& where);

// Precondition: the description came from parseMeterDescription, or has no pattern.
[[nodiscard]] std::unique_ptr<Decoder> makeDecoder(const MeterDescription& description);

} // namespace stillwire
