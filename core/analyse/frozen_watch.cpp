// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/frozen_watch.hpp"

#include <cmath>

namespace stillwire {

namespace {
constexpr double kChance = 1e-6;
constexpr double kMostEqual = 0.45;
constexpr long kPairsToJudge = 25;
} // namespace

bool FrozenWatch::standsStill() const {
    const long equalBefore = equalPairs_ - (run_ - 1);
    const long pairs = equalBefore + turns_;
    if (pairs < kPairsToJudge) return false;
    // Two readings are equal with chance q = Σp²; a run sits on the commonest value, whose p is at most √q.
    // Estimated on the high side, two standard deviations of a count.
    const double equal = static_cast<double>(equalBefore) + 1;
    const double equalShare = (equal + 2 * std::sqrt(equal)) / static_cast<double>(pairs);
    // With less noise than half a count, standing still is what the meter does anyway; it then shows two values at
    // most, and half of its pairs are equal.
    return equalShare < kMostEqual && std::pow(equalShare, 0.5 * run_) < kChance;
}

std::optional<FrozenWatch::Span> FrozenWatch::pushLong(Time time, bool changed) {
    if (run_ == 0) {
        from_ = time;
        equalPairs_ = changed ? 0 : -1; // the first makes no pair
        return std::nullopt;
    }
    if (!changed) {
        frozen_ = frozen_ || standsStill();
        return std::nullopt;
    }
    if (!frozen_) return std::nullopt;
    equalPairs_ -= run_ - 1;
    frozen_ = false;
    return Span{from_, time};
}

} // namespace stillwire
