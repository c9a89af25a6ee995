// SPDX-License-Identifier: GPL-3.0-or-later
// Rows and fields by RFC 4180: a quote opens a field that may hold delimiters, line breaks and doubled quotes. A
// quote inside an unquoted field is a character like any other.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

// The position of the '\n' that ends the row at `from`, or npos if the row does not end here.
[[nodiscard]] std::size_t rowEnd(std::string_view bytes, std::size_t from, char delimiter);

// `row` without its line end; reuses the strings of `fields`. Returns how many there are.
std::size_t splitRow(std::string_view row, char delimiter, std::vector<std::string>& fields);

// Off the end: "\n" or "\r\n".
[[nodiscard]] std::string_view withoutLineEnd(std::string_view line);

} // namespace stillwire
