// SPDX-License-Identifier: GPL-3.0-or-later
// What the time column of another program's file means. Every way to read it is kept until the file rules it out;
// where two are left that would put a row at different times, the person is asked.
#pragma once

#include "core/capture/cell_error.hpp"
#include "core/capture/number_cells.hpp"
#include "core/text/date_time.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

enum class TimeAs {
    microseconds,
    milliseconds,
    seconds,
    minutes,
    hours,
    days,           // as spreadsheets count them
    clockFigures,   // "100000" is ten o'clock
    stampFigures,   // "20260301100000"
    hoursMinutes,   // "10:00"
    minutesSeconds, // "10:00"
    written         // dates and clocks with signs between their figures
};

// "us", "ms", "s", "min", "h", "d", "hhmmss", "stamp", "h:m", "m:s", "clock": what an option takes.
[[nodiscard]] const char* nameOf(TimeAs as);
[[nodiscard]] std::optional<TimeAs> timeAsNamed(std::string_view name);
[[nodiscard]] const char* nameOf(DateOrder order); // "ymd", "dmy", "mdy"
[[nodiscard]] std::optional<DateOrder> dateOrderNamed(std::string_view name);

// What is known of the column without its cells.
struct TimeTerms {
    std::optional<std::int64_t> unit_us;
    std::optional<TimeAs> as;
    std::optional<DateOrder> order;
    std::optional<Time> interval; // there is no column: a row is so long after the one before
};

class TimeColumn {
public:
    struct Cell {
        std::string date, time; // the date may stand in a column of its own
    };

    TimeColumn() = default;
    explicit TimeColumn(TimeTerms terms) : terms_(terms) {}

    // From some of the first rows, and what they say of the decimal sign. The question that is left, if one is.
    [[nodiscard]] std::optional<CellError> learn(const std::vector<Cell>& cells, NumberStyle& style);

    // The row's time, from the first row.
    [[nodiscard]] std::optional<CellError> read(const Cell& cell, const NumberStyle& style, Time& into);

    [[nodiscard]] TimeAs as() const { return candidates_.empty() ? TimeAs::seconds : candidates_.front().as; }
    // Nothing where no date tells, or several orders put every row at the same time.
    [[nodiscard]] std::optional<DateOrder> order() const;
    [[nodiscard]] bool unitAssumed() const { return unitAssumed_; }

private:
    struct Candidate {
        TimeAs as = TimeAs::seconds;
        DateOrder order = DateOrder::yearMonthDay;
        bool any = false, dated = false;
        Time base{0}, last{0}, midnights{0};
    };
    [[nodiscard]] std::optional<Moment> parse(const Candidate& as, const Cell& cell, DecimalSign sign) const;
    [[nodiscard]] static Time fromFirst(Candidate& candidate, const Moment& moment);
    [[nodiscard]] std::vector<Candidate> fitting(const std::vector<Cell>& cells, DecimalSign sign) const;
    [[nodiscard]] std::optional<CellError> learnNumbers(const std::vector<Cell>& cells, NumberStyle& style);

    TimeTerms terms_;
    std::vector<Candidate> candidates_;
    bool unitAssumed_ = false;
    std::int64_t rows_ = 0;
};

} // namespace stillwire
