// SPDX-License-Identifier: GPL-3.0-or-later
// A level that is held, as one explanation has it: where it is, how noisy, and from what distance a reading is off
// it.
#pragma once

#include "core/domain/reading.hpp"
#include "core/explain/tuning.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace stillwire {

// What is known of the meter at a level: the step of its range, and the noise that quiet holds there have taught.
struct MeterAt {
    double resolution_V = 0.001;
    double expected_V = 0.001; // standard deviation of one reading
    bool learnt = false;       // by a quiet hold; else it is a guess
    double hand_V = 0;         // and that of whoever holds it, as far as seen
};

// Costs go by this at least: a level drifts by more than the noise of a fine meter, and is rounded to counts.
[[nodiscard]] inline double leastScatter_V(const Tuning& tuning, const MeterAt& meter) {
    return std::max(tuning.reach.least_V / tuning.reach.noises, 0.5 * meter.resolution_V);
}

// Off by more than this is no reading of the same volts, as far as the meter alone goes.
[[nodiscard]] inline double meterReach_V(const Tuning& tuning, const MeterAt& meter) {
    return std::max(tuning.reach.least_V, tuning.reach.noises * meter.expected_V);
}

class LevelEstimate {
public:
    LevelEstimate() = default;
    // With its first reading. `noise_V`: what to expect of it, if more than the meter's.
    LevelEstimate(const Tuning& tuning, const MeterAt& meter, std::int64_t id, Time time, double volts_V,
                  double noise_V = 0);

    // A reading of it; `stirred`: somebody shakes the wire, and a shift of its readings is not its own.
    void add(const Tuning& tuning, Time time, double volts_V, bool stirred) {
        put(volts_V);
        if (count_ <= tuning.held.few || pending_ >= tuning.held.refresh || time >= due_)
            refresh(tuning, time, stirred);
    }
    // As add() of each, of no more than it takes until it looks anew: so many, or the first that is not before due().
    // Precondition: its noise is known.
    [[nodiscard]] int untilRefresh(const Tuning& tuning) const { return tuning.held.refresh - pending_; }
    [[nodiscard]] Time due() const { return due_; }
    [[nodiscard]] bool justLooked() const { return pending_ == 0; }
    void addQuiet(const Tuning& tuning, const Reading* first, std::size_t count, bool stirred) {
        double sum_V = sum_V_, squares_V2 = squares_V2_; // one after another, so that no grouping shows in the sums
        for (const Reading* r = first; r != first + count; ++r) {
            const double offset_V = r->volts_V - level_V_;
            sum_V += offset_V;
            squares_V2 += offset_V * offset_V;
        }
        sum_V_ = sum_V;
        squares_V2_ = squares_V2;
        near_ += static_cast<int>(count);
        pending_ += static_cast<int>(count);
        count_ += static_cast<int>(count);
        const Time newest = first[count - 1].time;
        if (pending_ >= tuning.held.refresh || newest >= due_) refresh(tuning, newest, stirred);
    }
    // It was taken for still, and a hand trembles: the same level, with this noise to begin with.
    void trembles(const Tuning& tuning, double noise_V);

    [[nodiscard]] std::int64_t id() const { return id_; }
    [[nodiscard]] double level_V() const { return level_V_; }
    [[nodiscard]] double noise_V() const { return noise_V_; }
    [[nodiscard]] double expected_V() const { return meter_.expected_V; }
    [[nodiscard]] double resolution_V() const { return meter_.resolution_V; }
    [[nodiscard]] bool known(const Tuning& tuning) const { return count_ >= tuning.held.known; }
    [[nodiscard]] int count() const { return count_; }
    [[nodiscard]] Time began() const { return began_; }
    // A reading further from it is off it.
    [[nodiscard]] double reach_V() const { return reach_V_; }
    // What is said of it: max(0.02 V, 6 noises, 3 counts).
    [[nodiscard]] double threshold_V(const Tuning& tuning) const;
    // Further off, a reading is not plainly one of an untouched wire.
    [[nodiscard]] double quietReach_V() const { return quiet_V_; }
    // What a reading within reach costs; `most`: what its distance alone may, where that is less than elsewhere.
    // `byHand`: somebody holds it there, and may tremble.
    [[nodiscard]] double costOf(const Tuning& tuning, double volts_V, double most, bool byHand) const;

private:
    void put(double volts_V) {
        const double offset_V = volts_V - level_V_;
        if (std::abs(offset_V) <= quiet_V_) {
            sum_V_ += offset_V;
            squares_V2_ += offset_V * offset_V;
            ++near_;
        } else { // a wild one moves the level a little, and is no noise (Hampel)
            wild_V_ += offset_V > 0 ? quiet_V_ : -quiet_V_;
        }
        ++pending_;
        ++count_;
    }
    void refresh(const Tuning& tuning, Time time, bool stirred);
    void reckon(const Tuning& tuning);

    MeterAt meter_;
    std::int64_t id_ = -1; // one for each level that the wire has come to
    Time began_{0};
    double level_V_ = 0, noise_V_ = 0;
    double reach_V_ = 0, quiet_V_ = 0, noisy_ = 0, noisyHand_ = 0, scatter_V_ = 0;
    double sum_V_ = 0, squares_V2_ = 0, wild_V_ = 0; // of offsets since the last look; the wild ones apart
    int pending_ = 0, near_ = 0, count_ = 0;         // near_: of the pending, those that speak of the noise
    double weight_ = 0;                              // readings behind the noise
    Time looked_{0}, due_{0};
};

} // namespace stillwire
