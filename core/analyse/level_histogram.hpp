// SPDX-License-Identifier: GPL-3.0-or-later
// Median of any number of readings near one level, in little memory: counts of readings in narrow bins.
#pragma once

#include <cstdint>
#include <vector>

namespace stillwire {

// Bins start 10 µV wide, so that a median of readings on any coarser grid is exact; they double when the readings
// spread over more than kMostBins of them.
class LevelHistogram {
public:
    void add(double volts_V) {
        const std::int64_t bin = binOf(volts_V) - first_;
        if (bin >= 0 && bin < static_cast<std::int64_t>(counts_.size())) {
            ++counts_[static_cast<std::size_t>(bin)];
        } else {
            addOutside(volts_V);
        }
        ++total_;
    }

    [[nodiscard]] std::int64_t count() const { return total_; }
    [[nodiscard]] double median_V() const; // the mean of the middle two; 0 if empty
    [[nodiscard]] double mad_V() const;    // raw median absolute deviation from the median; 0 if empty
    [[nodiscard]] double lowest_V() const;
    [[nodiscard]] double highest_V() const;

private:
    static constexpr std::size_t kMostBins = 8192;

    [[nodiscard]] std::int64_t binOf(double volts_V) const;
    [[nodiscard]] double centre(std::size_t index) const;
    [[nodiscard]] double rank_V(std::int64_t rank) const;
    void addOutside(double volts_V);
    void widen();

    double perVolt_ = 1e5; // bins
    std::int64_t first_ = 0;
    std::int64_t total_ = 0;
    std::vector<std::uint32_t> counts_;
};

} // namespace stillwire
