// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/meters/decode/frames.hpp"
#include "tests/meters/fuzz/decoder_laws.hpp"

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    // The top bit of the first byte asks for a decimal comma, the next for a pattern.
    const bool comma = size > 0 && (data[0] & 0x80) != 0, pattern = size > 0 && (data[0] & 0x40) != 0;
    const auto make = [comma, pattern] {
        std::optional<LinePattern> compiled;
        if (pattern)
            compiled = std::move(LinePattern::compile(R"((?P<value>\S+)\s*(?P<unit>\S*)(?P<flags>.*))").value());
        return std::make_unique<TextDecoder>(std::move(compiled), comma);
    };
    FrameSettings settings = frames::settings(FrameKind::text);
    settings.decimalComma = comma;
    checkDecoder(make, {data, size});
    checkRecovery(make, {data, size}, settings);
    return 0;
}
