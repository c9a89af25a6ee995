// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/number_cells.hpp"

#include "core/text/number.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace stillwire {

namespace {

bool isDigit(char c) { return c >= '0' && c <= '9'; }

struct Sign {
    std::string_view typographic;
    char plain;
};
constexpr std::array<Sign, 8> kSigns = {{{"\xC2\xA0", ' '},       // no-break space
                                         {"\xE2\x80\x87", ' '},   // figure space
                                         {"\xE2\x80\x89", ' '},   // thin space
                                         {"\xE2\x80\xAF", ' '},   // narrow no-break space
                                         {"\xE2\x80\x99", '\''},  // right single quotation mark
                                         {"\xE2\x88\x92", '-'},   // minus sign
                                         {"\xE2\x80\x93", '-'},   // en dash
                                         {"\xE2\x80\x94", '-'}}}; // em dash

// The digits before the decimals, any thousands set apart by one sign, onto `out`; where they end, or 0.
std::size_t takeWhole(std::string_view text, char decimal, std::string& out) {
    std::size_t i = 0;
    while (i < text.size() && isDigit(text[i])) out += text[i++];
    if (i == 0 || i > 3 || i >= text.size()) return i;
    const char group = text[i];
    const bool grouping = group != decimal && (group == '.' || group == ',' || group == ' ' || group == '\'');
    const auto digitsFrom = [&](std::size_t from) {
        std::size_t end = from;
        while (end < text.size() && isDigit(text[end])) ++end;
        return end - from;
    };
    if (!grouping || digitsFrom(i + 1) == 0) return i;
    if (text[0] == '0') return 0; // nobody sets thousands apart behind a nought
    while (i < text.size() && text[i] == group) {
        if (digitsFrom(i + 1) != 3) return 0;
        out += text.substr(i + 1, 3);
        i += 4;
    }
    return i;
}

} // namespace

void plainSigns(std::string& cell) {
    if (std::none_of(cell.begin(), cell.end(), [](char c) { return (c & 0x80) != 0; })) return;
    for (const Sign& sign : kSigns)
        for (std::size_t at = cell.find(sign.typographic); at != std::string::npos;
             at = cell.find(sign.typographic, at + 1))
            cell.replace(at, sign.typographic.size(), 1, sign.plain);
}

std::optional<WrittenNumber> writtenNumber(std::string_view cell, DecimalSign sign) {
    const char decimal = sign == DecimalSign::point ? '.' : ',';
    std::string_view text = trimmed(cell);
    WrittenNumber number;
    if (!text.empty() && (text.front() == '-' || text.front() == '+')) {
        if (text.front() == '-') number.plain = "-";
        text = trimmed(text.substr(1));
    }
    const std::size_t before = number.plain.size();
    const std::size_t whole = takeWhole(text, decimal, number.plain);
    if (whole == 0 && (text.empty() || text.front() != decimal)) return std::nullopt;
    text.remove_prefix(whole);
    if (!text.empty() && text.front() == decimal) {
        number.plain += '.';
        text.remove_prefix(1);
        while (!text.empty() && isDigit(text.front())) {
            number.plain += text.front();
            text.remove_prefix(1);
        }
        if (number.plain.back() == '.') number.plain.pop_back();
    }
    if (number.plain.size() == before || number.plain.back() == '.') return std::nullopt;
    if (text.size() > 1 && (text[0] == 'e' || text[0] == 'E')) {
        std::size_t end = text[1] == '+' || text[1] == '-' ? 2 : 1;
        const std::size_t digits = end;
        while (end < text.size() && isDigit(text[end])) ++end;
        if (end > digits) {
            number.plain += text.substr(0, end);
            text.remove_prefix(end);
        }
    }
    // A second number behind the first is no unit.
    if (!text.empty() && (isDigit(text.front()) || text.front() == '.' || text.front() == ',' ||
                          text.front() == '\'' || text.front() == ':'))
        return std::nullopt;
    number.rest = trimmed(text);
    if (!number.rest.empty() && isDigit(number.rest.front())) return std::nullopt;
    return number;
}

NumberStyle::NumberStyle(std::optional<bool> decimalComma)
    : point_(!decimalComma.value_or(false)), comma_(decimalComma.value_or(true)) {}

void NumberStyle::learn(std::string_view cell) {
    if (!point_ || !comma_) return;
    const bool point = writtenNumber(cell, DecimalSign::point).has_value();
    const bool comma = writtenNumber(cell, DecimalSign::comma).has_value();
    if (point && !comma) comma_ = false;
    if (comma && !point) point_ = false;
}

void NumberStyle::ruleOut(DecimalSign sign) { (sign == DecimalSign::point ? point_ : comma_) = false; }

std::optional<DecimalSign> NumberStyle::certain() const {
    if (point_ == comma_) return std::nullopt;
    return point_ ? DecimalSign::point : DecimalSign::comma;
}

bool NumberStyle::twoReadings(std::string_view cell) const {
    if (!point_ || !comma_) return false;
    const auto point = writtenNumber(cell, DecimalSign::point), comma = writtenNumber(cell, DecimalSign::comma);
    return point && comma && parseNumber(point->plain) != parseNumber(comma->plain);
}

std::optional<WrittenNumber> NumberStyle::read(std::string_view cell) const {
    return writtenNumber(cell, point_ ? DecimalSign::point : DecimalSign::comma);
}

} // namespace stillwire
