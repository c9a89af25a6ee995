// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/from_toml.hpp"
#include "tests/core/fuzz/invariants.hpp"

#include <cstdint>

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    auto sheet = parseSheet(std::string(data, data + size), "fuzz");
    if (!sheet) {
        checkError(sheet.error());
        return 0;
    }
    require(sheet->positions.size() >= 2, "two positions or more");
    int rests = 0;
    for (const Position& p : sheet->positions) {
        require(p.window.min_V < p.window.max_V && p.window.contains(p.aim_V), "no crossed window, the aim inside");
        require(sheet->find(p.name) == &p, "each name once");
        rests += p.rest ? 1 : 0;
    }
    require(rests == 1, "exactly one rests");
    require(sheet->play_V >= 0 && sheet->reference.contains(sheet->nominal_V), "values make sense");
    auto again = parseSheet(describe(*sheet), "again");
    require(again.ok() && describe(*again) == describe(*sheet), "a description reads back the same");
    return 0;
}
