// SPDX-License-Identifier: GPL-3.0-or-later
// One row's cells into a reading. A capture's cells are strict; a foreign file's are taken as loggers write them.
#pragma once

#include "core/capture/layout.hpp"
#include "core/domain/reading.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace stillwire {

// What is wrong with a cell, without its place: the caller knows file and line.
struct CellError {
    Sentence what;
    Sentence mend;
};

struct CellText {
    std::string_view time, volts, flags, date, unit;
};

// Fills time, volts and flags. In a foreign file the time is as written, not yet from the first row; `timeOfDay` says
// that it may begin again at midnight. Empty volts without a known flag become a reading without a number, flag
// `unit`: the meter said something here, and the time was not looked at.
[[nodiscard]] std::optional<CellError> readCells(const CellText& cells, const Layout& layout, Reading& into,
                                                 bool& timeOfDay);

} // namespace stillwire
