// SPDX-License-Identifier: GPL-3.0-or-later
// Marks: whatever a person or another program writes as one is kept byte for byte, and means the same once written.
#include "core/domain/mark.hpp"
#include "core/text/number.hpp"
#include "tests/core/fuzz/invariants.hpp"

#include <algorithm>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace stillwire;
    std::string text(data, data + size);
    // What no row can hold: a field is one line of text with something in it.
    std::erase_if(text, [](char c) { return static_cast<unsigned char>(c) < 0x20 && c != '\n'; });
    if (text.size() > 10000 || trimmed(text).empty() || text.find_first_not_of(" \n") == std::string::npos) return 0;
    if (!TextEncoding(text).untouched()) return 0;
    const Mark mark(Time(1'500'000), text);
    require(mark.text() == text, "a mark is kept as it is written");
    const MarkContent again = parseMark(writeMark(mark.content()));
    require(again.index() == mark.content().index(), "a mark that is written is the same kind of mark");
    CheckingSink sink;
    const auto read = readCaptureText(std::string(kColumns) + formatRow(mark) + "2,4.5,,\n", "fuzz", sink);
    require(read.ok() && read->rows == 2, "a mark has a row of its own");
    require(sink.rows == formatRow(mark) + "2,4.5,,\n", "a mark reads back the same");
    return 0;
}
