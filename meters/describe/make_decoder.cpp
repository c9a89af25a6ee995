// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/ascii_decoder.hpp"
#include "meters/decode/pattern.hpp"
#include "meters/decode/scpi_decoder.hpp"
#include "meters/decode/segment_decoder.hpp"
#include "meters/decode/text_decoder.hpp"
#include "meters/describe/description.hpp"

namespace stillwire {

const char* frameKindName(FrameKind kind) {
    switch (kind) {
    case FrameKind::text: return "text";
    case FrameKind::scpi: return "scpi";
    case FrameKind::segments: return "segments";
    case FrameKind::ascii: return "ascii";
    case FrameKind::polled: return "polled";
    }
    return "text";
}

std::unique_ptr<Decoder> makeDecoder(const MeterDescription& description) {
    const FrameSettings& frame = description.frame;
    switch (frame.kind) {
    case FrameKind::scpi: return std::make_unique<ScpiDecoder>();
    case FrameKind::segments: return std::make_unique<SegmentDecoder>();
    case FrameKind::ascii: return std::make_unique<AsciiDecoder>(frame.ascii);
    case FrameKind::text:
    case FrameKind::polled: break;
    }
    std::optional<LinePattern> pattern;
    if (!frame.pattern.empty())
        if (auto compiled = LinePattern::compile(frame.pattern)) pattern = std::move(compiled.value());
    return std::make_unique<TextDecoder>(std::move(pattern), frame.decimalComma);
}

} // namespace stillwire
