// SPDX-License-Identifier: GPL-3.0-or-later
// Answers of an instrument that are no readings: what is taken for one is one, and printable.
#include "meters/decode/scpi_answer.hpp"
#include "tests/meters/fuzz/decoder_laws.hpp"

#include <algorithm>
#include <string_view>

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view line(reinterpret_cast<const char*>(data), size);
    const auto answer = parseScpiAnswer(line);
    if (!answer) return 0;
    require(answer->text == line && !line.empty());
    require(std::all_of(line.begin(), line.end(), [](char c) { return c >= ' ' && c <= '~'; }));
    if (answer->kind == Answer::Kind::error) {
        require(answer->code >= -32768 && answer->code <= 32767);
        require(line.back() == '"' && line.find(',') != std::string_view::npos);
    } else {
        require(answer->code == 0 && std::count(line.begin(), line.end(), ',') == 3);
    }
    return 0;
}
