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

// A status character whose bits are those of a seven-bit printable character: 0x30 and four bits.
inline AsciiLayout layout() {
    AsciiLayout out;
    out.length = 9;
    out.rangeAt = 1;
    out.rangeExponent10 = {{'0', -4}, {'1', -3}, {'2', -2}};
    out.digitsAt = 2;
    out.digits = 5;
    out.functionAt = 7;
    out.dcVolts = ";";
    out.bits = {{8, 1, AsciiMeaning::overload}, {8, 2, AsciiMeaning::lowbat},    {8, 4, AsciiMeaning::minus},
                {9, 1, AsciiMeaning::hold},     {9, 2, AsciiMeaning::autorange}, {9, 4, AsciiMeaning::ac},
                {9, 8, AsciiMeaning::relative}};
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
