// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with a cell, without its place: the caller knows file and line.
#pragma once

#include "core/base/sentence.hpp"

#include <string>
#include <string_view>

namespace stillwire {

struct CellError {
    Sentence what;
    Sentence mend;
};

// A piece of the file in an error: in quotes, no longer than a line, without what a terminal would obey.
[[nodiscard]] std::string quotedCell(std::string_view text);

[[nodiscard]] CellError badTime(std::string_view text);
[[nodiscard]] CellError badVolts(std::string_view text);

} // namespace stillwire
