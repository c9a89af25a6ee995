// SPDX-License-Identifier: GPL-3.0-or-later
// Dates and times of day as loggers and spreadsheets write them.
#pragma once

#include "core/base/time.hpp"

#include <optional>
#include <string_view>

namespace stillwire {

// Which figure of a date is which, where the date does not say: it does with a year of four figures in front, with a
// month in letters, and with points before a year of four figures (the day first).
enum class DateOrder { yearMonthDay, dayMonthYear, monthDayYear };

// What two figures with a colon between are, where no fraction says minutes and seconds.
enum class ShortClock { none, hoursMinutes, minutesSeconds };

struct Moment {
    Time time{0};          // since 1970-01-01, or since midnight; a zone's offset is taken off
    bool dateGiven = true; // false: a time of day, or hours, minutes and seconds gone by
};

// ISO 8601 ("2026-03-01T10:00:00.25+01:00", a space for the T), "01.03.2026 10:00:00", "3/1/2026 10:00:00 a.m.",
// "27-Nov-2025 10:00", "Nov 27, 2025", "10:00:00.5", "10:00:00:500", "12:30.5" (minutes and seconds). A fraction
// after a point or a comma. Nothing if it is none of these, or if its date cannot be in that order.
[[nodiscard]] std::optional<Moment> parseMoment(std::string_view text, DateOrder order,
                                                ShortClock shortClock = ShortClock::none);

// The same without anything between the figures: "20260301100000", "260301100000" (year of two figures), then perhaps
// milliseconds or a fraction, perhaps one sign between date and clock; and "100000" or "93000.5", a time of day.
[[nodiscard]] std::optional<Moment> parseStamp(std::string_view text);
[[nodiscard]] std::optional<Moment> parseClockFigures(std::string_view text);

} // namespace stillwire
