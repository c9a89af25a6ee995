// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/meters/decode/frames.hpp"
#include "tests/meters/fuzz/decoder_laws.hpp"

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto make = [] { return frames::decoder(FrameKind::segments); };
    checkDecoder(make, {data, size});
    checkRecovery(make, {data, size}, frames::settings(FrameKind::segments));
    return 0;
}
