// SPDX-License-Identifier: GPL-3.0-or-later
// Reads typed keys of one TOML table; the first thing wrong is kept, with its line, and ends the reading.
#pragma once

#include "core/text/toml.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace stillwire {

class SettingReader {
public:
    explicit SettingReader(std::string where) : where_(std::move(where)) {}

    // Each leaves `out` as it is if the key is absent or something is wrong already.
    void flag(const TomlNode& table, const char* key, bool& out);
    void integer(const TomlNode& table, const char* key, int least, int most, int& out);
    void number(const TomlNode& table, const char* key, double least, double most, double& out);
    void text(const TomlNode& table, const char* key, std::string& out);
    void texts(const TomlNode& table, const char* key, std::vector<std::string>& out);
    // The key's table, or null; a value that is no table is wrong.
    const TomlNode* table(const TomlNode& parent, const char* key);
    // One of the listed words.
    template <class T>
    void choice(const TomlNode& table, const char* key, const std::vector<std::pair<const char*, T>>& words, T& out) {
        const TomlNode* node = table.find(key);
        if (node == nullptr) return;
        std::string list;
        for (const auto& [word, value] : words) {
            if (node->string() != nullptr && *node->string() == word) {
                out = value;
                return;
            }
            list += (list.empty() ? "" : ", ") + std::string(word);
        }
        wrong(node->line, {"%1 is not a word we know", {key}}, {"use one of: %1", {list}});
    }

    void wrong(int line, Sentence what, Sentence mend);
    [[nodiscard]] const std::optional<Error>& error() const { return error_; }

private:
    const TomlNode* find(const TomlNode& table, const char* key) const { return error_ ? nullptr : table.find(key); }

    std::string where_;
    std::optional<Error> error_;
};

} // namespace stillwire
