// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/cells.hpp"

#include "core/text/date_time.hpp"
#include "core/text/number.hpp"

#include <algorithm>
#include <array>

namespace stillwire {

namespace {

constexpr double kMostVolts = 1e6;
constexpr double kScpiOverload = 9e37; // 9.9E37 stands for overload, 9.91E37 for not a number (SCPI-1999, 7.2.1)
constexpr double kScpiNotANumber = 9.905e37;

std::string quoted(std::string_view text) {
    std::string out = "\"";
    for (const char c : text.substr(0, 40)) out += static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? '?' : c;
    return out + (text.size() > 40 ? "…\"" : "\"");
}

CellError badVolts(std::string_view text) {
    return {{"volts %1 is no number", {quoted(text)}}, "correct the row or remove it"};
}
CellError badTime(std::string_view text) {
    const Sentence what =
        text.empty() ? Sentence{"the time is missing"} : Sentence{"time %1 is no time", {quoted(text)}};
    return {what, "correct the row or remove it"};
}

std::string lower(std::string_view text) {
    std::string out(text);
    for (char& c : out) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return out;
}

// "1.234,5" with a decimal comma is 1234.5; without, "1,234.5" is.
std::string withPoint(std::string_view text, bool decimalComma) {
    std::string out;
    for (const char c : text) {
        if (c == (decimalComma ? '.' : ',')) continue;
        out += decimalComma && c == ',' ? '.' : c;
    }
    return out;
}

bool saysOverload(const std::string& word) {
    constexpr std::array<std::string_view, 12> kWords = {"ol",   "o.l",  "0l",       "0.l",      "o.l.", ".ol",
                                                         "over", "ovld", "overload", "overflow", "inf",  "infinity"};
    const std::string_view bare =
        !word.empty() && (word[0] == '+' || word[0] == '-') ? std::string_view(word).substr(1) : word;
    return std::find(kWords.begin(), kWords.end(), bare) != kWords.end();
}

bool saysNothing(const std::string& word) {
    constexpr std::array<std::string_view, 6> kWords = {"nan", "n/a", "na", "null", "none", "#n/a"};
    return std::find(kWords.begin(), kWords.end(), word) != kWords.end() ||
           word.find_first_not_of('-') == std::string::npos;
}

// The exponent of a unit of DC volts; nothing for any other unit.
std::optional<int> voltsUnit(std::string_view text) {
    std::string unit = lower(trimmed(text));
    for (const std::string_view dc : {"dc"}) {
        for (std::size_t at = unit.find(dc); at != std::string::npos; at = unit.find(dc)) unit.erase(at, dc.size());
    }
    unit.erase(std::remove(unit.begin(), unit.end(), ' '), unit.end());
    if (unit == "v" || unit == "volt" || unit == "volts") return 0;
    if (unit == "mv") return -3;
    if (unit == "uv" || unit == "µv" || unit == "μv") return -6;
    if (unit == "kv") return 3;
    return std::nullopt;
}

void noNumber(Reading& into, Flag why) {
    into.volts_V = std::numeric_limits<double>::quiet_NaN();
    into.flags |= why;
}

std::optional<CellError> readForeignVolts(std::string_view text, std::string_view unitCell, const Layout& layout,
                                          Reading& into) {
    const std::string word = lower(text);
    if (saysOverload(word)) return noNumber(into, Flag::overload), std::nullopt;
    if (saysNothing(word)) return noNumber(into, Flag::unit), std::nullopt;
    // A number, then perhaps its unit: "812.5 mV".
    std::size_t end = text.find_first_not_of("+-0123456789.,");
    if (end != std::string_view::npos && (text[end] | 0x20) == 'e' && end + 1 < text.size()) {
        end = text.find_first_not_of("+-0123456789", end + 1);
    }
    const std::string_view number = text.substr(0, end);
    std::string_view unit = end == std::string_view::npos ? std::string_view() : trimmed(text.substr(end));
    if (unit.empty()) unit = trimmed(unitCell);
    int exponent = layout.voltsExponent;
    if (!unit.empty()) {
        const auto known = voltsUnit(unit);
        if (!known) {
            // Another function of the meter: its number is no voltage, but the row is no damage either.
            if (!parseNumber(withPoint(number, layout.decimalComma))) return badVolts(text);
            return noNumber(into, Flag::unit), std::nullopt;
        }
        exponent = *known;
    }
    const auto value = parseNumber(withPoint(number, layout.decimalComma), exponent);
    if (!value) return badVolts(text);
    const double asWritten = std::abs(*value) * std::pow(10.0, -exponent);
    if (asWritten >= kScpiOverload) {
        return noNumber(into, asWritten >= kScpiNotANumber ? Flag::unit : Flag::overload), std::nullopt;
    }
    if (std::abs(*value) > kMostVolts) return badVolts(text);
    into.volts_V = *value;
    return std::nullopt;
}

std::optional<CellError> readForeignTime(const CellText& cells, const Layout& layout, Reading& into,
                                         bool& timeOfDay) {
    timeOfDay = false;
    const bool number = cells.time.find(':') == std::string_view::npos;
    if (number && cells.date.empty()) {
        if (const auto time = parseTime(withPoint(cells.time, layout.decimalComma), layout.timeUnit_us)) {
            into.time = *time;
            return std::nullopt;
        }
    }
    const std::string whole =
        cells.date.empty() ? std::string(cells.time) : std::string(cells.date) + " " + std::string(cells.time);
    const auto moment = parseMoment(whole, layout.dayFirst);
    if (!moment) {
        CellError error = badTime(trimmed(whole));
        error.mend = "write seconds, hours:minutes:seconds, or a date as YYYY-MM-DD hh:mm:ss";
        return error;
    }
    into.time = moment->time;
    timeOfDay = !moment->dateGiven;
    return std::nullopt;
}

} // namespace

std::optional<CellError> readCells(const CellText& cells, const Layout& layout, Reading& into, bool& timeOfDay) {
    into = Reading{};
    timeOfDay = false;
    into.flags = ReadingFlags::parse(cells.flags);
    if (layout.imported) {
        if (auto error = readForeignTime(cells, layout, into, timeOfDay)) return error;
        if (!cells.volts.empty()) return readForeignVolts(cells.volts, cells.unit, layout, into);
    } else {
        const auto time = parseTime(cells.time);
        if (!time) return badTime(cells.time);
        into.time = *time;
        if (!cells.volts.empty()) {
            const auto value = parseNumber(cells.volts);
            if (!value || std::abs(*value) > kMostVolts) return badVolts(cells.volts);
            into.volts_V = *value;
        }
    }
    if (!into.hasNumber() && into.flags.none()) into.flags = Flag::unit;
    return std::nullopt;
}

} // namespace stillwire
