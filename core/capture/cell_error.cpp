// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/cell_error.hpp"

namespace stillwire {

std::string quotedCell(std::string_view text) {
    std::string out = "\"";
    for (const char c : text.substr(0, 60)) out += static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? ' ' : c;
    // A letter of several bytes is not cut in two.
    if (text.size() > 60)
        while (out.size() > 1 && (out.back() & 0xC0) == 0x80) out.pop_back();
    if (text.size() > 60 && (out.back() & 0x80) != 0) out.pop_back();
    return out + (text.size() > 60 ? "…\"" : "\"");
}

CellError badTime(std::string_view text) {
    const Sentence what =
        text.empty() ? Sentence{"the time is missing"} : Sentence{"time %1 is no time", {quotedCell(text)}};
    return {what, "correct the row or remove it"};
}

CellError badVolts(std::string_view text) {
    return {{"volts %1 is no number", {quotedCell(text)}}, "correct the row or remove it"};
}

} // namespace stillwire
