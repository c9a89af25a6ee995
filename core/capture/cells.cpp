// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/cells.hpp"

#include "core/text/number.hpp"

#include <cmath>

namespace stillwire {

std::optional<CellError> readCells(std::string_view time, std::string_view volts, std::string_view flags,
                                   Reading& into) {
    into = Reading{};
    into.flags = ReadingFlags::parse(flags);
    const auto at = parseTime(time);
    if (!at) return badTime(time);
    into.time = *at;
    if (!volts.empty()) {
        const auto value = parseNumber(volts);
        if (!value || std::abs(*value) > kMostVolts) return badVolts(volts);
        into.volts_V = *value;
    }
    if (!into.hasNumber() && into.flags.none()) into.flags = Flag::unit;
    return std::nullopt;
}

} // namespace stillwire
