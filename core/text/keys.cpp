// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/keys.hpp"

#include "core/base/sentence.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr std::size_t kMaxTables = 100;

std::string named(const std::string& path, const char* key) { return path.empty() ? key : path + ": " + key; }

// "0.70" stays short and exact enough for a sentence.
std::string figure(double value) {
    std::string text = plain(value, 6);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

} // namespace

void KeyReader::complain(const TomlNode* at, Sentence what, Sentence mend) {
    if (error_) return;
    Error error;
    error.where = origin_.where;
    error.line = at && at->line > 0 ? at->line + origin_.lineOffset : 0;
    error.what = origin_.what.empty() ? std::move(what) : Sentence{"%1: %2", {origin_.what, std::move(what)}};
    error.mend = std::move(mend);
    error_ = std::move(error);
}

double KeyReader::number(const TomlNode& table, const std::string& path, const char* key, double low, double high) {
    if (const auto value = optionalNumber(table, path, key, low, high)) return *value;
    if (!failed()) complain(&table, {"%1 is missing", {named(path, key)}}, {"add %1 = …", {key}});
    return 0;
}

std::optional<double> KeyReader::optionalNumber(const TomlNode& table, const std::string& path, const char* key,
                                                double low, double high) {
    const TomlNode* node = find(table, key);
    if (!node) return std::nullopt;
    double value = 0;
    if (!node->number(value)) {
        complain(node, {"%1 is not a number", {named(path, key)}}, "write a number such as 0.5, without quotes");
    } else if (!std::isfinite(value)) {
        complain(node, {"%1 is not finite", {named(path, key)}}, "write an ordinary number");
    } else if (value < low || value > high) {
        complain(node, {value < low ? "%1 is %2, too low" : "%1 is %2, too high", {named(path, key), figure(value)}},
                 {"write a value from %1 to %2", {figure(low), figure(high)}});
    } else {
        return value;
    }
    return std::nullopt;
}

const std::string* KeyReader::text(const TomlNode& table, const std::string& path, const char* key, bool required) {
    const TomlNode* node = table.find(key);
    if (failed()) return nullptr;
    if (!node) {
        if (required) complain(&table, {"%1 is missing", {named(path, key)}}, {"add %1 = \"…\"", {key}});
        return nullptr;
    }
    const std::string* value = node->string();
    if (!value || value->empty() || value->size() > 1000) {
        complain(node, {"%1 is not a short text", {named(path, key)}},
                 "write it in quotes, one line that is not empty");
        return nullptr;
    }
    if (std::any_of(value->begin(), value->end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; })) {
        complain(node, {"%1 holds a line break or a control character", {named(path, key)}}, "write it on one line");
        return nullptr;
    }
    return value;
}

const TomlNode* KeyReader::table(const TomlNode& root, const char* key, bool required) {
    if (failed()) return nullptr;
    const TomlNode* node = root.find(key);
    if (!node) {
        if (required) complain(&root, {"[%1] is missing", {key}}, "add the table");
        return nullptr;
    }
    if (!node->table()) {
        complain(node, {"%1 is not a table", {key}}, {"write it as [%1]", {key}});
        return nullptr;
    }
    return node;
}

const TomlArray* KeyReader::tables(const TomlNode& root, const char* key, const char* heading) {
    const TomlNode* node = find(root, key);
    if (!node) return nullptr;
    const TomlArray* array = node->array();
    if (!array ||
        !std::all_of(array->begin(), array->end(), [](const TomlNode& n) { return n.table() != nullptr; })) {
        complain(node, {"%1 is not a list of tables", {key}}, {"write each as [[%1]]", {heading ? heading : key}});
        return nullptr;
    }
    if (array->size() > kMaxTables) {
        complain(node, {"more than 100 [[%1]] tables", {key}}, "keep those that are there in fact");
        return nullptr;
    }
    return array;
}

void KeyReader::format(const TomlNode& root, int known) {
    const TomlNode* node = find(root, "format");
    if (!node) return;
    const auto* value = std::get_if<std::int64_t>(&node->value);
    const std::string knownText = std::to_string(known);
    if (!value || *value < 1) {
        complain(node, "format is not a number from 1 up", {"write format = %1", {knownText}});
    } else if (*value > known) {
        complain(node, {"format %1 is newer than this program reads (%2)", {std::to_string(*value), knownText}},
                 {"update the program or use a file of format %1", {knownText}});
    }
}

void KeyReader::takeFlag(const TomlNode& table, const std::string& path, const char* key, bool& out) {
    const TomlNode* node = find(table, key);
    if (!node) return;
    if (const bool* value = std::get_if<bool>(&node->value))
        out = *value;
    else
        complain(node, {"%1 is neither true nor false", {named(path, key)}}, "write true or false, without quotes");
}

void KeyReader::takeWhole(const TomlNode& table, const char* key, int low, int high, int& out) {
    const TomlNode* node = find(table, key);
    if (!node) return;
    const auto* value = std::get_if<std::int64_t>(&node->value);
    if (value && *value >= low && *value <= high)
        out = static_cast<int>(*value);
    else
        complain(node, {"%1 is not a whole number in its range", {key}},
                 {"write one from %1 to %2", {std::to_string(low), std::to_string(high)}});
}

void KeyReader::takeNumber(const TomlNode& table, const char* key, double low, double high, double& out) {
    if (const auto value = optionalNumber(table, "", key, low, high)) out = *value;
}

const TomlArray* KeyReader::list(const TomlNode& table, const char* key, Sentence mend) {
    const TomlNode* node = find(table, key);
    if (node && !node->array()) complain(node, {"%1 is not a list", {key}}, std::move(mend));
    return node ? node->array() : nullptr;
}

void KeyReader::takeNumbers(const TomlNode& table, const char* key, double low, double high,
                            std::vector<double>& out) {
    const TomlArray* array = list(table, key, "write [1.0, 2.0]");
    if (!array) return;
    out.clear();
    for (const TomlNode& element : *array) {
        double value = 0;
        if (!element.number(value) || !(value >= low && value <= high))
            return complain(&element, {"%1 holds something that is no number in its range", {key}},
                            {"write numbers from %1 to %2", {figure(low), figure(high)}});
        out.push_back(value);
    }
}

void KeyReader::takeText(const TomlNode& table, const char* key, std::string& out) {
    const TomlNode* node = find(table, key);
    if (!node) return;
    if (node->string())
        out = *node->string();
    else
        complain(node, {"%1 is not text", {key}}, "put it in quotes");
}

void KeyReader::takeTexts(const TomlNode& table, const char* key, std::vector<std::string>& out) {
    const TomlArray* array = list(table, key, "write [\"one\", \"two\"]");
    if (!array) return;
    for (const TomlNode& element : *array) {
        if (!element.string())
            return complain(&element, {"%1 holds something that is not text", {key}}, "put it in quotes");
        out.push_back(*element.string());
    }
}

} // namespace stillwire
