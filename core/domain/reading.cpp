// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/domain/reading.hpp"

#include <array>
#include <utility>

namespace stillwire {

namespace {

constexpr std::array<std::pair<Flag, std::string_view>, 6> kFlags = {{{Flag::overload, "overload"},
                                                                      {Flag::hold, "hold"},
                                                                      {Flag::autorange, "autorange"},
                                                                      {Flag::lowbat, "lowbat"},
                                                                      {Flag::ref, "ref"},
                                                                      {Flag::unit, "unit"}}};

} // namespace

std::string ReadingFlags::text() const {
    std::string out;
    for (const auto& [flag, word] : kFlags) {
        if (!has(flag)) continue;
        if (!out.empty()) out += ' ';
        out += word;
    }
    return out;
}

ReadingFlags ReadingFlags::parse(std::string_view text) {
    ReadingFlags flags;
    while (!text.empty()) {
        const std::size_t space = text.find_first_of(" \t");
        const std::string_view word = text.substr(0, space);
        for (const auto& [flag, name] : kFlags) {
            if (word == name) flags |= flag;
        }
        if (space == std::string_view::npos) break;
        text.remove_prefix(space + 1);
    }
    return flags;
}

} // namespace stillwire
