// SPDX-License-Identifier: GPL-3.0-or-later
// The trace: append-only chunks with a min/max pyramid, shared with whoever draws. One writer appends; any number of
// readers hold snapshots. A snapshot never changes, and taking one costs a pointer copy and one count.
#pragma once

#include "core/base/time.hpp"

#include <array>
#include <atomic>
#include <cstddef>
#include <memory>
#include <mutex>
#include <vector>

namespace stillwire {

struct TracePoint {
    Time time{0};
    double volts_V = 0; // NaN: the meter gave no number
};

// Lowest and highest of the numbers between two times; `count` 0 if there are none.
struct TraceExtremes {
    double min_V = 0, max_V = 0;
    std::size_t count = 0;
};

class TraceSnapshot {
public:
    TraceSnapshot() = default;

    [[nodiscard]] std::size_t size() const { return count_; }
    [[nodiscard]] bool empty() const { return count_ == 0; }
    [[nodiscard]] const TracePoint& operator[](std::size_t index) const; // precondition: index < size()
    [[nodiscard]] std::size_t firstAtOrAfter(Time time) const;           // size() if none
    // One element per equal slice of [from, to); O(slices · log size).
    [[nodiscard]] std::vector<TraceExtremes> extremes(Time from, Time to, std::size_t slices) const;

private:
    friend class Trace;
    struct Store;
    std::shared_ptr<const Store> store_;
    std::size_t count_ = 0;
};

class Trace {
public:
    Trace();
    void append(TracePoint point);                // times never decrease
    [[nodiscard]] TraceSnapshot snapshot() const; // any thread
    [[nodiscard]] std::size_t size() const;

private:
    std::shared_ptr<TraceSnapshot::Store> store_;
};

} // namespace stillwire
