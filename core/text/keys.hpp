// SPDX-License-Identifier: GPL-3.0-or-later
// Takes keys out of TOML tables and keeps the first complaint, so that a parser reads as the list of its keys.
#pragma once

#include "core/text/toml.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace stillwire {

// Where a tree came from: `lineOffset` is added to the lines of its nodes, `what` ("sheet", "meter") begins the
// errors.
struct TomlOrigin {
    std::string where;
    int lineOffset = 0;
    std::string what{};
};

class KeyReader {
public:
    template <class T> using Words = std::vector<std::pair<const char*, T>>;

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
    const TomlNode* table(const TomlNode& root, const char* key, bool required = false);
    // An array of tables, null if absent; anything else is a complaint, and so are more than 100. `heading`: the
    // whole name of each, where it is more than the key.
    const TomlArray* tables(const TomlNode& root, const char* key, const char* heading = nullptr);
    // `format`: absent means 1; newer is a complaint.
    void format(const TomlNode& root, int known);

    // These leave `out` as it is if the key is absent or something is wrong already.
    void takeFlag(const TomlNode& table, const std::string& path, const char* key, bool& out);
    void takeWhole(const TomlNode& table, const char* key, int low, int high, int& out);
    void takeNumber(const TomlNode& table, const char* key, double low, double high, double& out);
    void takeNumbers(const TomlNode& table, const char* key, double low, double high, std::vector<double>& out);
    void takeText(const TomlNode& table, const char* key, std::string& out); // any text
    void takeTexts(const TomlNode& table, const char* key, std::vector<std::string>& out);
    template <class T> void takeWord(const TomlNode& table, const char* key, const Words<T>& words, T& out) {
        const TomlNode* node = find(table, key);
        if (!node) return;
        std::string list;
        for (const auto& [word, value] : words) {
            if (node->string() && *node->string() == word) {
                out = value;
                return;
            }
            list += (list.empty() ? "" : ", ") + std::string(word);
        }
        complain(node, {"%1 is not a word we know", {key}}, {"use one of: %1", {list}});
    }

private:
    const TomlNode* find(const TomlNode& table, const char* key) const {
        return failed() ? nullptr : table.find(key);
    }
    // The array of that key, null if absent; anything else is a complaint with this mend.
    const TomlArray* list(const TomlNode& table, const char* key, Sentence mend);

    TomlOrigin origin_;
    std::optional<Error> error_;
};

} // namespace stillwire
