// SPDX-License-Identifier: GPL-3.0-or-later
// Median of any number of readings near one level, in little memory: counts of readings in narrow bins.
#pragma once

#include "core/domain/reading.hpp"

#include <algorithm>
#include <cstdint>
#include <vector>

namespace stillwire {

// Bins start 10 µV wide, so that a median of readings on any coarser grid is exact; they double when the readings
// spread over more than kMostBins of them.
class LevelHistogram {
public:
    void add(const Reading* first, std::size_t count) {
        std::uint32_t* counts = counts_.data();
        std::uint64_t bins = counts_.size();
        for (const Reading* r = first; r != first + count; ++r) {
            const auto bin = static_cast<std::uint64_t>(binOf(r->volts_V) - first_); // one below the first is huge
            if (bin < bins) {
                ++counts[bin];
                continue;
            }
            addOutside(r->volts_V);
            counts = counts_.data();
            bins = counts_.size();
        }
        total_ += static_cast<std::int64_t>(count);
    }

    [[nodiscard]] std::int64_t count() const { return total_; }
    [[nodiscard]] double median_V() const; // the mean of the middle two; 0 if empty
    [[nodiscard]] double mad_V() const;    // raw median absolute deviation from the median; 0 if empty
    [[nodiscard]] double lowest_V() const;
    [[nodiscard]] double highest_V() const;

private:
    static constexpr std::size_t kMostBins = 8192;

    [[nodiscard]] std::int64_t binOf(double volts_V) const {
        // Meters show far less than ±1e9 V; the clamp keeps a hostile capture from overflowing.
        const double scaled = std::min(std::max(volts_V * perVolt_, -1e15), 1e15);
        return static_cast<std::int64_t>(scaled < 0 ? scaled - 0.5 : scaled + 0.5);
    }
    [[nodiscard]] double centre(std::size_t index) const;
    [[nodiscard]] double rank_V(std::int64_t rank) const;
    [[gnu::noinline]] void addOutside(double volts_V); // seldom, and no burden to the loop around it
    void widen();

    double perVolt_ = 1e5; // bins
    std::int64_t first_ = 0;
    std::int64_t total_ = 0;
    std::vector<std::uint32_t> counts_;
};

} // namespace stillwire
