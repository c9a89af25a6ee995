// SPDX-License-Identifier: GPL-3.0-or-later
// The yardstick for speed: two columns of a capture as doubles, nothing else.
#pragma once

#include <cstddef>
#include <string>

namespace stillwire {

// A header, columns and `rows` plain rows at three a second with a millivolt's resolution.
[[nodiscard]] std::string benchCapture(std::size_t rows);

[[nodiscard]] double plainParse(const std::string& text);          // digits by hand; the sum of both columns
[[nodiscard]] double plainParseFromChars(const std::string& text); // the same with std::from_chars

} // namespace stillwire
