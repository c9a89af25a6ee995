// SPDX-License-Identifier: GPL-3.0-or-later
// Loggers that write hours, minutes and seconds give several readings one time: here each gets its own.
#pragma once

#include "core/capture/prologue.hpp"

#include <cstdint>
#include <optional>
#include <string_view>

namespace stillwire {

// What readings that have the same time tell of these whole rows: all times are whole seconds; whole minutes, on
// which nothing can be spread; or the one time that all have, which is none. The last two of imports only.
enum class SharedTimes { none, seconds, minutes, all };
[[nodiscard]] SharedTimes sharedTimes(std::string_view rows, const Prologue& prologue);

// Between the parser and who takes the rows: n readings of one second are 1/n s apart. The first second may have been
// entered late and the last one left early: with fewer readings than their neighbour they keep its spacing, the first
// up to its end, the last from its beginning. A second in which a time is not whole is left as written. A mark stays
// between the readings it is between. Holds the readings of two seconds, of kMost at most each: more are left as
// written.
class SecondSpreader final : public RowSink {
public:
    static constexpr std::size_t kMost = 16384;

    // `fromFirst`: times count from the first reading, wherever in its second that comes to be.
    SecondSpreader(RowSink& to, bool fromFirst) : to_(to), fromFirst_(fromFirst) {}
    void reading(const Reading& reading) override;
    void mark(const Mark& mark) override;
    void finish(); // nothing follows

private:
    struct Second {
        std::int64_t at_s = 0;
        bool asWritten = false;
        Capture rows;
        [[nodiscard]] std::size_t count() const { return rows.readings.size(); }
        [[nodiscard]] std::size_t places() const;
    };
    void close(bool last);
    void give(const Second& second, std::size_t skipped);
    [[nodiscard]] Time inOrder(Time time);

    RowSink& to_;
    const bool fromFirst_;
    Second open_;
    std::optional<Second> first_; // waits for how many the next one holds
    std::size_t perSecond_ = 0;   // of the newest second that is over; 0: none is
    Time shift_{0}, last_{0};
};

} // namespace stillwire
