// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/fields.hpp"

namespace stillwire {

std::size_t rowEnd(std::string_view bytes, std::size_t from, char delimiter) {
    const std::size_t lineEnd = bytes.find('\n', from);
    const std::string_view line = bytes.substr(from, lineEnd == std::string_view::npos ? lineEnd : lineEnd - from);
    if (line.find('"') == std::string_view::npos) return lineEnd;
    bool fieldStart = true;
    for (std::size_t i = from; i < bytes.size(); ++i) {
        const char c = bytes[i];
        if (c == '"' && fieldStart) {
            for (++i; i < bytes.size(); ++i) {
                if (bytes[i] != '"') continue;
                if (i + 1 < bytes.size() && bytes[i + 1] == '"') {
                    ++i;
                } else {
                    break;
                }
            }
            fieldStart = false;
        } else if (c == '\n') {
            return i;
        } else {
            fieldStart = c == delimiter;
        }
    }
    return std::string_view::npos;
}

std::size_t splitRow(std::string_view row, char delimiter, std::vector<std::string>& fields) {
    std::size_t count = 0, i = 0;
    for (;;) {
        if (count == fields.size()) fields.emplace_back();
        std::string& field = fields[count++];
        field.clear();
        if (i < row.size() && row[i] == '"') {
            for (++i; i < row.size(); ++i) {
                if (row[i] == '"') {
                    if (i + 1 >= row.size() || row[i + 1] != '"') {
                        ++i;
                        break;
                    }
                    ++i;
                }
                field += row[i];
            }
        }
        const std::size_t end = row.find(delimiter, i);
        field += row.substr(i, end == std::string_view::npos ? end : end - i);
        if (end == std::string_view::npos) return count;
        i = end + 1;
    }
}

std::string_view withoutLineEnd(std::string_view line) {
    if (!line.empty() && line.back() == '\n') line.remove_suffix(1);
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    return line;
}

} // namespace stillwire
