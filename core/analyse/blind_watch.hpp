// SPDX-License-Identifier: GPL-3.0-or-later
// Tells when the meter could not see: silence, overload, hold, not DC volts, frozen. Never a dropout.
#pragma once

#include "core/analyse/frozen_watch.hpp"
#include "core/domain/reading.hpp"
#include "core/findings/findings.hpp"
#include "core/sheet/meter_traits.hpp"

#include <array>
#include <optional>
#include <vector>

namespace stillwire {

// Silence is more than max(2.5 intervals, 0.5 s) without a reading. The interval is the described one, or the median
// of the last gaps where the meter turns out to be slower than its description.
class BlindWatch {
public:
    explicit BlindWatch(const MeterTraits& meter);

    // True if this reading is a number that counts. Spans are closed by the reading that ends them.
    bool push(const Reading& reading);
    // As push() of each, for numbers without flags that come in time: within what of the one before, if any may; and
    // those.
    [[nodiscard]] std::optional<Time> quietLimit() const;
    void pushQuiet(const Reading* first, std::size_t count);
    [[nodiscard]] bool gapBefore() const { return gapBefore_; } // the newest reading: nothing was seen before it
    void gapMark(); // the link was lost: whatever lies between the readings around it was not seen

    [[nodiscard]] const std::vector<BlindSpan>& closed() const { return closed_; }
    // With the span still open at `now`, if there is one.
    [[nodiscard]] std::vector<BlindSpan> spans(Time now) const;
    [[nodiscard]] bool blindAt(Time now) const;
    [[nodiscard]] double interval_s() const; // as seen; 0 before the second reading

private:
    void close(Time from, Time to, BlindCause cause);
    void count(Time gap) {
        if (gap.count() > 0) gaps_[gapCount_++ % kGaps] = gap;
    }
    void watchForFreezing(const Reading& reading) {
        if (const auto frozen = frozen_.push(reading.time, reading.volts_V))
            close(frozen->from, frozen->to, BlindCause::frozen);
        lastVolts_V_ = reading.volts_V;
    }
    [[nodiscard]] Time silenceLimit() const;
    [[nodiscard]] bool changedRange(double before_V, double after_V) const;
    [[nodiscard]] Time usualGap() const;

    const MeterTraits meter_;
    Time limit_; // silence longer than this is blind, by the description
    std::vector<BlindSpan> closed_;
    Time last_{-1};
    double lastVolts_V_ = 0;
    bool lastHadNumber_ = false;
    bool gapMarked_ = false;
    bool gapBefore_ = false;
    std::optional<BlindSpan> open_; // readings without a number that counts

    static constexpr std::size_t kGaps = 32; // the last gaps between readings
    std::array<Time, kGaps> gaps_{};
    std::size_t gapCount_ = 0;
    FrozenWatch frozen_;
};

} // namespace stillwire
