// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/date_time.hpp"

#include "core/text/number.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace stillwire {

namespace {

struct Figure {
    int value = 0;
    int digits = 0; // 0: there was none
};

bool isLetter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c & 0x80) != 0; }

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
    std::string_view word() {
        std::size_t length = 0;
        while (length < text_.size() && isLetter(text_[length])) ++length;
        const std::string_view taken = text_.substr(0, length);
        text_.remove_prefix(length);
        return taken;
    }

private:
    std::string_view text_;
};

// Month names by their first letters, in the languages that are known; each is read to its end.
struct MonthName {
    std::string_view begins;
    int month;
};
constexpr std::array<MonthName, 37> kMonths = {
    {{"jan", 1},  {"ene", 1},        {"gen", 1},  {"sty", 1},  {"feb", 2}, {"fev", 2}, {"f\xC3\xA9v", 2}, {"lut", 2},
     {"mar", 3},  {"m\xC3\xA4r", 3}, {"mrz", 3},  {"maa", 3},  {"mrt", 3}, {"apr", 4}, {"avr", 4},        {"abr", 4},
     {"kwi", 4},  {"may", 5},        {"mai", 5},  {"mag", 5},  {"mei", 5}, {"maj", 5}, {"jun", 6},        {"juin", 6},
     {"giu", 6},  {"jul", 7},        {"juil", 7}, {"lug", 7},  {"aug", 8}, {"ago", 8}, {"sep", 9},        {"set", 9},
     {"oct", 10}, {"okt", 10},       {"ott", 10}, {"nov", 11}, {"de", 12}}};

// 0: no month.
int monthNamed(std::string_view word) {
    std::string lower(word);
    for (char& c : lower)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c | 0x20);
    std::size_t longest = 0;
    int month = 0;
    for (const MonthName& name : kMonths) {
        if (name.begins.size() <= longest || lower.rfind(name.begins, 0) != 0 || lower.size() < 3) continue;
        longest = name.begins.size();
        month = name.month;
    }
    return month;
}

struct Date {
    std::array<Figure, 3> figures;
    int month = 0; // by its name; then the middle figure is none
    char separator = '\0';
};

std::optional<Date> takeDate(Cursor& in) {
    Date date;
    std::array<Figure, 3>& f = date.figures;
    const auto between = [&](bool named) {
        if (named) {
            while (in.take(' ') || in.take('-') || in.take('/') || in.take('.') || in.take(',')) {
            }
            return true;
        }
        return in.take(date.separator);
    };
    if (isLetter(in.peek())) { // "Nov 27, 2025"
        date.month = monthNamed(in.word());
        between(true);
        f[0] = in.figure();
        between(true);
        f[2] = in.figure();
    } else {
        f[0] = in.figure();
        date.separator = in.next();
        if (date.separator == ' ' || date.separator == '.') in.spaces();
        const bool named = isLetter(in.peek());
        if (named) {
            date.month = monthNamed(in.word());
            if (date.month == 0) return std::nullopt;
        } else {
            f[1] = in.figure();
        }
        if (!named && date.separator == ' ') return std::nullopt;
        if (!between(named)) return std::nullopt;
        f[2] = in.figure();
    }
    constexpr std::string_view kSeparators = "-/. ";
    const auto fits = [](const Figure& one) { return one.digits == 1 || one.digits == 2; };
    if (date.month == 0 && (kSeparators.find(date.separator) == std::string_view::npos || !fits(f[1])))
        return std::nullopt;
    // One year at most, of two figures or four, and the rest of one or two.
    if (!(fits(f[0]) && (fits(f[2]) || f[2].digits == 4)) && !(f[0].digits == 4 && fits(f[2]))) return std::nullopt;
    return date;
}

std::optional<Time> midnightOf(const Date& date, DateOrder order) {
    const auto& [first, second, third] = date.figures;
    if (first.digits == 4)
        order = DateOrder::yearMonthDay;
    else if (third.digits == 4 && (date.separator == '.' || date.month > 0))
        order = DateOrder::dayMonthYear;
    else if (third.digits == 4 && order == DateOrder::yearMonthDay)
        return std::nullopt;
    Figure year = third, month = second, day = first;
    if (order == DateOrder::yearMonthDay) {
        year = first;
        day = third;
    } else if (order == DateOrder::monthDayYear && date.month == 0) {
        month = first;
        day = second;
    }
    if (date.month > 0) month.value = date.month;
    if (year.digits != 4 && year.digits != 2) return std::nullopt;
    const std::chrono::year_month_day civil{std::chrono::year(year.digits == 2 ? 2000 + year.value : year.value),
                                            std::chrono::month(static_cast<unsigned>(month.value)),
                                            std::chrono::day(static_cast<unsigned>(day.value))};
    if (month.value < 1 || month.value > 12 || day.value < 1 || day.value > 31 || !civil.ok()) return std::nullopt;
    return std::chrono::duration_cast<Time>(std::chrono::sys_days(civil).time_since_epoch());
}

// ".25" or ",25", or ":250" of three figures, in microseconds; 0 if there is none.
std::optional<Time> takeFraction(Cursor& in) {
    if (in.peek() != '.' && in.peek() != ',' && in.peek() != ':') return Time(0);
    const bool colon = in.next() == ':';
    const Figure f = in.figure();
    if (f.digits == 0 || (colon && f.digits != 3)) return std::nullopt;
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

// Nothing, "AM" or "p.m.", for an hour of 1 to 12. False if the hour does not fit.
bool takeHalfDay(Cursor& in, int& hour) {
    in.spaces();
    const char letter = static_cast<char>(in.peek() | 0x20);
    if (letter != 'a' && letter != 'p') return true;
    in.next();
    const bool points = in.take('.');
    if (points) in.spaces();
    if ((in.next() | 0x20) != 'm' || (points && !in.take('.')) || hour < 1 || hour > 12) return false;
    hour = hour % 12 + (letter == 'p' ? 12 : 0);
    return true;
}

std::optional<Time> clockTime(int hours, int minutes, int seconds, Time fraction) {
    if (seconds > 60 || minutes > 59) return std::nullopt;
    return std::chrono::hours(hours) + std::chrono::minutes(minutes) + std::chrono::seconds(seconds) + fraction;
}

std::optional<Time> takeClock(Cursor& in, bool dateGiven, ShortClock shortClock) {
    Figure hours = in.figure();
    if (hours.digits == 0 || hours.digits > (dateGiven ? 2 : 5) || !in.take(':')) return std::nullopt;
    Figure minutes = in.figure();
    if (minutes.digits == 0 || minutes.digits > 2) return std::nullopt;
    Figure seconds;
    const bool secondsGiven = in.take(':');
    if (secondsGiven) {
        seconds = in.figure();
        if (seconds.digits == 0 || seconds.digits > 2) return std::nullopt;
    } else if (!dateGiven && shortClock != ShortClock::hoursMinutes) {
        // Two figures alone could be hours and minutes or minutes and seconds; a fraction settles it.
        if (in.peek() != '.' && in.peek() != ',' && shortClock == ShortClock::none) return std::nullopt;
        seconds = minutes;
        minutes = hours;
        hours = {};
    }
    const auto fraction = takeFraction(in);
    if (!fraction || !takeHalfDay(in, hours.value) || (dateGiven && hours.value > 24)) return std::nullopt;
    if (hours.digits == 0) // minutes gone by may be more than an hour's
        return seconds.value > 60 ? std::nullopt
                                  : std::optional(std::chrono::minutes(minutes.value) +
                                                  std::chrono::seconds(seconds.value) + *fraction);
    return clockTime(hours.value, minutes.value, seconds.value, *fraction);
}

int valueOf(std::string_view digits) {
    int value = 0;
    for (const char c : digits) value = value * 10 + (c - '0');
    return value;
}

// "hhmmss", then milliseconds or a fraction.
std::optional<Time> figuresOfClock(std::string_view text) {
    const std::size_t digits = std::min(text.find_first_not_of("0123456789"), text.size());
    Cursor in(text.substr(digits));
    auto fraction = takeFraction(in);
    if ((digits != 6 && digits != 9) || !fraction || !in.done()) return std::nullopt;
    if (digits == 9) *fraction += std::chrono::milliseconds(valueOf(text.substr(6, 3)));
    if (valueOf(text.substr(0, 2)) > 24) return std::nullopt;
    return clockTime(valueOf(text.substr(0, 2)), valueOf(text.substr(2, 2)), valueOf(text.substr(4, 2)), *fraction);
}

} // namespace

std::optional<Moment> parseMoment(std::string_view text, DateOrder order, ShortClock shortClock) {
    text = trimmed(text);
    Cursor in(text);
    Moment moment;
    const std::size_t mark = text.find_first_of(":-/. ");
    moment.dateGiven = isLetter(in.peek()) || (mark != std::string_view::npos && text[mark] != ':');
    if (moment.dateGiven) {
        const auto date = takeDate(in);
        const auto midnight = date ? midnightOf(*date, order) : std::nullopt;
        if (!midnight) return std::nullopt;
        moment.time = *midnight;
        if (in.done()) return moment;
        if (!in.take('T') && !in.take('t') && !in.take(' ') && !in.take(',')) return std::nullopt;
        in.spaces();
    }
    const auto clock = takeClock(in, moment.dateGiven, shortClock);
    if (!clock) return std::nullopt;
    const auto zone = takeZone(in);
    in.spaces();
    if (!zone || !in.done()) return std::nullopt;
    moment.time += *clock - *zone;
    return moment;
}

std::optional<Moment> parseStamp(std::string_view text) {
    text = trimmed(text);
    constexpr std::string_view kDigits = "0123456789";
    const std::size_t digits = std::min(text.find_first_not_of(kDigits), text.size());
    std::size_t date = 0, clockAt = 0; // figures of the date, and where the clock begins
    if (digits == 8 || digits == 6) {
        date = digits;
        clockAt = digits + 1;
        if (digits < text.size() && std::string_view("T -_").find(text[digits]) == std::string_view::npos)
            return std::nullopt;
    } else if (digits == 14 || digits == 17 || digits == 12 || digits == 15) {
        date = clockAt = digits == 12 || digits == 15 ? 6 : 8;
    }
    if (date == 0 || clockAt >= text.size()) return std::nullopt;
    const auto clock = figuresOfClock(text.substr(clockAt));
    const int year = date == 6 ? 2000 + valueOf(text.substr(0, 2)) : valueOf(text.substr(0, 4));
    const std::chrono::year_month_day civil{
        std::chrono::year(year), std::chrono::month(static_cast<unsigned>(valueOf(text.substr(date - 4, 2)))),
        std::chrono::day(static_cast<unsigned>(valueOf(text.substr(date - 2, 2))))};
    if (!clock || !civil.ok() || year < 1990 || year > 2100) return std::nullopt;
    return Moment{std::chrono::duration_cast<Time>(std::chrono::sys_days(civil).time_since_epoch()) + *clock, true};
}

std::optional<Moment> parseClockFigures(std::string_view text) {
    text = trimmed(text);
    const std::size_t digits = std::min(text.find_first_not_of("0123456789"), text.size());
    const std::string padded = (digits == 5 ? "0" : "") + std::string(text);
    const auto clock = digits == 9 ? std::nullopt : figuresOfClock(padded);
    if (!clock) return std::nullopt;
    return Moment{*clock, false};
}

} // namespace stillwire
