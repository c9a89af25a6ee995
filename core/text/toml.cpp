// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/toml.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <sstream>

#include <toml++/toml.h>

namespace stillwire {

namespace {

constexpr std::size_t kMaxBytes = std::size_t{4} << 20;
constexpr int kMaxDots = 16;  // of one dotted key; the library itself bounds nested brackets, not these
constexpr int kMaxDepth = 48; // of the tree we build

struct TooDeep {
    int line = 0;
};

// The position after the string that starts at `i` (a quote), or the end.
std::size_t skipString(std::string_view text, std::size_t i) {
    const char quote = text[i];
    const std::string triple(3, quote);
    const bool multiLine = text.substr(i, 3) == triple;
    i += multiLine ? 3 : 1;
    while (i < text.size()) {
        if (text[i] == '\\' && quote == '"') {
            i += 2;
        } else if (multiLine) {
            if (text.substr(i, 3) == triple) return i + 3;
            ++i;
        } else {
            if (text[i] == quote || text[i] == '\n') return i + 1;
            ++i;
        }
    }
    return text.size();
}

// The line of a key with more dots than anyone means, 0 if there is none: such keys would nest until the stack ends.
int lineOfDeepKey(std::string_view text) {
    int line = 1, dots = 0;
    for (std::size_t i = 0; i < text.size();) {
        const char c = text[i];
        if (c == '"' || c == '\'') {
            const std::size_t after = std::min(skipString(text, i), text.size());
            line += static_cast<int>(std::count(text.begin() + static_cast<std::ptrdiff_t>(i),
                                                text.begin() + static_cast<std::ptrdiff_t>(after), '\n'));
            i = after;
            continue;
        }
        if (c == '#') {
            i = std::min(text.find('\n', i), text.size());
            continue;
        }
        if (c == '.') {
            if (++dots > kMaxDots) return line;
        } else if (c == '\n') {
            ++line;
            dots = 0;
        } else if (c == '=' || c == ',' || c == '[' || c == '{' || c == ']' || c == '}') {
            dots = 0;
        }
        ++i;
    }
    return 0;
}

template <class T> std::string printed(const T& value) {
    std::ostringstream out;
    out << value;
    return out.str();
}

TomlNode convert(const toml::node& from, int depth) {
    TomlNode node;
    node.line = static_cast<int>(from.source().begin.line);
    if (depth > kMaxDepth) throw TooDeep{node.line};
    if (const auto* table = from.as_table()) {
        TomlTable out;
        for (const auto& [key, child] : *table) out.emplace(std::string(key.str()), convert(child, depth + 1));
        node.value = std::move(out);
    } else if (const auto* array = from.as_array()) {
        TomlArray out;
        out.reserve(array->size());
        for (const auto& child : *array) out.push_back(convert(child, depth + 1));
        node.value = std::move(out);
    } else if (const auto* text = from.as_string()) {
        node.value = text->get();
    } else if (const auto* integer = from.as_integer()) {
        node.value = integer->get();
    } else if (const auto* real = from.as_floating_point()) {
        node.value = real->get();
    } else if (const auto* truth = from.as_boolean()) {
        node.value = truth->get();
    } else if (const auto* date = from.as_date()) {
        node.value = TomlNode::TomlDate{printed(date->get())};
    } else if (const auto* time = from.as_time()) {
        node.value = TomlNode::TomlDate{printed(time->get())};
    } else if (const auto* moment = from.as_date_time()) {
        node.value = TomlNode::TomlDate{printed(moment->get())};
    }
    return node;
}

bool isBareKey(std::string_view key) {
    return !key.empty() && std::all_of(key.begin(), key.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
    });
}

std::string writeKey(std::string_view key) { return isBareKey(key) ? std::string(key) : quoteToml(key); }

std::string writeFloat(double value) {
    if (std::isnan(value)) return "nan";
    if (std::isinf(value)) return value < 0 ? "-inf" : "inf";
    char buffer[64];
    const auto end = std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
    std::string text(buffer, end);
    // A float stays one: 5 becomes 5.0, and 1e+20 is one already.
    if (text.find_first_of(".e") == std::string::npos) text += ".0";
    return text;
}

std::string writeValue(const TomlNode& node) {
    struct Writer {
        std::string operator()(std::monostate) const { return "\"\""; }
        std::string operator()(bool value) const { return value ? "true" : "false"; }
        std::string operator()(std::int64_t value) const { return std::to_string(value); }
        std::string operator()(double value) const { return writeFloat(value); }
        std::string operator()(const std::string& value) const { return quoteToml(value); }
        std::string operator()(const TomlNode::TomlDate& value) const { return value.text; }
        std::string operator()(const TomlArray& array) const {
            std::string out = "[";
            for (std::size_t i = 0; i < array.size(); ++i) out += (i > 0 ? ", " : "") + writeValue(array[i]);
            return out + "]";
        }
        std::string operator()(const TomlTable& table) const {
            std::string out = "{";
            for (const auto& [key, child] : table) {
                out += (out.size() > 1 ? ", " : " ") + writeKey(key) + " = " + writeValue(child);
            }
            return out + (table.empty() ? "}" : " }");
        }
    };
    return std::visit(Writer{}, node.value);
}

bool isTableArray(const TomlNode& node) {
    const TomlArray* array = node.array();
    return array && !array->empty() &&
           std::all_of(array->begin(), array->end(), [](const TomlNode& n) { return n.table() != nullptr; });
}

void writeBody(std::string& out, const TomlTable& table, const std::string& prefix) {
    for (const auto& [key, child] : table) {
        if (!child.table() && !isTableArray(child)) out += writeKey(key) + " = " + writeValue(child) + "\n";
    }
    for (const auto& [key, child] : table) {
        const std::string path = prefix.empty() ? writeKey(key) : prefix + "." + writeKey(key);
        if (const TomlTable* inner = child.table()) {
            out += "[" + path + "]\n";
            writeBody(out, *inner, path);
        } else if (isTableArray(child)) {
            for (const TomlNode& element : *child.array()) {
                out += "[[" + path + "]]\n";
                writeBody(out, *element.table(), path);
            }
        }
    }
}

} // namespace

const TomlNode* TomlNode::find(std::string_view key) const {
    const TomlTable* members = table();
    if (!members) return nullptr;
    const auto found = members->find(key);
    return found == members->end() ? nullptr : &found->second;
}

bool TomlNode::number(double& out) const {
    if (const auto* integer = std::get_if<std::int64_t>(&value)) {
        out = static_cast<double>(*integer);
    } else if (const auto* real = std::get_if<double>(&value)) {
        out = *real;
    } else {
        return false;
    }
    return true;
}

Result<TomlNode> parseToml(std::string_view text, const std::string& where) {
    using Kind = Error::Kind;
    if (text.size() > kMaxBytes) {
        return Error{Kind::badInput, where, 0, "the TOML text is larger than 4 MB", "shorten it"};
    }
    if (const int line = lineOfDeepKey(text)) {
        return Error{Kind::badInput, where, line, "a key has too many dots", "nest at most a few tables"};
    }
    try {
        return convert(toml::parse(text), 0);
    } catch (const toml::parse_error& error) {
        return Error{Kind::badInput,
                     where,
                     static_cast<int>(error.source().begin.line),
                     {"not TOML: %1", {std::string(error.description())}},
                     "correct that line"};
    } catch (const TooDeep& deep) {
        return Error{Kind::badInput, where, deep.line, "tables are nested too deep", "nest at most a few tables"};
    }
}

std::string writeToml(const TomlNode& node, const std::string& prefix) {
    std::string out;
    const TomlTable* table = node.table();
    if (!table) return out;
    if (!prefix.empty()) out += "[" + prefix + "]\n";
    writeBody(out, *table, prefix);
    return out;
}

std::string quoteToml(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (c == '\n') {
            out += "\\n";
        } else if (c == '\t') {
            out += "\\t";
        } else if (c == '\r') {
            out += "\\r";
        } else if (byte < 0x20 || byte == 0x7f) {
            constexpr const char* kDigits = "0123456789ABCDEF";
            out += "\\u00";
            out += kDigits[byte >> 4];
            out += kDigits[byte & 15];
        } else {
            out += c;
        }
    }
    return out + "\"";
}

} // namespace stillwire
