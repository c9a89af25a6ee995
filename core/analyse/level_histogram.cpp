// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/level_histogram.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace stillwire {

double LevelHistogram::centre(std::size_t index) const {
    return static_cast<double>(first_ + static_cast<std::int64_t>(index)) / perVolt_;
}

void LevelHistogram::addOutside(double volts_V) {
    for (;;) {
        const std::int64_t bin = binOf(volts_V);
        if (counts_.empty()) {
            first_ = bin;
            counts_.assign(1, 1);
            return;
        }
        const std::int64_t last = first_ + static_cast<std::int64_t>(counts_.size()) - 1;
        const std::int64_t span = std::max(bin, last) - std::min(bin, first_) + 1;
        if (span <= static_cast<std::int64_t>(kMostBins)) {
            if (bin < first_) {
                counts_.insert(counts_.begin(), static_cast<std::size_t>(first_ - bin), 0);
                first_ = bin;
            } else if (bin > last) {
                counts_.resize(static_cast<std::size_t>(bin - first_ + 1), 0);
            }
            ++counts_[static_cast<std::size_t>(bin - first_)];
            return;
        }
        widen();
    }
}

void LevelHistogram::widen() {
    const LevelHistogram old = *this;
    perVolt_ /= 2;
    counts_.clear();
    for (std::size_t i = 0; i < old.counts_.size(); ++i) {
        if (old.counts_[i] == 0) continue;
        const std::int64_t bin = binOf(old.centre(i));
        if (counts_.empty()) first_ = bin;
        if (bin - first_ >= static_cast<std::int64_t>(counts_.size()))
            counts_.resize(static_cast<std::size_t>(bin - first_ + 1), 0);
        counts_[static_cast<std::size_t>(bin - first_)] += old.counts_[i];
    }
}

double LevelHistogram::rank_V(std::int64_t rank) const {
    std::int64_t seen = 0;
    for (std::size_t i = 0; i < counts_.size(); ++i) {
        seen += counts_[i];
        if (seen > rank) return centre(i);
    }
    return 0;
}

double LevelHistogram::median_V() const {
    if (total_ == 0) return 0;
    const double upper = rank_V(total_ / 2);
    return total_ % 2 == 1 ? upper : 0.5 * (rank_V(total_ / 2 - 1) + upper);
}

double LevelHistogram::mad_V() const {
    const double middle_V = median_V();
    std::vector<std::pair<double, std::uint32_t>> deviations;
    for (std::size_t i = 0; i < counts_.size(); ++i)
        if (counts_[i] > 0) deviations.emplace_back(std::abs(centre(i) - middle_V), counts_[i]);
    std::sort(deviations.begin(), deviations.end());
    std::int64_t seen = 0;
    std::optional<double> lower_V; // of the middle two, where they differ
    for (const auto& [deviation_V, count] : deviations) {
        if (lower_V) return 0.5 * (*lower_V + deviation_V);
        seen += count;
        if (2 * seen > total_) return deviation_V;
        if (2 * seen == total_) lower_V = deviation_V;
    }
    return lower_V.value_or(0);
}

double LevelHistogram::lowest_V() const { return total_ == 0 ? 0 : rank_V(0); }
double LevelHistogram::highest_V() const { return total_ == 0 ? 0 : rank_V(total_ - 1); }

} // namespace stillwire
