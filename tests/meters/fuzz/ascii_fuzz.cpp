// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/meters/decode/frames.hpp"
#include "tests/meters/fuzz/decoder_laws.hpp"

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    checkDecoder([] { return std::make_unique<AsciiDecoder>(frames::layout()); }, {data, size});
    return 0;
}
