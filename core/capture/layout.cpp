// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/layout.hpp"

#include "core/capture/column_names.hpp"
#include "core/capture/fields.hpp"
#include "core/capture/foreign_cells.hpp"
#include "core/text/number.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace stillwire {

namespace {

using Fields = std::vector<std::string>;
using Of = ColumnUnit::Of;

Fields splitLine(std::string_view line, char delimiter) {
    Fields fields;
    fields.resize(splitRow(line, delimiter, fields));
    for (std::string& field : fields) {
        plainSigns(field);
        field = std::string(trimmed(field));
    }
    return fields;
}

int indexOf(const Fields& names, std::string_view wanted) {
    const auto found = std::find_if(names.begin(), names.end(),
                                    [&](const std::string& name) { return foldedText(name) == foldedText(wanted); });
    return found == names.end() ? Layout::kNone : static_cast<int>(found - names.begin());
}

// A column by the name a person gave, else by its number from 1.
int chosenColumn(const Fields& names, const std::string& wanted) {
    if (const int byName = indexOf(names, trimmed(wanted)); byName != Layout::kNone) return byName;
    const auto number = parseNumber(wanted);
    if (!number || *number != std::floor(*number) || *number < 1 || *number > static_cast<double>(names.size()))
        return Layout::kNone;
    return static_cast<int>(*number) - 1;
}

// What the cells of one column look like, of those that are not empty.
struct Cells {
    int filled = 0, measured = 0, moments = 0;
    bool countsUp = true;  // 1, 2, 3 …
    bool goesBack = false; // as no time does
    bool constant = true;
    double most = 0;
    [[nodiscard]] bool mostlyMeasured() const { return 2 * measured > filled; }
    [[nodiscard]] bool counter() const { return filled >= 3 && countsUp; }
};

Cells lookAt(const std::vector<Fields>& rows, std::size_t column) {
    Cells cells;
    std::optional<double> last;
    std::string first;
    for (const Fields& row : rows) {
        if (column >= row.size() || row[column].empty()) continue;
        const std::string& cell = row[column];
        if (cells.filled == 0) first = cell;
        cells.constant = cells.constant && cell == first;
        ++cells.filled;
        if (looksMeasured(cell)) ++cells.measured;
        for (const ShortClock clock : {ShortClock::none, ShortClock::minutesSeconds})
            if (parseMoment(cell, DateOrder::dayMonthYear, clock) ||
                parseMoment(cell, DateOrder::monthDayYear, clock)) {
                ++cells.moments;
                break;
            }
        const auto number = parseNumber(cell);
        if (!number) {
            cells.countsUp = false;
            continue;
        }
        cells.countsUp = cells.countsUp && *number == std::floor(*number) && (!last || *number == *last + 1);
        cells.goesBack = cells.goesBack || (last && *number < *last);
        cells.most = std::max(cells.most, *number);
        last = number;
    }
    return cells;
}

// One way to split the line, and what it makes of the columns.
class Columns {
public:
    Columns(std::string_view line, char delimiter, const std::vector<std::string_view>& rows,
            const ImportOptions& options)
        : options_(options), lines_(rows) {
        layout_.imported = true;
        layout_.delimiter = delimiter;
        layout_.names = splitLine(line, delimiter);
        layout_.columns = static_cast<int>(layout_.names.size());
        for (const std::string& name : layout_.names) parts_.push_back(readColumnName(name));
    }

    [[nodiscard]] Recognised recognise() {
        Recognised out;
        // Few lines have names like these; only then is it worth a look at the cells.
        std::vector<int> times = timeColumns(), volts = voltsColumns();
        out.hasTime = options_.interval || !times.empty();
        out.hasVolts = !volts.empty();
        if (!out.hasTime || !out.hasVolts) return out;
        for (const std::string_view row : lines_) rows_.push_back(splitLine(row, layout_.delimiter));
        takeUnits(out);
        takeNamesAsRow(out, times.empty() ? Layout::kNone : times.front(), volts.front());
        for (std::size_t i = 0; i < parts_.size(); ++i) cells_.push_back(lookAt(rows_, i));
        if (!options_.interval) {
            narrowTimes(times);
            if (times.size() > 1)
                out.question = CellError{{"the time may be in %1", {quotedNames(times)}},
                                         "say which with --time-column, by its name or its number from 1"};
            layout_.time = times.front();
        }
        narrowVolts(volts);
        if (volts.size() > 1)
            out.question = CellError{{"the volts may be in %1", {quotedNames(volts)}},
                                     "say which with --volts-column, by its name or its number from 1"};
        layout_.volts = voltsColumn(volts.front());
        if (layout_.time == layout_.volts.column) return {};
        takeReference(out);
        takeOthers();
        takeTerms();
        out.rowsFit = std::any_of(rows_.begin(), rows_.end(), [&](const Fields& row) { return fits(row); });
        out.layout = layout_;
        return out;
    }

private:
    [[nodiscard]] const ColumnName& part(int column) const { return parts_[static_cast<std::size_t>(column)]; }
    [[nodiscard]] const Cells& cells(int column) const { return cells_[static_cast<std::size_t>(column)]; }

    template <class Fits> [[nodiscard]] std::vector<int> columnsThat(Fits fits) const {
        std::vector<int> out;
        for (std::size_t i = 0; i < parts_.size(); ++i)
            if (fits(parts_[i])) out.push_back(static_cast<int>(i));
        return out;
    }
    [[nodiscard]] int firstThat(Says what) const {
        const auto all = columnsThat([what](const ColumnName& c) { return c.has(what); });
        return all.empty() ? Layout::kNone : all.front();
    }

    // The best by their names: a unit of time, a time, a date.
    [[nodiscard]] std::vector<int> timeColumns() const {
        if (!options_.timeColumn.empty()) {
            const int chosen = chosenColumn(layout_.names, options_.timeColumn);
            return chosen == Layout::kNone ? std::vector<int>() : std::vector{chosen};
        }
        const auto isTime = [](const ColumnName& c) {
            return !c.has(Says::other) && !c.has(Says::volts) && c.unit.of != Of::volts && c.unit.of != Of::other;
        };
        const auto byUnit = columnsThat([&](const ColumnName& c) { return isTime(c) && c.unit.of == Of::time; });
        const auto byName = columnsThat([&](const ColumnName& c) { return isTime(c) && c.has(Says::time); });
        // "Time" beside "ms": milliseconds of a clock, until the cells say otherwise.
        std::vector<int> out = byUnit;
        for (const int column : byName)
            if (std::find(out.begin(), out.end(), column) == out.end()) out.push_back(column);
        if (!out.empty()) return out;
        return columnsThat([&](const ColumnName& c) { return isTime(c) && c.has(Says::date); });
    }

    [[nodiscard]] std::vector<int> voltsColumns() const {
        if (!options_.voltsColumn.empty()) {
            const int chosen = chosenColumn(layout_.names, options_.voltsColumn);
            return chosen == Layout::kNone ? std::vector<int>() : std::vector{chosen};
        }
        const auto isValue = [](const ColumnName& c) {
            return !c.has(Says::other) && !c.has(Says::time) && !c.has(Says::reference) && !c.has(Says::unit) &&
                   !c.has(Says::status) && !c.has(Says::mark) && !c.has(Says::hold) && c.unit.of != Of::time;
        };
        const auto best = [&](auto&& fits) {
            return columnsThat([&](const ColumnName& c) { return isValue(c) && fits(c); });
        };
        const auto inVolts = [](const ColumnName& c) { return c.has(Says::volts) || c.unit.of == Of::volts; };
        // The signal by name; what is in volts by name or unit; a value of something. Means come after what was read.
        for (const bool mean : {false, true}) {
            auto named = best([&](const ColumnName& c) { return c.has(Says::signal) && c.has(Says::mean) == mean; });
            if (!named.empty()) return named;
            named = best([&](const ColumnName& c) {
                return inVolts(c) && c.has(Says::measured) && c.has(Says::mean) == mean;
            });
            if (!named.empty()) return named;
            named = best([&](const ColumnName& c) { return inVolts(c) && c.has(Says::mean) == mean; });
            if (!named.empty()) return named;
        }
        for (const bool mean : {false, true}) {
            const auto named =
                best([&](const ColumnName& c) { return c.has(Says::figure) && c.has(Says::mean) == mean; });
            if (!named.empty()) return named;
        }
        return {};
    }

    // A row of units under the names: the first one below, if it has nothing else where values stand.
    void takeUnits(Recognised& out) {
        if (rows_.empty()) return;
        const Fields& row = rows_.front();
        int units = 0, measured = 0;
        for (std::size_t i = 0; i < row.size() && i < parts_.size(); ++i) {
            std::string cell = row[i];
            std::erase_if(cell, [](char c) { return c == '(' || c == ')' || c == '[' || c == ']'; });
            if (readUnit(cell).of != Of::nothing) ++units;
            if (row[i].find_first_of("0123456789") != std::string::npos) ++measured;
        }
        if (units == 0 || measured > 0) return;
        for (std::size_t i = 0; i < row.size() && i < parts_.size(); ++i) {
            std::string cell = row[i];
            std::erase_if(cell, [](char c) { return c == '(' || c == ')' || c == '[' || c == ']'; });
            if (const ColumnUnit unit = readUnit(cell); unit.of != Of::nothing) parts_[i].unit = unit;
        }
        out.unitsBelow = true;
        rows_.erase(rows_.begin());
    }

    // Columns given by number have no names above them: such a line is the first row.
    void takeNamesAsRow(Recognised& out, int time, int volts) {
        const auto cell = [&](int column) { return layout_.names[static_cast<std::size_t>(column)]; };
        const std::string_view kDigits = "0123456789";
        const bool value = looksMeasured(cell(volts)) && cell(volts).find_first_of(kDigits) != std::string::npos;
        const bool stamp = time == Layout::kNone ||
                           (!cell(time).empty() && (kDigits.find(cell(time).front()) != std::string_view::npos ||
                                                    cell(time).front() == '-' || cell(time).front() == '+'));
        out.namesAreARow = value && stamp;
        if (!out.namesAreARow) return;
        rows_.insert(rows_.begin(), layout_.names);
        for (std::size_t i = 0; i < layout_.names.size(); ++i) layout_.names[i] = std::to_string(i + 1);
        for (ColumnName& one : parts_) one = {};
    }

    void narrow(std::vector<int>& columns, const std::function<bool(int)>& out) const {
        std::vector<int> left;
        for (const int column : columns)
            if (!out(column)) left.push_back(column);
        if (!left.empty()) columns = left;
    }

    void narrowTimes(std::vector<int>& times) {
        if (!options_.timeColumn.empty()) return;
        // A column that is nothing but "ms" and stays below a second goes with the clock beside it.
        for (const int column : times) {
            const ColumnName& name = part(column);
            const bool bare = name.unit.time_us == 1000 && !name.has(Says::time) &&
                              readUnit(layout_.names[static_cast<std::size_t>(column)]).of == Of::time;
            const bool clock = std::any_of(times.begin(), times.end(), [&](int other) {
                return other != column && cells(other).moments == cells(other).filled && cells(other).filled > 0;
            });
            if (bare && clock && cells(column).most < 1000) layout_.milliseconds = column;
        }
        std::erase(times, layout_.milliseconds);
        narrow(times, [&](int c) { return cells(c).filled == 0; });
        narrow(times, [&](int c) { return cells(c).goesBack; });
        narrow(times, [&](int c) { return cells(c).constant && cells(c).filled > 2; });
        narrow(times, [&](int c) { return cells(c).measured == 0 && cells(c).moments == 0; });
        // Time gone by in a unit of its own is as good as a clock beside it, and finer.
        if (layout_.milliseconds == Layout::kNone) narrow(times, [&](int c) { return part(c).unit.of != Of::time; });
    }

    void narrowVolts(std::vector<int>& volts) const {
        if (!options_.voltsColumn.empty()) return;
        narrow(volts, [&](int c) { return cells(c).filled == 0; });
        narrow(volts, [&](int c) { return !cells(c).mostlyMeasured(); });
        narrow(volts, [&](int c) { return cells(c).counter(); });
        narrow(volts, [&](int c) { return c == layout_.time; });
    }

    [[nodiscard]] VoltsColumn voltsColumn(int column) const {
        VoltsColumn out{column, options_.voltsExponent.value_or(0), options_.voltsExponent.has_value()};
        if (const ColumnUnit& unit = part(column).unit; unit.of == Of::volts) {
            out.exponent = unit.exponent;
            out.unitGiven = true;
        }
        return out;
    }

    void takeReference(Recognised& out) {
        if (!options_.referenceColumn.empty()) {
            const int chosen = chosenColumn(layout_.names, options_.referenceColumn);
            if (chosen == Layout::kNone || chosen == layout_.volts.column)
                out.hasVolts = false;
            else
                layout_.reference = voltsColumn(chosen);
            return;
        }
        auto columns = columnsThat([](const ColumnName& c) {
            return c.has(Says::reference) && !c.has(Says::other) && !c.has(Says::time) && c.unit.of != Of::time;
        });
        std::erase(columns, layout_.volts.column);
        std::erase_if(columns, [&](int c) { return !cells(c).mostlyMeasured() || cells(c).counter(); });
        if (columns.size() > 1 && !out.question)
            out.question = CellError{{"the reference may be in %1", {quotedNames(columns)}},
                                     "say which with --reference-column, by its name or its number from 1"};
        if (!columns.empty()) layout_.reference = voltsColumn(columns.front());
    }

    // The next one behind the value, else the first. Where a column says the function and none the unit, it says
    // both.
    void takeUnitColumn(VoltsColumn& value) const {
        auto columns = columnsThat([](const ColumnName& c) { return c.has(Says::unit); });
        narrow(columns, [&](int c) { return part(c).has(Says::status); });
        narrow(columns, [&](int c) { return c < value.column; });
        if (value.column != Layout::kNone && !columns.empty()) value.unitColumn = columns.front();
    }

    void takeOthers() {
        const auto exactly = [&](Says what, std::string_view name) {
            const int column = firstThat(what);
            return column != Layout::kNone && foldedText(layout_.names[static_cast<std::size_t>(column)]) == name
                       ? column
                       : Layout::kNone;
        };
        layout_.flags = exactly(Says::flags, "flags");
        layout_.mark = exactly(Says::mark, "mark");
        layout_.status = columnsThat([](const ColumnName& c) { return c.has(Says::status); });
        takeUnitColumn(layout_.volts);
        takeUnitColumn(layout_.reference);
        for (const VoltsColumn& column : {layout_.volts, layout_.reference})
            std::erase(layout_.status, column.unitColumn);
        layout_.hold = firstThat(Says::hold);
        // A time of day has its date beside it; one that is gone by has none, nor has one that was chosen.
        if (layout_.time == Layout::kNone || !options_.timeColumn.empty() || part(layout_.time).unit.of == Of::time)
            return;
        if (part(layout_.time).has(Says::date)) return;
        const auto dates = columnsThat(
            [](const ColumnName& c) { return c.has(Says::date) && !c.has(Says::time) && !c.has(Says::other); });
        for (const int column : dates)
            if (column != layout_.volts.column && cells(column).filled > 0 && layout_.date == Layout::kNone)
                layout_.date = column;
    }

    void takeTerms() {
        TimeTerms terms;
        terms.as = options_.timeAs;
        terms.order = options_.dateOrder;
        terms.interval = options_.interval;
        if (layout_.time != Layout::kNone && part(layout_.time).unit.of == Of::time)
            terms.unit_us = part(layout_.time).unit.time_us;
        layout_.times = TimeColumn(terms);
        layout_.numbers = NumberStyle(options_.decimalComma);
    }

    [[nodiscard]] bool fits(const Fields& row) const {
        const auto at = [&](int column) {
            const auto index = static_cast<std::size_t>(column);
            return column >= 0 && index < row.size() ? std::string_view(row[index]) : std::string_view();
        };
        const std::string_view time = at(layout_.time);
        const bool timely = layout_.time == Layout::kNone ||
                            (!time.empty() && time.find_first_of("0123456789") != std::string_view::npos);
        return timely && !at(layout_.volts.column).empty() && looksMeasured(at(layout_.volts.column));
    }

    [[nodiscard]] std::string quotedNames(const std::vector<int>& columns) const {
        std::string out;
        for (const int column : columns) {
            if (!out.empty()) out += ", ";
            out += quotedCell(layout_.names[static_cast<std::size_t>(column)]);
        }
        return out;
    }

    const ImportOptions& options_;
    const std::vector<std::string_view>& lines_;
    Layout layout_;
    std::vector<ColumnName> parts_;
    std::vector<Fields> rows_;
    std::vector<Cells> cells_;
};

} // namespace

bool recogniseCapture(std::string_view line, Layout& layout) {
    Fields names = splitLine(line, ',');
    for (std::string& name : names) name = foldedText(name);
    Layout found;
    found.columns = static_cast<int>(names.size());
    found.time = indexOf(names, "time_s");
    found.volts.column = indexOf(names, "volts");
    found.flags = indexOf(names, "flags");
    found.mark = indexOf(names, "mark");
    if (found.time == Layout::kNone || found.volts.column == Layout::kNone) return false;
    layout = found;
    return true;
}

Recognised recogniseForeign(std::string_view line, const std::vector<std::string_view>& rows,
                            const ImportOptions& options) {
    Recognised best;
    for (const char delimiter :
         options.delimiter != '\0' ? std::string(1, options.delimiter) : std::string(",;\t|")) {
        Recognised one = Columns(line, delimiter, rows, options).recognise();
        const auto better = [&] {
            const auto known = [](const Recognised& r) { return int{r.hasTime} + int{r.hasVolts}; };
            if (known(one) != known(best)) return known(one) > known(best);
            if (one.rowsFit != best.rowsFit) return one.rowsFit;
            return one.layout.columns > best.layout.columns;
        };
        if (better()) best = std::move(one);
    }
    return best;
}

std::optional<CellError> learnCells(const std::vector<std::string_view>& rows, const ImportOptions& options,
                                    Layout& layout) {
    std::vector<TimeColumn::Cell> times;
    std::vector<std::string> values;
    for (const std::string_view row : rows) {
        const Fields fields = splitLine(row, layout.delimiter);
        const auto cell = [&](int column) {
            const auto index = static_cast<std::size_t>(column);
            return column >= 0 && index < fields.size() ? fields[index] : std::string();
        };
        // What stands below the readings, or between them, says nothing of how they are written.
        const std::string time = cell(layout.time);
        if (layout.time != Layout::kNone && time.find_first_of("0123456789") == std::string::npos) continue;
        if (layout.time != Layout::kNone) {
            times.push_back({cell(layout.date), time});
            layout.numbers.learn(time);
        }
        for (const int column : {layout.volts.column, layout.reference.column}) {
            if (cell(column).empty() || !looksMeasured(cell(column))) continue;
            values.push_back(cell(column));
            layout.numbers.learn(cell(column));
        }
    }
    // Beyond what a sensor's wire can carry under one sign, within it under the other.
    if (!layout.numbers.certain() && (!options.voltsExponent || layout.volts.unitGiven)) {
        constexpr double kMost_V = 60;
        const auto fits = [&](DecimalSign sign) {
            return std::all_of(values.begin(), values.end(), [&](const std::string& value) {
                const auto number = writtenNumber(value, sign);
                if (!number) return true;
                const ColumnUnit own = readUnit(number->rest);
                const auto volts_V =
                    parseNumber(number->plain, own.of == Of::volts ? own.exponent : layout.volts.exponent);
                return !volts_V || std::abs(*volts_V) <= kMost_V || std::abs(*volts_V) > 1e30;
            });
        };
        const bool point = fits(DecimalSign::point), comma = fits(DecimalSign::comma);
        if (point != comma) layout.numbers.ruleOut(point ? DecimalSign::comma : DecimalSign::point);
    }
    if (auto question = layout.times.learn(times, layout.numbers)) return question;
    // No meter shows volts without decimals where a sensor's wire is read.
    const auto whole = [](const std::string& value) {
        return value.find_first_not_of("0123456789+-") == std::string::npos;
    };
    if (!layout.volts.unitGiven && layout.volts.unitColumn == Layout::kNone && values.size() > 2 &&
        std::all_of(values.begin(), values.end(), whole)) {
        const auto most = std::find_if(values.begin(), values.end(), [](const std::string& value) {
            return value.find_first_of("123456789") != std::string::npos;
        });
        if (most != values.end())
            return CellError{
                {"whole numbers without a unit, such as %1, may be volts or millivolts", {quotedCell(*most)}},
                "say which with --volts-unit mV or --volts-unit V"};
    }
    return std::nullopt;
}

} // namespace stillwire
