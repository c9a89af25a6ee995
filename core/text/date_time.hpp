// SPDX-License-Identifier: GPL-3.0-or-later
// Dates and times of day as loggers and spreadsheets write them.
#pragma once

#include "core/base/time.hpp"

#include <optional>
#include <string_view>

namespace stillwire {

struct Moment {
    Time time{0};          // since 1970-01-01, or since midnight; a zone's offset is taken off
    bool dateGiven = true; // false: a time of day, or hours, minutes and seconds gone by
};

// ISO 8601 ("2026-03-01T10:00:00.25+01:00", a space for the T), "01.03.2026 10:00:00", "3/1/2026 10:00:00 AM",
// "10:00:00.5", "12:30.5" (minutes and seconds). A fraction after a point or a comma. Where the year comes last, a
// point means day first, a slash or a dash month first unless `dayFirst` says otherwise or the figure is above 12.
// Nothing if it is none of these.
[[nodiscard]] std::optional<Moment> parseMoment(std::string_view text, bool dayFirst);

// True for a date with its year last and a first figure above 12: the day comes first in this file.
[[nodiscard]] bool saysDayFirst(std::string_view text);

} // namespace stillwire
