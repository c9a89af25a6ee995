// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fuzz/invariants.hpp"

#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) return 0;
    const std::string bytes(data + 1, data + size);
    stillwire::ImportOptions options;
    if (data[0] & 1) options.delimiter = ';';
    if (data[0] & 2) options.decimalComma = (data[0] & 4) != 0;
    if (data[0] & 8) options.timeColumn = "1";
    if (data[0] & 16) options.voltsColumn = "2";
    if (data[0] & 32) options.interval = stillwire::Time(330'000);
    if (data[0] & 64) options.timeAs = static_cast<stillwire::TimeAs>(size % 11);
    if (data[0] & 128) options.referenceColumn = "3";
    stillwire::checkReading(bytes, options);
    stillwire::checkReading("time;voltage;unit;date\n" + bytes, options);
    return 0;
}
