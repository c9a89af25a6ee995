// SPDX-License-Identifier: GPL-3.0-or-later
// Takes keys out of a table and keeps the first complaint, so that a parser reads as the list of its keys.
#pragma once

#include "core/sheet/from_toml.hpp"

#include <optional>
#include <string>

namespace stillwire {

class KeyReader {
public:
    explicit KeyReader(TomlOrigin origin) : origin_(std::move(origin)) {}

    [[nodiscard]] bool failed() const { return error_.has_value(); }
    [[nodiscard]] const Error& error() const { return *error_; }
    void complain(const TomlNode* at, Sentence what, Sentence mend);

    // `path` is how people name the table: "reference", "position 2"; empty for the top.
    // A required number that is missing, not a number, not finite or outside [low, high] is a complaint.
    double number(const TomlNode& table, const std::string& path, const char* key, double low, double high);
    std::optional<double> optionalNumber(const TomlNode& table, const std::string& path, const char* key, double low,
                                         double high);
    // A text of one line that is not empty; null if there is none (a complaint if required).
    const std::string* text(const TomlNode& table, const std::string& path, const char* key, bool required);
    // The sub-table; null if absent (a complaint if required).
    const TomlNode* table(const TomlNode& root, const char* key, bool required);
    // An array of tables, null if absent; anything else is a complaint, and so are more than 100.
    const TomlArray* tables(const TomlNode& root, const char* key);
    // `format`: absent means 1; newer is a complaint.
    void format(const TomlNode& root, int known);

private:
    TomlOrigin origin_;
    std::optional<Error> error_;
};

} // namespace stillwire
