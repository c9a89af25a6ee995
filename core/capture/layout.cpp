// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/layout.hpp"

#include "core/capture/fields.hpp"
#include "core/text/date_time.hpp"
#include "core/text/number.hpp"

#include <algorithm>
#include <array>

namespace stillwire {

namespace {

using Fields = std::vector<std::string>;

Fields namesOf(std::string_view line, char delimiter) {
    Fields fields;
    fields.resize(splitRow(line, delimiter, fields));
    for (std::string& field : fields) {
        field = std::string(trimmed(field));
        for (char& c : field) {
            if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
        }
    }
    return fields;
}

int indexOf(const Fields& names, std::string_view wanted) {
    const auto found = std::find(names.begin(), names.end(), wanted);
    return found == names.end() ? Layout::kNone : static_cast<int>(found - names.begin());
}

struct Unit {
    std::string_view name;
    std::int64_t time_us; // 0: a unit of volts
    int exponent;
};
constexpr std::array<Unit, 24> kUnits = {{{"s", 1'000'000, 0},
                                          {"sec", 1'000'000, 0},
                                          {"secs", 1'000'000, 0},
                                          {"second", 1'000'000, 0},
                                          {"seconds", 1'000'000, 0},
                                          {"ms", 1'000, 0},
                                          {"msec", 1'000, 0},
                                          {"milliseconds", 1'000, 0},
                                          {"us", 1, 0},
                                          {"µs", 1, 0},
                                          {"min", 60'000'000, 0},
                                          {"minutes", 60'000'000, 0},
                                          {"h", 3'600'000'000, 0},
                                          {"hours", 3'600'000'000, 0},
                                          {"v", 0, 0},
                                          {"volt", 0, 0},
                                          {"volts", 0, 0},
                                          {"vdc", 0, 0},
                                          {"v dc", 0, 0},
                                          {"dcv", 0, 0},
                                          {"mv", 0, -3},
                                          {"mvdc", 0, -3},
                                          {"millivolts", 0, -3},
                                          {"uv", 0, -6}}};

constexpr std::array<std::string_view, 22> kTimeNames = {
    "time",        "t",         "timestamp", "time stamp",   "datetime",      "date time",
    "date/time",   "date-time", "elapsed",   "elapsed time", "relative time", "zeit",
    "zeitstempel", "uhrzeit",   "temps",     "horodatage",   "tiempo",        "tempo",
    "czas",        "tijd",      "tid",       "clock"};
constexpr std::array<std::string_view, 18> kVoltsNames = {
    "voltage", "spannung", "tension",     "tensión",        "tensione", "tensao", "voltaje",  "spanning", "spänning",
    "signal",  "reading",  "measurement", "measured value", "value",    "wert",   "messwert", "valeur",   "u"};

const Unit* unitNamed(std::string_view name) {
    const auto found = std::find_if(kUnits.begin(), kUnits.end(), [&](const Unit& u) { return u.name == name; });
    return found == kUnits.end() ? nullptr : &*found;
}

// "voltage (mv)", "voltage_mv", "t/s", "time in ms" and "ms" each in two.
struct Named {
    std::string base;
    const Unit* unit = nullptr;
};
Named takeApart(const std::string& name) {
    if (const Unit* unit = unitNamed(name)) return {"", unit};
    std::size_t open = std::string::npos, end = name.size();
    if (!name.empty() && (name.back() == ')' || name.back() == ']')) {
        open = name.find_last_of("([");
        end = name.size() - 1;
    } else {
        open = name.find_last_of("_ /");
    }
    if (open == std::string::npos || open + 1 > end) return {name, nullptr};
    const Unit* unit = unitNamed(trimmed(std::string_view(name).substr(open + 1, end - open - 1)));
    if (!unit) return {name, nullptr};
    std::string base(trimmed(std::string_view(name).substr(0, open)));
    if (base.size() > 3 && base.compare(base.size() - 3, 3, " in") == 0) base.resize(base.size() - 3);
    if (!base.empty() && base.back() == ',') base.pop_back();
    return {base, unit};
}

// The best column of `kind` (time or volts): a known name first, then a telling unit.
template <std::size_t N>
int bestColumn(const std::vector<Named>& columns, const std::array<std::string_view, N>& known, bool isTime) {
    const auto unitFits = [&](const Named& c) { return c.unit && (c.unit->time_us > 0) == isTime; };
    const auto unitClashes = [&](const Named& c) { return c.unit && (c.unit->time_us > 0) != isTime; };
    const auto pick = [&](auto&& fits) {
        const auto found = std::find_if(columns.begin(), columns.end(), fits);
        return found == columns.end() ? Layout::kNone : static_cast<int>(found - columns.begin());
    };
    // "volts" and "seconds" are names as much as units.
    int best = isTime
                   ? Layout::kNone
                   : pick([&](const Named& c) { return c.base.empty() && unitFits(c) && c.unit->name.size() > 3; });
    for (const std::string_view name : known) {
        if (best == Layout::kNone) best = pick([&](const Named& c) { return c.base == name && !unitClashes(c); });
    }
    return best == Layout::kNone ? pick(unitFits) : best;
}

// A column by the name a person gave, else by its number from 1.
int chosenColumn(const Fields& names, const std::string& wanted) {
    const Fields lower = namesOf(wanted, '\0');
    const int byName = lower.empty() ? Layout::kNone : indexOf(names, lower.front());
    if (byName != Layout::kNone) return byName;
    const auto number = parseNumber(wanted);
    if (!number || *number != std::floor(*number) || *number < 1 || *number > static_cast<double>(names.size())) {
        return Layout::kNone;
    }
    return static_cast<int>(*number) - 1;
}

} // namespace

bool recogniseCapture(std::string_view line, Layout& layout) {
    const Fields names = namesOf(line, ',');
    Layout found;
    found.columns = static_cast<int>(names.size());
    found.time = indexOf(names, "time_s");
    found.volts = indexOf(names, "volts");
    found.flags = indexOf(names, "flags");
    found.mark = indexOf(names, "mark");
    if (found.time == Layout::kNone || found.volts == Layout::kNone) return false;
    layout = found;
    return true;
}

bool recogniseForeign(std::string_view line, const ImportOptions& options, Layout& layout) {
    Layout best;
    for (const char delimiter :
         options.delimiter != '\0' ? std::string(1, options.delimiter) : std::string(",;\t|")) {
        const Fields names = namesOf(line, delimiter);
        std::vector<Named> parts;
        for (const std::string& name : names) parts.push_back(takeApart(name));
        Layout found;
        found.imported = true;
        found.delimiter = delimiter;
        found.columns = static_cast<int>(names.size());
        found.flags = indexOf(names, "flags");
        found.mark = indexOf(names, "mark");
        found.date = std::max(indexOf(names, "date"), indexOf(names, "datum"));
        found.unit = std::max({indexOf(names, "unit"), indexOf(names, "units"), indexOf(names, "einheit")});
        found.time = options.timeColumn.empty() ? bestColumn(parts, kTimeNames, true)
                                                : chosenColumn(names, options.timeColumn);
        found.volts = options.voltsColumn.empty() ? bestColumn(parts, kVoltsNames, false)
                                                  : chosenColumn(names, options.voltsColumn);
        if (found.time == Layout::kNone && options.timeColumn.empty()) std::swap(found.time, found.date);
        if (found.time == Layout::kNone || found.volts == Layout::kNone || found.time == found.volts) continue;
        if (!options.timeColumn.empty()) found.date = Layout::kNone;
        if (const Unit* unit = parts[static_cast<std::size_t>(found.time)].unit; unit && unit->time_us > 0) {
            found.timeUnit_us = unit->time_us;
            found.timeUnitGiven = true;
        }
        if (const Unit* unit = parts[static_cast<std::size_t>(found.volts)].unit; unit && unit->time_us == 0) {
            found.voltsExponent = unit->exponent;
        }
        if (found.columns > best.columns) best = found;
    }
    if (best.columns == 0) return false;
    layout = best;
    return true;
}

void learnCells(const std::vector<std::string_view>& rows, const ImportOptions& options, Layout& layout) {
    Fields fields;
    bool first = true, comma = false;
    for (const std::string_view row : rows) {
        const std::size_t count = splitRow(row, layout.delimiter, fields);
        const auto cell = [&](int column) {
            const auto index = static_cast<std::size_t>(column);
            return column >= 0 && index < count ? trimmed(fields[index]) : std::string_view();
        };
        const auto decimalComma = [&](std::string_view text) {
            const std::size_t at = text.rfind(',');
            return at != std::string_view::npos && text.find(':') == std::string_view::npos &&
                   text.find('.', at) == std::string_view::npos;
        };
        comma = comma || decimalComma(cell(layout.volts)) || decimalComma(cell(layout.time));
        const int dateColumn = layout.date == Layout::kNone ? layout.time : layout.date;
        layout.dayFirst = layout.dayFirst || saysDayFirst(cell(dateColumn));
        const auto time = parseNumber(cell(layout.time));
        if (first && time && !layout.timeUnitGiven) {
            // Times since 1970 without a unit: no capture is 3000 years of seconds long.
            if (*time > 1e14) {
                layout.timeUnit_us = 1;
            } else if (*time > 1e11) {
                layout.timeUnit_us = 1'000;
            }
        }
        first = first && !time;
    }
    layout.decimalComma = options.decimalComma.value_or(comma);
}

} // namespace stillwire
