// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/domain/reading.hpp"

#include <algorithm>
#include <utility>

namespace stillwire {

namespace {

constexpr std::pair<Flag, std::string_view> kFlags[] = {
    {Flag::overload, "overload"}, {Flag::hold, "hold"}, {Flag::autorange, "autorange"},
    {Flag::lowbat, "lowbat"},     {Flag::ref, "ref"},   {Flag::unit, "unit"}};

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
        const std::size_t end = std::min(text.find_first_of(" \t"), text.size());
        for (const auto& [flag, name] : kFlags)
            if (text.substr(0, end) == name) flags |= flag;
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return flags;
}

} // namespace stillwire
