// SPDX-License-Identifier: GPL-3.0-or-later
// The cells of a capture's row into a reading: strict, for a capture is written by this program.
#pragma once

#include "core/capture/cell_error.hpp"
#include "core/domain/reading.hpp"

#include <optional>
#include <string_view>

namespace stillwire {

inline constexpr double kMostVolts = 1e6;

// Fills time, volts and flags. Empty volts without a known flag become a reading without a number, flag `unit`.
[[nodiscard]] std::optional<CellError> readCells(std::string_view time, std::string_view volts,
                                                 std::string_view flags, Reading& into);

} // namespace stillwire
