// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/foreign_cells.hpp"

#include "core/capture/cells.hpp"
#include "core/capture/column_names.hpp"
#include "core/text/number.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kScpiOverload = 9e37; // 9.9E37 stands for overload, 9.91E37 for not a number (SCPI-1999, 7.2.1)
constexpr double kScpiNotANumber = 9.905e37;
// No wire of such a sensor carries more: a number above it that has no unit is not in volts.
constexpr double kMostWithoutUnit_V = 60;

// What a meter says instead of a number, or beside it.
struct StateWord {
    std::string_view text; // folded; '.' and the sign in front taken out
    ReadingFlags flags;
};
constexpr std::array<StateWord, 29> kStates = {{{"ol", Flag::overload},
                                                {"0l", Flag::overload},
                                                {"over", Flag::overload},
                                                {"ovld", Flag::overload},
                                                {"overload", Flag::overload},
                                                {"overflow", Flag::overload},
                                                {"overrange", Flag::overload},
                                                {"inf", Flag::overload},
                                                {"infinity", Flag::overload},
                                                {"sobrecarga", Flag::overload},
                                                {"uberlauf", Flag::overload},
                                                {"uberlast", Flag::overload},
                                                {"hold", Flag::hold},
                                                {"held", Flag::hold},
                                                {"frozen", Flag::hold},
                                                {"retenido", Flag::hold},
                                                {"gehalten", Flag::hold},
                                                {"autorange", Flag::autorange},
                                                {"ranging", Flag::autorange},
                                                {"lowbat", Flag::lowbat},
                                                {"lobat", Flag::lowbat},
                                                {"lowbattery", Flag::lowbat},
                                                // Its number is none of the moment.
                                                {"max", Flag::hold},
                                                {"min", Flag::hold},
                                                {"avg", Flag::hold},
                                                {"peak", Flag::hold},
                                                {"rel", Flag::unit},
                                                {"ac", Flag::unit},
                                                {"acv", Flag::unit}}};

std::optional<ReadingFlags> stateNamed(std::string_view word) {
    // "OL V": the unit stays on the display.
    if (const std::size_t space = word.rfind(' ');
        space != std::string_view::npos && readUnit(word.substr(space + 1)).of == ColumnUnit::Of::volts)
        word = word.substr(0, space);
    std::string text = foldedText(word);
    if (!text.empty() && (text[0] == '+' || text[0] == '-')) text.erase(0, 1);
    std::erase_if(text, [](char c) { return c == '.' || c == ' ' || c == '-' || c == '_' || c == '!'; });
    const auto found =
        std::find_if(kStates.begin(), kStates.end(), [&](const StateWord& one) { return one.text == text; });
    return found == kStates.end() ? std::nullopt : std::optional(found->flags);
}

// A status cell may hold several words, and those that say nothing of the reading.
ReadingFlags stateOf(std::string_view cell) {
    ReadingFlags flags;
    if (const auto whole = stateNamed(cell)) return *whole;
    for (std::size_t at = 0; at < cell.size();) {
        const std::size_t end = std::min(cell.find_first_of(" ,;|/+", at), cell.size());
        if (const auto one = stateNamed(cell.substr(at, end - at))) flags |= *one;
        at = end + 1;
    }
    return flags;
}

bool saysYes(std::string_view cell) {
    const std::string text = foldedText(cell);
    return !text.empty() && text != "0" && text != "no" && text != "off" && text != "false" && text != "-" &&
           text != "n" && text != "nein" && text != "aus";
}

// "----", "--.--", "- - -", "NaN": the display shows no number.
bool saysNothing(std::string_view cell) {
    constexpr std::array<std::string_view, 7> kWords = {"nan", "n/a", "na", "null", "none", "#n/a", "blank"};
    const std::string text = foldedText(cell);
    return std::find(kWords.begin(), kWords.end(), text) != kWords.end() ||
           text.find_first_not_of("-.,_ ?*") == std::string::npos;
}

// "DC", "DC voltage": the meter's function, without the unit.
bool saysDirectVolts(std::string_view cell) {
    const std::string text = foldedText(cell);
    const ColumnName name = readColumnName(cell);
    if (std::any_of(text.begin(), text.end(), [](char c) { return c != ' ' && (c < 'a' || c > 'z'); })) return false;
    return text == "dc" || (name.has(Says::volts) && !name.has(Says::other));
}

void noNumber(Reading& into, ReadingFlags why) {
    into.volts_V = std::numeric_limits<double>::quiet_NaN();
    into.flags |= why;
}

} // namespace

bool looksMeasured(std::string_view cell) {
    const auto fits = [&](DecimalSign sign) {
        const auto number = writtenNumber(cell, sign);
        return number && (number->rest.empty() || readUnit(number->rest).of != ColumnUnit::Of::nothing);
    };
    return fits(DecimalSign::point) || fits(DecimalSign::comma) || saysNothing(cell) || stateNamed(cell);
}

std::string_view ForeignCells::cell(const std::vector<std::string>& cells, int column) const {
    const auto index = static_cast<std::size_t>(column);
    return column >= 0 && index < cells.size() ? trimmed(cells[index]) : std::string_view();
}

std::optional<CellError> ForeignCells::readTime(std::vector<std::string>& cells, Row& into) {
    for (std::string& one : cells) plainSigns(one);
    into = Row{};
    TimeColumn::Cell at{std::string(cell(cells, layout_.date)), std::string(cell(cells, layout_.time))};
    if (const std::string_view ms = cell(cells, layout_.milliseconds); !ms.empty())
        at.time += "." + std::string(ms.size() < 3 ? 3 - ms.size() : 0, '0') + std::string(ms);
    numbers_.learn(at.time);
    return times_.read(at, numbers_, into.time);
}

std::optional<CellError> ForeignCells::readVolts(const std::vector<std::string>& cells, Row& into) {
    Reading reading;
    reading.time = into.time;
    reading.flags = ReadingFlags::parse(cell(cells, layout_.flags));
    for (const int column : layout_.status) reading.flags |= stateOf(cell(cells, column));
    if (saysYes(cell(cells, layout_.hold))) reading.flags |= Flag::hold;
    Reading reference = reading;
    const auto take = [&](const VoltsColumn& column, Reading& one,
                          std::optional<Reading>& out) -> std::optional<CellError> {
        const ReadingFlags before = one.flags;
        if (auto error = readOne(cells, column, one)) return error;
        // Out of range, or not of the moment: the number beside it is not the wire's.
        if (one.flags.has(Flag::overload) || one.flags.has(Flag::unit)) noNumber(one, {});
        if (one.hasNumber() || !one.flags.none())
            out = one;
        else if (before.none())
            ++withoutNumber_;
        return std::nullopt;
    };
    if (layout_.reference.column != Layout::kNone) {
        if (auto error = take(layout_.reference, reference, into.reference)) return error;
        if (into.reference) into.reference->flags |= Flag::ref;
    }
    return take(layout_.volts, reading, into.signal);
}

std::optional<CellError> ForeignCells::readOne(const std::vector<std::string>& cells, const VoltsColumn& column,
                                               Reading& into) {
    const std::string_view text = cell(cells, column.column);
    if (text.empty() || saysNothing(text)) return std::nullopt;
    if (const auto state = stateNamed(text)) {
        noNumber(into, *state);
        return std::nullopt;
    }
    numbers_.learn(text);
    if (numbers_.twoReadings(text))
        return CellError{{"volts %1 may have a decimal comma or a comma between thousands", {quotedCell(text)}},
                         "say which with --decimal-comma or --decimal-point"};
    const auto number = numbers_.read(text);
    if (!number) return badVolts(text);
    int exponent = column.exponent;
    bool unitGiven = column.unitGiven;
    // Another function of the meter: its number is no voltage, but the row is no damage either.
    const auto takeUnit = [&](std::string_view unitText) {
        const ColumnUnit unit = readUnit(unitText);
        if (unit.of == ColumnUnit::Of::volts) {
            exponent = unit.exponent;
            unitGiven = true;
        }
        return unit.of == ColumnUnit::Of::volts || unitText.empty() || saysDirectVolts(unitText);
    };
    std::string_view beside = number->rest;
    for (std::size_t space = 0; !beside.empty() && space != std::string_view::npos;) { // "4.123 V HOLD"
        space = beside.rfind(' ');
        const auto state = stateNamed(beside.substr(space + 1));
        if (!state || readUnit(beside).of != ColumnUnit::Of::nothing) break;
        into.flags |= *state;
        beside = space == std::string_view::npos ? std::string_view() : trimmed(beside.substr(0, space));
    }
    const std::string_view unitText = beside.empty() ? cell(cells, column.unitColumn) : beside;
    if (!takeUnit(unitText)) {
        if (!beside.empty() && readUnit(beside).of == ColumnUnit::Of::nothing) return badVolts(text);
        return noNumber(into, Flag::unit), std::nullopt;
    }
    const auto written = parseNumber(number->plain);
    const auto value = parseNumber(number->plain, exponent);
    if (!written || !value) return badVolts(text);
    if (std::abs(*written) >= kScpiOverload) {
        if (std::abs(*written) < kScpiNotANumber) noNumber(into, Flag::overload);
        return std::nullopt;
    }
    if (!unitGiven && std::abs(*value) > kMostWithoutUnit_V)
        return CellError{{"value %1 has no unit and is too much for volts", {quotedCell(text)}},
                         "say what it is with --volts-unit mV or --volts-unit V"};
    if (std::abs(*value) > kMostVolts) return badVolts(text);
    into.volts_V = *value;
    return std::nullopt;
}

} // namespace stillwire
