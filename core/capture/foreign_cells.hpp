// SPDX-License-Identifier: GPL-3.0-or-later
// The cells of another program's row into readings, as loggers and spreadsheets write them.
#pragma once

#include "core/capture/layout.hpp"
#include "core/domain/reading.hpp"

#include <optional>
#include <string>
#include <vector>

namespace stillwire {

// True for a cell that is a number or what a meter shows instead of one.
[[nodiscard]] bool looksMeasured(std::string_view cell);

class ForeignCells {
public:
    explicit ForeignCells(const Layout& layout) : layout_(layout), numbers_(layout.numbers), times_(layout.times) {}

    struct Row {
        Time time{0};
        std::optional<Reading> reference, signal;
    };
    // From the cells of a row, which it may tidy. Where the meter shows no number, and does not say why, there is no
    // reading: what the gap in time means is for the examination.
    [[nodiscard]] std::optional<CellError> readTime(std::vector<std::string>& cells, Row& into);
    [[nodiscard]] std::optional<CellError> readVolts(const std::vector<std::string>& cells, Row& into);

    [[nodiscard]] const NumberStyle& numbers() const { return numbers_; }
    [[nodiscard]] const TimeColumn& times() const { return times_; }
    [[nodiscard]] std::size_t withoutNumber() const { return withoutNumber_; }

private:
    [[nodiscard]] std::string_view cell(const std::vector<std::string>& cells, int column) const;
    [[nodiscard]] std::optional<CellError> readOne(const std::vector<std::string>& cells, const VoltsColumn& column,
                                                   Reading& into);

    const Layout& layout_;
    NumberStyle numbers_;
    TimeColumn times_;
    std::size_t withoutNumber_ = 0;
};

} // namespace stillwire
