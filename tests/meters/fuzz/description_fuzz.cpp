// SPDX-License-Identifier: GPL-3.0-or-later
// Any text is a description or an error with a cause; a description makes a decoder that keeps the laws.
#include "meters/describe/description.hpp"
#include "tests/meters/fuzz/decoder_laws.hpp"

#include <string_view>

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto parsed = parseMeterDescription({reinterpret_cast<const char*>(data), size}, "fuzz.toml");
    if (!parsed) {
        require(!parsed.error().what.empty() && parsed.error().where == "fuzz.toml" && parsed.error().line >= 0);
        return 0;
    }
    require(parsed.value().link.baud > 0 && parsed.value().link.pollInterval >= Time(0));
    checkDecoder([&parsed] { return makeDecoder(parsed.value()); }, {data, size});
    return 0;
}
