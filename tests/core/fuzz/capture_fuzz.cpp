// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fuzz/invariants.hpp"

#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string bytes(data, data + size);
    stillwire::checkReading(bytes, {});
    // Most inputs fail in the prologue; behind a good one they reach the rows.
    stillwire::checkReading(stillwire::kColumns + bytes, {});
    return 0;
}
