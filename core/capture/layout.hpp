// SPDX-License-Identifier: GPL-3.0-or-later
// Where the columns of a file are and how its cells are written.
#pragma once

#include "core/capture/reader.hpp"
#include "core/capture/time_column.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

struct VoltsColumn {
    int column = -1;
    int exponent = 0; // -3 for millivolts
    bool unitGiven = false;
    int unitColumn = -1; // the unit, or the meter's function, beside each value
};

struct Layout {
    static constexpr int kNone = -1;

    bool imported = false; // a foreign CSV: times count from its first row
    char delimiter = ',';
    int columns = 0;
    int time = kNone, flags = kNone, mark = kNone;
    VoltsColumn volts;
    // Imports only.
    std::vector<std::string> names;         // as written
    int date = kNone, milliseconds = kNone; // beside a time of day
    int hold = kNone;                       // beside a value
    std::vector<int> status;                // the same
    VoltsColumn reference;                  // a second channel
    NumberStyle numbers;
    TimeColumn times;
};

// The columns of a capture, if the names are ours: time_s and volts among them, in any order.
[[nodiscard]] bool recogniseCapture(std::string_view line, Layout& layout);

// What the line says of the columns of a foreign CSV, together with the rows below it, or as `options` names them (by
// name, or by number from 1).
struct Recognised {
    bool hasTime = false, hasVolts = false;
    bool namesAreARow = false;         // columns given by number: the line is the first row
    bool unitsBelow = false;           // the next row holds units
    bool rowsFit = false;              // there is a row, and it has a value where one is wanted
    Layout layout;                     // if it has both
    std::optional<CellError> question; // the file leaves more than one reading of it
};
[[nodiscard]] Recognised recogniseForeign(std::string_view line, const std::vector<std::string_view>& rows,
                                          const ImportOptions& options);

// Finds out what only the cells tell, from some of the first rows. The question that is left, if one is.
[[nodiscard]] std::optional<CellError> learnCells(const std::vector<std::string_view>& rows,
                                                  const ImportOptions& options, Layout& layout);

} // namespace stillwire
