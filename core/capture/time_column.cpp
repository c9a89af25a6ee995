// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/time_column.hpp"

#include "core/capture/column_names.hpp"
#include "core/text/number.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <utility>

namespace stillwire {

namespace {

constexpr Time kHalfDay = std::chrono::hours(12), kDay = std::chrono::hours(24);
// No meter sends faster or slower; and what those on a bench send, where a number has no unit.
constexpr double kFastest_s = 0.001, kSlowest_s = 60, kUsuallyFastest_s = 0.09, kUsuallySlowest_s = 2;
// Days since 1899-12-30, from 2000 to 2100, and the years 2001 to 2100 since 1970.
constexpr double kFirstSerial = 36526, kLastSerial = 73051, kFirstEpoch_s = 1e9, kLastEpoch_s = 4.2e9;

struct Named {
    TimeAs as;
    const char* name;
    std::int64_t unit_us; // of a number; 0: it is figures of a clock
};
constexpr std::array<Named, 11> kNamed = {{{TimeAs::microseconds, "us", 1},
                                           {TimeAs::milliseconds, "ms", 1'000},
                                           {TimeAs::seconds, "s", 1'000'000},
                                           {TimeAs::minutes, "min", 60'000'000},
                                           {TimeAs::hours, "h", 3'600'000'000},
                                           {TimeAs::days, "d", 86'400'000'000},
                                           {TimeAs::clockFigures, "hhmmss", 0},
                                           {TimeAs::stampFigures, "stamp", 0},
                                           {TimeAs::hoursMinutes, "h:m", 0},
                                           {TimeAs::minutesSeconds, "m:s", 0},
                                           {TimeAs::written, "clock", 0}}};
constexpr std::array<std::pair<DateOrder, const char*>, 3> kOrders = {
    {{DateOrder::yearMonthDay, "ymd"}, {DateOrder::dayMonthYear, "dmy"}, {DateOrder::monthDayYear, "mdy"}}};

const Named& named(TimeAs as) {
    return *std::find_if(kNamed.begin(), kNamed.end(), [as](const Named& one) { return one.as == as; });
}
std::int64_t unitOf(TimeAs as) { return named(as).unit_us; }

std::optional<TimeAs> asOfUnit(std::int64_t unit_us) {
    for (const Named& one : kNamed)
        if (one.unit_us == unit_us && unit_us > 0) return one.as;
    return std::nullopt;
}

CellError noTime(const TimeColumn::Cell& cell) {
    CellError error = badTime(trimmed(cell.date.empty() ? cell.time : cell.date + " " + cell.time));
    error.mend = "write seconds, hours:minutes:seconds, or a date as YYYY-MM-DD hh:mm:ss; what is below the "
                 "readings --last-line leaves out";
    return error;
}

// "093000": no number is written with noughts in front.
bool leadingNought(std::string_view text) {
    return text.size() > 1 && text[0] == '0' && text[1] >= '0' && text[1] <= '9';
}

std::string listed(const std::vector<TimeAs>& all) {
    std::string out;
    for (const TimeAs as : all) out += (out.empty() ? "" : ", ") + std::string(nameOf(as));
    return out;
}

} // namespace

const char* nameOf(TimeAs as) { return named(as).name; }
std::optional<TimeAs> timeAsNamed(std::string_view name) {
    for (const Named& one : kNamed)
        if (name == one.name) return one.as;
    return std::nullopt;
}
const char* nameOf(DateOrder order) {
    return std::find_if(kOrders.begin(), kOrders.end(), [order](const auto& one) { return one.first == order; })
        ->second;
}
std::optional<DateOrder> dateOrderNamed(std::string_view name) {
    for (const auto& [order, text] : kOrders)
        if (name == text) return order;
    return std::nullopt;
}

std::optional<Moment> TimeColumn::parse(const Candidate& as, const Cell& cell, DecimalSign sign) const {
    if (const std::int64_t own_us = unitOf(as.as); own_us > 0) {
        const auto number = writtenNumber(cell.time, sign);
        if (!number || !cell.date.empty()) return std::nullopt;
        std::int64_t unit_us = own_us;
        if (!number->rest.empty()) { // "0.4 s"
            const ColumnUnit unit = readUnit(number->rest);
            if (unit.of != ColumnUnit::Of::time) return std::nullopt;
            unit_us = unit.time_us;
        }
        const auto time = parseTime(number->plain, unit_us);
        if (!time) return std::nullopt;
        return Moment{*time, true};
    }
    const auto both = [&] { return cell.date.empty() ? cell.time : cell.date + " " + cell.time; };
    switch (as.as) {
    case TimeAs::stampFigures: return parseStamp(both());
    case TimeAs::clockFigures: {
        const auto clock = parseClockFigures(cell.time);
        if (!clock || cell.date.empty()) return clock;
        const auto day = parseMoment(cell.date, as.order);
        if (!day) return std::nullopt;
        return Moment{day->time + clock->time, true};
    }
    case TimeAs::hoursMinutes: return parseMoment(both(), as.order, ShortClock::hoursMinutes);
    case TimeAs::minutesSeconds: return parseMoment(both(), as.order, ShortClock::minutesSeconds);
    default: return parseMoment(both(), as.order);
    }
}

Time TimeColumn::fromFirst(Candidate& candidate, const Moment& moment) {
    if (!candidate.any) candidate.base = moment.time;
    Time time = moment.time - candidate.base + candidate.midnights;
    if (candidate.any && !moment.dateGiven && time < candidate.last - kHalfDay) {
        candidate.midnights += kDay;
        time += kDay;
    }
    candidate.dated = moment.dateGiven && unitOf(candidate.as) == 0;
    candidate.any = true;
    candidate.last = time;
    return time;
}

// The ways that most of the cells can be read, of those that have no unit to be asked for.
std::vector<TimeColumn::Candidate> TimeColumn::fitting(const std::vector<Cell>& cells, DecimalSign sign) const {
    std::vector<Candidate> all;
    const auto add = [&](TimeAs as) {
        Candidate candidate;
        candidate.as = as;
        for (const auto& [order, name] : kOrders) {
            candidate.order = order;
            if (!terms_.order || *terms_.order == order) all.push_back(candidate);
            if (unitOf(as) > 0 || as == TimeAs::stampFigures) break;
        }
    };
    if (terms_.as) {
        add(*terms_.as);
    } else {
        // As long as the unit is not known, the one that holds the longest numbers.
        add(terms_.unit_us ? asOfUnit(*terms_.unit_us).value_or(TimeAs::seconds) : TimeAs::microseconds);
        for (const TimeAs as : {TimeAs::written, TimeAs::stampFigures, TimeAs::clockFigures}) add(as);
        if (terms_.unit_us)
            std::erase_if(
                all, [](const Candidate& c) { return c.as == TimeAs::stampFigures || c.as == TimeAs::clockFigures; });
    }
    std::vector<std::size_t> fits;
    for (const Candidate& one : all)
        fits.push_back(static_cast<std::size_t>(std::count_if(
            cells.begin(), cells.end(), [&](const Cell& c) { return parse(one, c, sign).has_value(); })));
    const std::size_t most = *std::max_element(fits.begin(), fits.end());
    std::vector<Candidate> best;
    for (std::size_t i = 0; i < all.size(); ++i)
        if (most > 0 && fits[i] == most) best.push_back(all[i]);
    return best;
}

namespace {

// The cells that are numbers, in a unit that nobody knows yet.
std::vector<double> valuesOf(const std::vector<TimeColumn::Cell>& cells, DecimalSign sign) {
    std::vector<double> out;
    for (const TimeColumn::Cell& cell : cells) {
        const auto number = writtenNumber(cell.time, sign);
        if (const auto value = number ? parseNumber(number->plain) : std::nullopt) out.push_back(*value);
    }
    return out;
}

// The median of the steps forward; 0: there are none.
double usualStep(const std::vector<double>& values) {
    std::vector<double> steps;
    for (std::size_t i = 1; i < values.size(); ++i)
        if (values[i] > values[i - 1]) steps.push_back(values[i] - values[i - 1]);
    if (steps.empty()) return 0;
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::nth_element(steps.begin(), middle, steps.end());
    return *middle;
}

} // namespace

// A number without a unit: which one it can be follows from how big it is and how far apart the rows are.
std::optional<CellError> TimeColumn::learnNumbers(const std::vector<Cell>& cells, NumberStyle& style) {
    struct Way {
        std::optional<TimeAs> as; // certain
        std::vector<TimeAs> possible;
        double step = 0; // in the number's own unit
    };
    const auto wayOf = [&](DecimalSign sign) -> Way {
        const std::vector<double> values = valuesOf(cells, sign);
        const double step = usualStep(values);
        const double most = values.empty() ? 0 : *std::max_element(values.begin(), values.end());
        const auto within = [&](double size_s, double least_s, double greatest_s) {
            return size_s >= least_s && size_s <= greatest_s;
        };
        const auto meters = [&](double unit_s) { return within(step * unit_s, kFastest_s, kSlowest_s); };
        Way way{std::nullopt, {}, step};
        if (within(most, kFirstEpoch_s * 1e6, kLastEpoch_s * 1e6)) {
            way.as = TimeAs::microseconds;
        } else if (within(most, kFirstEpoch_s * 1e3, kLastEpoch_s * 1e3)) {
            way.as = TimeAs::milliseconds;
        } else if (within(most, kFirstSerial, kLastSerial) && step > 0 && meters(86400) && !meters(1)) {
            way.as = TimeAs::days;
        } else if (step == 0 || within(step, kUsuallyFastest_s, kUsuallySlowest_s)) {
            way.as = TimeAs::seconds;
        } else {
            for (const Named& one : kNamed)
                if (one.unit_us > 0 && meters(static_cast<double>(one.unit_us) / 1e6)) way.possible.push_back(one.as);
        }
        return way;
    };
    std::optional<Way> way;
    for (const DecimalSign sign : {DecimalSign::point, DecimalSign::comma}) {
        if (!style.possible(sign)) continue;
        Way one = wayOf(sign);
        // A sign under which no meter keeps this pace is not this file's.
        if (way && way->as.has_value() != one.as.has_value()) {
            style.ruleOut(one.as ? DecimalSign::point : DecimalSign::comma);
            if (one.as) way = std::move(one);
        } else if (!way) {
            way = std::move(one);
        }
    }
    if (way && way->as) {
        candidates_ = {Candidate{}};
        candidates_.front().as = *way->as;
        unitAssumed_ = *way->as == TimeAs::seconds;
        return std::nullopt;
    }
    const std::string units =
        listed(way->possible.empty() ? std::vector{TimeAs::milliseconds, TimeAs::seconds} : way->possible);
    return CellError{{"times have no unit and are usually %1 apart", {plain(way->step, way->step < 0.1 ? 6 : 2)}},
                     {"say what they are with --time-as, one of: %1", {units}}};
}

std::optional<CellError> TimeColumn::learn(const std::vector<Cell>& cells, NumberStyle& style) {
    if (terms_.interval) return std::nullopt;
    candidates_ = fitting(cells, style.possible(DecimalSign::point) ? DecimalSign::point : DecimalSign::comma);
    const auto isNumber = [](const Candidate& c) { return unitOf(c.as) > 0; };
    const auto has = [&](TimeAs as) {
        return std::any_of(candidates_.begin(), candidates_.end(), [as](const Candidate& c) { return c.as == as; });
    };
    if (candidates_.empty()) {
        const bool twoFigures = std::any_of(cells.begin(), cells.end(), [](const Cell& cell) {
            return parseMoment(cell.time, DateOrder::yearMonthDay, ShortClock::minutesSeconds).has_value();
        });
        if (twoFigures && !terms_.as)
            return CellError{
                {"time %1 may be hours and minutes or minutes and seconds", {quotedCell(cells.front().time)}},
                "say which with --time-as h:m or --time-as m:s"};
        // The row itself says what is wrong with it.
        candidates_ = {Candidate{}};
        candidates_.front().as = terms_.as.value_or(
            terms_.unit_us ? asOfUnit(*terms_.unit_us).value_or(TimeAs::seconds) : TimeAs::written);
        return std::nullopt;
    }
    if (terms_.as) return std::nullopt;
    if (has(TimeAs::stampFigures)) {
        std::erase_if(candidates_, [](const Candidate& c) { return c.as != TimeAs::stampFigures; });
        return std::nullopt;
    }
    if (has(TimeAs::clockFigures) &&
        std::any_of(cells.begin(), cells.end(), [](const Cell& c) { return leadingNought(c.time); }))
        std::erase_if(candidates_, isNumber);
    if (std::any_of(candidates_.begin(), candidates_.end(), isNumber)) {
        if (has(TimeAs::clockFigures) && cells.size() > 1)
            return CellError{{"time %1 may be seconds or a time of day", {quotedCell(cells.front().time)}},
                             "say which with --time-as s or --time-as hhmmss"};
        std::erase_if(candidates_, [&](const Candidate& c) { return !isNumber(c); });
        const auto unitBeside = [&]() -> std::optional<TimeAs> {
            for (const Cell& cell : cells)
                if (const auto number = style.read(cell.time); number && !number->rest.empty())
                    return asOfUnit(readUnit(number->rest).time_us);
            return std::nullopt;
        }();
        if (!terms_.unit_us && !unitBeside) return learnNumbers(cells, style);
        if (unitBeside) candidates_.front().as = *unitBeside;
        if (!style.certain()) {
            const double unit_s = static_cast<double>(unitOf(candidates_.front().as)) / 1e6;
            const double point_s = unit_s * usualStep(valuesOf(cells, DecimalSign::point));
            const double comma_s = unit_s * usualStep(valuesOf(cells, DecimalSign::comma));
            const auto fits = [](double step_s) { return step_s >= kFastest_s && step_s <= kSlowest_s; };
            if (fits(point_s) != fits(comma_s))
                style.ruleOut(fits(point_s) ? DecimalSign::comma : DecimalSign::point);
        }
    }
    return std::nullopt;
}

std::optional<CellError> TimeColumn::read(const Cell& cell, const NumberStyle& style, Time& into) {
    if (terms_.interval) {
        into = *terms_.interval * rows_++;
        return std::nullopt;
    }
    if (cell.time.empty()) return badTime({});
    const bool number = !candidates_.empty() && unitOf(candidates_.front().as) > 0;
    if (number && style.twoReadings(cell.time))
        return CellError{{"time %1 may have a decimal comma or a comma between thousands", {quotedCell(cell.time)}},
                         "say which with --decimal-comma or --decimal-point"};
    const DecimalSign sign = style.possible(DecimalSign::point) ? DecimalSign::point : DecimalSign::comma;
    struct Way {
        Candidate after;
        Time time{0};
        bool likely = false;
    };
    std::vector<Way> ways;
    for (const Candidate& candidate : candidates_) {
        const auto moment = parse(candidate, cell, sign);
        if (!moment) continue;
        Way way{candidate};
        way.time = fromFirst(way.after, *moment);
        const Time step = way.time - (candidate.any ? candidate.last : way.time);
        way.likely = step >= Time(0) && step <= kDay;
        ways.push_back(way);
    }
    if (ways.empty()) return noTime(cell);
    // Day and month the wrong way round leap by a month where the right way goes on by a day.
    if (std::any_of(ways.begin(), ways.end(), [](const Way& w) { return w.likely; }))
        std::erase_if(ways, [](const Way& w) { return !w.likely; });
    if (std::any_of(ways.begin(), ways.end(), [&](const Way& w) { return w.time != ways.front().time; }))
        return CellError{{"the date in %1 can be read in more than one order",
                          {quotedCell(cell.date.empty() ? cell.time : cell.date)}},
                         "say which with --date-order ymd, dmy or mdy"};
    candidates_.clear();
    for (const Way& way : ways) candidates_.push_back(way.after);
    into = ways.front().time;
    return std::nullopt;
}

std::optional<DateOrder> TimeColumn::order() const {
    if (candidates_.size() != 1 || !candidates_.front().dated || candidates_.front().as == TimeAs::stampFigures)
        return std::nullopt;
    return candidates_.front().order;
}

} // namespace stillwire
