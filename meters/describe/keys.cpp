// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/describe/keys.hpp"

namespace stillwire {

void SettingReader::wrong(int line, Sentence what, Sentence mend) {
    if (!error_) error_ = Error{.where = where_, .line = line, .what = std::move(what), .mend = std::move(mend)};
}

void SettingReader::flag(const TomlNode& table, const char* key, bool& out) {
    const TomlNode* node = find(table, key);
    if (node == nullptr) return;
    if (const bool* value = std::get_if<bool>(&node->value))
        out = *value;
    else
        wrong(node->line, {"%1 is neither true nor false", {key}}, "write true or false, without quotes");
}

void SettingReader::integer(const TomlNode& table, const char* key, int least, int most, int& out) {
    const TomlNode* node = find(table, key);
    if (node == nullptr) return;
    const std::int64_t* value = std::get_if<std::int64_t>(&node->value);
    if (value != nullptr && *value >= least && *value <= most)
        out = static_cast<int>(*value);
    else
        wrong(node->line, {"%1 is not a whole number in its range", {key}},
              {"write one from %1 to %2", {std::to_string(least), std::to_string(most)}});
}

void SettingReader::number(const TomlNode& table, const char* key, double least, double most, double& out) {
    const TomlNode* node = find(table, key);
    if (node == nullptr) return;
    double value = 0;
    if (node->number(value) && value >= least && value <= most)
        out = value;
    else
        wrong(node->line, {"%1 is not a number in its range", {key}},
              {"write one from %1 to %2", {std::to_string(least), std::to_string(most)}});
}

void SettingReader::text(const TomlNode& table, const char* key, std::string& out) {
    const TomlNode* node = find(table, key);
    if (node == nullptr) return;
    if (node->string() != nullptr)
        out = *node->string();
    else
        wrong(node->line, {"%1 is not text", {key}}, "put it in quotes");
}

void SettingReader::texts(const TomlNode& table, const char* key, std::vector<std::string>& out) {
    const TomlNode* node = find(table, key);
    if (node == nullptr) return;
    if (node->array() == nullptr) return wrong(node->line, {"%1 is not a list", {key}}, "write [\"one\", \"two\"]");
    for (const TomlNode& element : *node->array()) {
        if (element.string() == nullptr)
            return wrong(element.line, {"%1 holds something that is not text", {key}}, "put it in quotes");
        out.push_back(*element.string());
    }
}

const TomlNode* SettingReader::table(const TomlNode& parent, const char* key) {
    const TomlNode* node = find(parent, key);
    if (node == nullptr || node->table() != nullptr) return node;
    wrong(node->line, {"%1 is not a table", {key}}, {"write [%1] on a line of its own", {key}});
    return nullptr;
}

} // namespace stillwire
