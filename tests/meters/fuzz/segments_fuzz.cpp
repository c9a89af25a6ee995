// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/segment_decoder.hpp"
#include "tests/meters/fuzz/decoder_laws.hpp"

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    checkDecoder([] { return std::make_unique<SegmentDecoder>(); }, {data, size});
    return 0;
}
