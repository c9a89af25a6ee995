// SPDX-License-Identifier: GPL-3.0-or-later
// TOML text as a plain tree with line numbers. The library behind it is seen by toml.cpp alone.
#pragma once

#include "core/base/result.hpp"

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace stillwire {

struct TomlNode;
using TomlArray = std::vector<TomlNode>;
using TomlTable = std::map<std::string, TomlNode, std::less<>>;

struct TomlNode {
    // Dates and times are kept as their text, in a TomlDate.
    struct TomlDate {
        std::string text;
    };
    std::variant<std::monostate, bool, std::int64_t, double, std::string, TomlDate, TomlArray, TomlTable> value;
    int line = 0; // 1-based

    [[nodiscard]] const TomlNode* find(std::string_view key) const; // null unless a table that has it
    [[nodiscard]] const TomlTable* table() const { return std::get_if<TomlTable>(&value); }
    [[nodiscard]] const TomlArray* array() const { return std::get_if<TomlArray>(&value); }
    [[nodiscard]] const std::string* string() const { return std::get_if<std::string>(&value); }
    [[nodiscard]] const TomlDate* date() const { return std::get_if<TomlDate>(&value); }
    // A number whether written 5 or 5.0; nothing if not a number.
    [[nodiscard]] bool number(double& out) const;
};

// The root is a table. The error carries `where` and the line the parser stopped at.
[[nodiscard]] Result<TomlNode> parseToml(std::string_view text, const std::string& where);

// TOML text of a table again (keys in alphabetical order, sub-tables after plain keys); `prefix` names the table that
// holds it, e.g. "sheet" gives [sheet], [sheet.reference], [[sheet.position]].
[[nodiscard]] std::string writeToml(const TomlNode& table, const std::string& prefix);

// A basic string with its quotes and escapes.
[[nodiscard]] std::string quoteToml(std::string_view text);

} // namespace stillwire
