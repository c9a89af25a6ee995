// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/date_time.hpp"

#include "core/text/number.hpp"

#include <algorithm>

namespace stillwire {

namespace {

struct Figure {
    int value = 0;
    int digits = 0; // 0: there was none
};

// Takes pieces off the front of a text.
class Cursor {
public:
    explicit Cursor(std::string_view text) : text_(text) {}

    [[nodiscard]] bool done() const { return text_.empty(); }
    [[nodiscard]] char peek() const { return text_.empty() ? '\0' : text_.front(); }
    char next() {
        const char c = peek();
        if (!text_.empty()) text_.remove_prefix(1);
        return c;
    }
    bool take(char c) {
        if (peek() != c) return false;
        text_.remove_prefix(1);
        return true;
    }
    void spaces() {
        while (take(' ')) {
        }
    }
    Figure figure() {
        Figure f;
        while (f.digits < 9 && peek() >= '0' && peek() <= '9') {
            f.value = f.value * 10 + (next() - '0');
            ++f.digits;
        }
        return f;
    }
    [[nodiscard]] std::string_view rest() const { return text_; }

private:
    std::string_view text_;
};

struct Date {
    Figure first, second, third;
    char separator = '\0';
    [[nodiscard]] bool yearFirst() const { return first.digits == 4; }
};

std::optional<Date> takeDate(Cursor& in) {
    Date date;
    date.first = in.figure();
    date.separator = in.next();
    if (date.first.digits == 0 || (date.separator != '-' && date.separator != '/' && date.separator != '.')) {
        return std::nullopt;
    }
    date.second = in.figure();
    if (!in.take(date.separator)) return std::nullopt;
    date.third = in.figure();
    if (date.second.digits == 0 || date.second.digits > 2) return std::nullopt;
    if (date.yearFirst())
        return date.third.digits == 1 || date.third.digits == 2 ? std::optional(date) : std::nullopt;
    return date.first.digits <= 2 && (date.third.digits == 4 || date.third.digits == 2) ? std::optional(date)
                                                                                        : std::nullopt;
}

std::optional<Time> midnightOf(const Date& date, bool dayFirst) {
    int year = date.first.value, month = date.second.value, day = date.third.value;
    if (!date.yearFirst()) {
        year = date.third.digits == 2 ? 2000 + date.third.value : date.third.value;
        const bool dayLeads = date.separator == '.' || dayFirst || date.first.value > 12;
        day = dayLeads ? date.first.value : date.second.value;
        month = dayLeads ? date.second.value : date.first.value;
    }
    if (month < 1 || month > 12 || day < 1 || day > 31) return std::nullopt;
    const std::chrono::year_month_day civil{std::chrono::year(year), std::chrono::month(static_cast<unsigned>(month)),
                                            std::chrono::day(static_cast<unsigned>(day))};
    if (!civil.ok()) return std::nullopt;
    return std::chrono::duration_cast<Time>(std::chrono::sys_days(civil).time_since_epoch());
}

// ".25" or ",25" in microseconds; 0 if there is none.
std::optional<Time> takeFraction(Cursor& in) {
    if (in.peek() != '.' && in.peek() != ',') return Time(0);
    in.next();
    const Figure f = in.figure();
    if (f.digits == 0) return std::nullopt;
    std::int64_t scaled = static_cast<std::int64_t>(f.value) * 1'000'000;
    for (int i = 0; i < f.digits; ++i) scaled = (i + 1 == f.digits ? scaled + 5 : scaled) / 10;
    return Time(scaled);
}

// The offset of a zone: "Z", "+01:00", "-0530"; 0 if there is none.
std::optional<Time> takeZone(Cursor& in) {
    in.spaces();
    if (in.take('Z') || in.take('z') || in.done()) return Time(0);
    const char sign = in.next();
    if (sign != '+' && sign != '-') return std::nullopt;
    Figure hours = in.figure();
    Figure minutes;
    if (hours.digits == 4) {
        minutes = {hours.value % 100, 2};
        hours = {hours.value / 100, 2};
    } else if (in.take(':')) {
        minutes = in.figure();
        if (minutes.digits != 2) return std::nullopt;
    }
    if (hours.digits != 2 || hours.value > 15 || minutes.value > 59) return std::nullopt;
    const Time offset = std::chrono::hours(hours.value) + std::chrono::minutes(minutes.value);
    return sign == '-' ? -offset : offset;
}

// Nothing, "AM" or "PM", for an hour of 1 to 12. False if the hour does not fit.
bool takeHalfDay(Cursor& in, int& hour) {
    in.spaces();
    const char letter = static_cast<char>(in.peek() | 0x20);
    if (letter != 'a' && letter != 'p') return true;
    in.next();
    if ((in.next() | 0x20) != 'm' || hour < 1 || hour > 12) return false;
    hour = hour % 12 + (letter == 'p' ? 12 : 0);
    return true;
}

std::optional<Time> takeClock(Cursor& in, bool dateGiven) {
    Figure hours = in.figure();
    if (hours.digits == 0 || hours.digits > (dateGiven ? 2 : 5) || !in.take(':')) return std::nullopt;
    Figure minutes = in.figure();
    if (minutes.digits == 0 || minutes.digits > 2) return std::nullopt;
    Figure seconds;
    const bool secondsGiven = in.take(':');
    if (secondsGiven) {
        seconds = in.figure();
        if (seconds.digits == 0 || seconds.digits > 2) return std::nullopt;
    } else if (!dateGiven) {
        // Two figures alone could be hours and minutes or minutes and seconds; a fraction settles it.
        if (in.peek() != '.' && in.peek() != ',') return std::nullopt;
        seconds = minutes;
        minutes = hours;
        hours = {};
    }
    if (seconds.value > 60 || (hours.digits > 0 && minutes.value > 59)) return std::nullopt;
    const auto fraction = takeFraction(in);
    if (!fraction || !takeHalfDay(in, hours.value) || (dateGiven && hours.value > 24)) return std::nullopt;
    return std::chrono::hours(hours.value) + std::chrono::minutes(minutes.value) +
           std::chrono::seconds(seconds.value) + *fraction;
}

} // namespace

std::optional<Moment> parseMoment(std::string_view text, bool dayFirst) {
    text = trimmed(text);
    Cursor in(text);
    Moment moment;
    const std::size_t mark = text.find_first_of(":-/.");
    moment.dateGiven = mark != std::string_view::npos && text[mark] != ':';
    if (moment.dateGiven) {
        const auto date = takeDate(in);
        const auto midnight = date ? midnightOf(*date, dayFirst) : std::nullopt;
        if (!midnight) return std::nullopt;
        moment.time = *midnight;
        if (in.done()) return moment;
        if (!in.take('T') && !in.take('t') && !in.take(' ') && !in.take(',')) return std::nullopt;
        in.spaces();
    }
    const auto clock = takeClock(in, moment.dateGiven);
    if (!clock) return std::nullopt;
    const auto zone = takeZone(in);
    in.spaces();
    if (!zone || !in.done()) return std::nullopt;
    moment.time += *clock - *zone;
    return moment;
}

bool saysDayFirst(std::string_view text) {
    Cursor in(trimmed(text));
    const auto date = takeDate(in);
    return date && !date->yearFirst() && date->first.value > 12 && date->second.value <= 12;
}

} // namespace stillwire
