// SPDX-License-Identifier: GPL-3.0-or-later
// What the name of a column says of it: one table of words, in all languages that are known, and one of units.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace stillwire {

// What a word says; a name says what all of its words say.
enum class Says : std::uint32_t {
    time = 1U << 0U,
    date = 1U << 1U,
    volts = 1U << 2U,
    figure = 1U << 3U, // a value of something, most likely what the meter read
    signal = 1U << 4U,
    reference = 1U << 5U,
    measured = 1U << 6U, // against what was set
    mean = 1U << 7U,
    other = 1U << 8U, // something that is neither the time nor what was measured: a limit, a current, a temperature
    unit = 1U << 9U,
    status = 1U << 10U, // hold, overload and the like, in words
    hold = 1U << 11U,
    mark = 1U << 12U,
    flags = 1U << 13U
};

struct ColumnUnit {
    enum class Of { nothing, time, volts, other };
    Of of = Of::nothing;
    std::int64_t time_us = 0;
    int exponent = 0; // of volts
};

struct ColumnName {
    std::uint32_t says = 0;
    ColumnUnit unit;
    [[nodiscard]] bool has(Says what) const { return (says & static_cast<std::uint32_t>(what)) != 0; }
};

[[nodiscard]] ColumnName readColumnName(std::string_view name);

// "V", "mV DC", "ms", "°C"; Of::nothing for what is no unit.
[[nodiscard]] ColumnUnit readUnit(std::string_view text);

// Lower case and without accents, so that one spelling of a word is enough: "Tensión" is "tension".
[[nodiscard]] std::string foldedText(std::string_view text);

} // namespace stillwire
