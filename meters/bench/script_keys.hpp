// SPDX-License-Identifier: GPL-3.0-or-later
// Reads one table of a bench script, and complains of keys nobody asked for.
#pragma once

#include "core/text/keys.hpp"

#include <algorithm>
#include <initializer_list>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace stillwire::bench {

inline constexpr double kMostFigure = 1e12;

// A table whose keys are all known: number("drop_V", out) and so on, then done() complains of the rest.
class Keys {
public:
    Keys(KeyReader& reader, const TomlNode* table) : reader_(reader), table_(table) {}
    explicit operator bool() const { return table_ != nullptr; }
    [[nodiscard]] const TomlNode& node() const { return *table_; }

    Keys& number(const char* key, double& out, double least = 0, double most = kMostFigure) {
        if (know(key)) reader_.takeNumber(*table_, key, least, most, out);
        return *this;
    }
    Keys& whole(const char* key, int& out, int least, int most) {
        if (know(key)) reader_.takeWhole(*table_, key, least, most, out);
        return *this;
    }
    Keys& flag(const char* key, bool& out) {
        if (know(key)) reader_.takeFlag(*table_, "", key, out);
        return *this;
    }
    Keys& text(const char* key, std::string& out) {
        if (know(key)) reader_.takeText(*table_, key, out);
        return *this;
    }
    Keys& numbers(const char* key, std::vector<double>& out, double least, double most) {
        if (know(key)) reader_.takeNumbers(*table_, key, least, most, out);
        return *this;
    }
    Keys& texts(const char* key, std::vector<std::string>& out) {
        if (know(key)) reader_.takeTexts(*table_, key, out);
        return *this;
    }
    // A range of two, low first.
    Keys& pair(const char* key, double least, double most, std::optional<std::pair<double, double>>& out) {
        std::vector<double> both;
        numbers(key, both, least, most);
        if (both.empty()) return *this;
        if (both.size() != 2 || both[0] > both[1]) {
            reader_.complain(table_->find(key), {"%1 is not a low and a high figure", {key}},
                             "write two numbers, the lower first");
        } else {
            out = {both[0], both[1]};
        }
        return *this;
    }
    template <class T> Keys& choice(const char* key, const KeyReader::Words<T>& words, T& out) {
        if (know(key)) reader_.takeWord<T>(*table_, key, words, out);
        return *this;
    }
    // Keys that another reader takes.
    Keys& also(std::initializer_list<const char*> keys) {
        for (const char* key : keys) know(key);
        return *this;
    }
    void done() {
        if (table_ == nullptr) return;
        for (const auto& [key, node] : *table_->table()) {
            if (std::find(known_.begin(), known_.end(), key) != known_.end()) continue;
            std::string list;
            for (const std::string& known : known_) list += (list.empty() ? "" : ", ") + known;
            reader_.complain(&node, {"no key '%1' belongs here", {key}}, {"known are: %1", {list}});
        }
    }

private:
    bool know(const char* key) {
        known_.emplace_back(key);
        return table_ != nullptr;
    }
    KeyReader& reader_;
    const TomlNode* table_;
    std::vector<std::string> known_;
};

} // namespace stillwire::bench
