// SPDX-License-Identifier: GPL-3.0-or-later
// Lets through the readings that every stage takes without a thought, most of any trace: a number without flags, in
// time, near its level.
#pragma once

#include "core/domain/reading.hpp"

#include <array>
#include <cmath>
#include <cstddef>

namespace stillwire {

struct QuietTerms {
    double level_V = 0;
    double reach_V = -1; // from it; below 0: nothing is quiet
    Time from{0};        // not before
    Time due{0};         // the first so late is the last
    Time limit{0};       // from one reading to the next
    Time last{0};        // of the reading before
    std::size_t most = 0;

    [[nodiscard]] bool admits(const Reading& reading) const {
        return std::abs(reading.volts_V - level_V) <= reach_V && reading.flags.none() &&
               reading.time - last <= limit && reading.time >= from;
    }
};

// Of these, how many from the first on.
[[nodiscard]] inline std::size_t quietRun(QuietTerms terms, const Reading* first, std::size_t count) {
    std::size_t n = 0;
    while (n < count && n < terms.most && terms.admits(first[n])) {
        terms.last = first[n++].time;
        if (terms.last >= terms.due) break;
    }
    return n;
}

// Keeps such readings where they come one by one, to be handed on together.
class QuietGate {
public:
    static constexpr std::size_t kMost = 16;

    void open(const QuietTerms& terms) {
        terms_ = terms;
        count_ = 0;
    }
    void close() { terms_.most = count_ = 0; }
    // Takes the reading, or says that it is for the stages to look at.
    bool take(const Reading& reading) {
        if (count_ >= terms_.most || !terms_.admits(reading)) return false;
        kept_[count_++] = reading;
        terms_.last = reading.time;
        if (reading.time >= terms_.due) terms_.most = count_;
        return true;
    }
    [[nodiscard]] const Reading* kept() const { return kept_.data(); }
    [[nodiscard]] std::size_t count() const { return count_; }

private:
    QuietTerms terms_;
    std::array<Reading, kMost> kept_;
    std::size_t count_ = 0;
};

} // namespace stillwire
