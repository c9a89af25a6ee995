// SPDX-License-Identifier: GPL-3.0-or-later
// Where the columns of a file are and how its cells are written.
#pragma once

#include "core/capture/reader.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

struct Layout {
    static constexpr int kNone = -1;

    bool imported = false; // a foreign CSV: times count from its first row
    char delimiter = ',';
    int columns = 0;
    int time = kNone, volts = kNone, flags = kNone, mark = kNone;
    int date = kNone, unit = kNone;       // imports only: the date beside a time of day, the unit beside a value
    std::int64_t timeUnit_us = 1'000'000; // of a time that is a number
    bool timeUnitGiven = false;
    int voltsExponent = 0; // -3 for millivolts
    bool decimalComma = false;
    bool dayFirst = false;
};

// The columns of a capture, if the names are ours: time_s and volts among them, in any order.
[[nodiscard]] bool recogniseCapture(std::string_view line, Layout& layout);

// The columns of a foreign CSV by their names and units, or as `options` names them (by name, or by number from 1).
[[nodiscard]] bool recogniseForeign(std::string_view line, const ImportOptions& options, Layout& layout);

// Finds out what only the cells tell, from some of the first rows: decimal comma, day first, milliseconds since 1970.
void learnCells(const std::vector<std::string_view>& rows, const ImportOptions& options, Layout& layout);

} // namespace stillwire
