// SPDX-License-Identifier: GPL-3.0-or-later
// What the decoder tests share: one description of each frame kind, and readings from bytes cut in any way.
#pragma once

#include "meters/decode/ascii_decoder.hpp"
#include "meters/decode/encode.hpp"
#include "meters/decode/scpi_decoder.hpp"
#include "meters/decode/segment_decoder.hpp"
#include "meters/decode/text_decoder.hpp"

#include <cstdint>
#include <initializer_list>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire::frames {

using Bytes = std::vector<std::uint8_t>;

inline Bytes bytes(std::string_view text) { return {text.begin(), text.end()}; }

// The invented layout of resources/meters/ascii-digit-meter.toml: states are four bits over 0x30, which can be
// printed.
inline AsciiLayout layout() {
    AsciiLayout out;
    out.length = 10;
    out.functionAt = 3;
    out.dcVolts = "D";
    out.rangeAt = 4;
    out.rangeExponent10 = {{'j', -4}, {'k', -3}, {'m', -2}};
    out.digitsAt = 5;
    out.digits = 6;
    out.bits = {{1, 1, AsciiMeaning::minus},    {1, 2, AsciiMeaning::hold},         {1, 4, AsciiMeaning::overload},
                {1, 8, AsciiMeaning::relative}, {2, 1, AsciiMeaning::lowImpedance}, {2, 2, AsciiMeaning::ac},
                {2, 4, AsciiMeaning::lowbat},   {2, 8, AsciiMeaning::autorange}};
    return out;
}

inline FrameSettings settings(FrameKind kind) {
    FrameSettings out;
    out.kind = kind;
    if (kind == FrameKind::ascii) out.ascii = layout();
    return out;
}

inline std::unique_ptr<Decoder> decoder(FrameKind kind) {
    switch (kind) {
    case FrameKind::scpi: return std::make_unique<ScpiDecoder>();
    case FrameKind::segments: return std::make_unique<SegmentDecoder>();
    case FrameKind::ascii: return std::make_unique<AsciiDecoder>(layout());
    case FrameKind::text:
    case FrameKind::polled: break;
    }
    return std::make_unique<TextDecoder>(std::nullopt, false);
}

inline std::vector<Reading> decode(Decoder& decoder, const Bytes& in, Time arrived = Time(7)) {
    std::vector<Reading> out;
    decoder.push(in, arrived, out);
    return out;
}

inline std::vector<Reading> decode(FrameKind kind, const Bytes& in) {
    const auto made = decoder(kind);
    return decode(*made, in);
}

// The one reading of `line` and its end; fails the caller's expectations (NaN, no flag) if there is not exactly one.
inline Reading one(FrameKind kind, std::string_view line) {
    const auto out = decode(kind, bytes(std::string(line) + "\r\n"));
    return out.size() == 1 ? out.front() : Reading{};
}

inline constexpr FrameKind kKinds[] = {FrameKind::text, FrameKind::scpi, FrameKind::segments, FrameKind::ascii,
                                       FrameKind::polled};

} // namespace stillwire::frames
