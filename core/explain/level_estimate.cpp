// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/level_estimate.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
// Rounding alone spreads readings evenly over a count (GUM, 4.3.7): the standard deviation of that.
double roundingOf(double resolution_V) { return resolution_V / std::sqrt(12.0); }
constexpr double kPrior = 8;     // readings that the expected noise is worth
constexpr double kHandPrior = 3; // and a hand's, of which less is known
} // namespace

LevelEstimate::LevelEstimate(const Tuning& tuning, const MeterAt& meter, std::int64_t id, Time time, double volts_V,
                             double noise_V)
    : meter_(meter), id_(id), began_(time), level_V_(volts_V), noise_V_(std::max(meter.expected_V, noise_V)),
      count_(1), weight_(noise_V > 0 ? kHandPrior : kPrior), looked_(time),
      due_(time + fromSeconds(tuning.held.refresh_s)) {
    reckon(tuning);
}

void LevelEstimate::trembles(const Tuning& tuning, double noise_V) {
    noise_V_ = std::max(noise_V_, noise_V);
    weight_ = kPrior;
    reckon(tuning);
}

void LevelEstimate::refresh(const Tuning& tuning, Time time, bool stirred) {
    const Tuning::Held& held = tuning.held;
    const double mean_V = (sum_V_ + wild_V_) / pending_; // of the offsets
    const bool young = count_ <= held.few;
    const auto near = static_cast<double>(near_);
    // Scatter about the readings' own mean: a level that drifts is no noisier for it.
    const double inner_V2 = near_ > 1 ? (squares_V2_ - sum_V_ * sum_V_ / near) * near / (near - 1) : 0;
    const double scatter_V2 = young ? squares_V2_ * (count_ - 1.0) / count_ : std::max(0.0, inner_V2);
    const double least_V2 = roundingOf(meter_.resolution_V) * roundingOf(meter_.resolution_V);
    if (!stirred || young) { // a lean that comes and goes is no noise either
        weight_ = std::min(weight_ + near, static_cast<double>(held.remembers));
        const double noise_V2 = noise_V_ * noise_V_;
        noise_V_ = std::sqrt(std::max(least_V2, noise_V2 + (scatter_V2 - near * noise_V2) / weight_));
        noise_V_ = std::min(noise_V_, std::max(tuning.hand.most_V, held.louder * meter_.expected_V));
    }
    double share = young ? 1.0 / count_ : 1 - std::exp(-toSeconds(time - looked_) / held.follows_s);
    if (stirred && !young) share *= held.stirredFollows;
    level_V_ += share * mean_V;
    sum_V_ = squares_V2_ = wild_V_ = 0;
    pending_ = near_ = 0;
    looked_ = time;
    due_ = time + fromSeconds(held.refresh_s);
    reckon(tuning);
}

void LevelEstimate::reckon(const Tuning& tuning) {
    const Tuning::Reach& reach = tuning.reach;
    const double few = count_ < tuning.held.known ? std::sqrt(1 + 1.0 / count_) : 1;
    reach_V_ = std::max({reach.least_V, reach.noises * few * noise_V_, reach.counts * meter_.resolution_V});
    quiet_V_ = std::max(
        {reach.quietNoises * noise_V_, reach.quietCounts * meter_.resolution_V, reach.least_V / reach.noises});
    const double least_V = leastScatter_V(tuning, meter_);
    scatter_V_ = few * std::max(least_V, noise_V_);
    const auto costs = [&](double expected_V) {
        return tuning.held.noisy *
               std::max(0.0, std::log(std::max(least_V, noise_V_) / std::max(least_V, expected_V)));
    };
    noisy_ = costs(meter_.expected_V);
    noisyHand_ = costs(std::max(meter_.expected_V, tuning.hand.held_V));
}

double LevelEstimate::threshold_V(const Tuning& tuning) const {
    return std::max({tuning.reach.told_V, tuning.reach.noises * noise_V_, tuning.reach.counts * meter_.resolution_V});
}

double LevelEstimate::costOf(const Tuning& tuning, double volts_V, double most, bool byHand) const {
    const double z = (volts_V - level_V_) / scatter_V_;
    // Before its noise is known, and before any is, a reading within reach tells less.
    const double wild = known(tuning) ? tuning.held.surprise : (meter_.learnt ? tuning.held.young : tuning.foreseen);
    return std::min({0.5 * z * z, wild, most}) + (byHand ? noisyHand_ : noisy_);
}

} // namespace stillwire
