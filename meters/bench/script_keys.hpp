// SPDX-License-Identifier: GPL-3.0-or-later
// Reads one table of a bench script, and complains of keys nobody asked for.
#pragma once

#include "core/text/toml.hpp"
#include "meters/describe/keys.hpp"

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
    Keys(SettingReader& reader, const TomlNode* table) : reader_(reader), table_(table) {}
    explicit operator bool() const { return table_ != nullptr; }
    [[nodiscard]] const TomlNode& node() const { return *table_; }

    Keys& number(const char* key, double& out, double least = 0, double most = kMostFigure) {
        if (know(key)) reader_.number(*table_, key, least, most, out);
        return *this;
    }
    Keys& whole(const char* key, int& out, int least, int most) {
        if (know(key)) reader_.integer(*table_, key, least, most, out);
        return *this;
    }
    Keys& flag(const char* key, bool& out) {
        if (know(key)) reader_.flag(*table_, key, out);
        return *this;
    }
    Keys& text(const char* key, std::string& out) {
        if (know(key)) reader_.text(*table_, key, out);
        return *this;
    }
    Keys& numbers(const char* key, std::vector<double>& out, double least, double most) {
        if (!know(key)) return *this;
        const TomlNode* node = table_->find(key);
        if (node == nullptr) return *this;
        if (node->array() == nullptr) {
            reader_.wrong(node->line, {"%1 is not a list of numbers", {key}}, "write [1.0, 2.0]");
            return *this;
        }
        out.clear();
        for (const TomlNode& element : *node->array()) {
            double value = 0;
            if (!element.number(value) || value < least || value > most) {
                reader_.wrong(element.line, {"%1 holds something that is no number in its range", {key}},
                              {"write numbers from %1 to %2", {std::to_string(least), std::to_string(most)}});
                return *this;
            }
            out.push_back(value);
        }
        return *this;
    }
    // A range of two, low first.
    Keys& pair(const char* key, double least, double most, std::optional<std::pair<double, double>>& out) {
        std::vector<double> both;
        numbers(key, both, least, most);
        if (both.empty()) return *this;
        if (both.size() != 2 || both[0] > both[1]) {
            reader_.wrong(table_->find(key)->line, {"%1 is not a low and a high figure", {key}},
                          "write two numbers, the lower first");
        } else {
            out = {both[0], both[1]};
        }
        return *this;
    }
    template <class T> Keys& choice(const char* key, const std::vector<std::pair<const char*, T>>& words, T& out) {
        if (know(key)) reader_.choice<T>(*table_, key, words, out);
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
            reader_.wrong(node.line, {"no key '%1' belongs here", {key}}, {"known are: %1", {list}});
        }
    }

private:
    bool know(const char* key) {
        known_.emplace_back(key);
        return table_ != nullptr;
    }
    SettingReader& reader_;
    const TomlNode* table_;
    std::vector<std::string> known_;
};

} // namespace stillwire::bench
