// SPDX-License-Identifier: GPL-3.0-or-later
// The level the wire is held at, its noise, and the threshold an excursion must pass; each adapts to the meter.
#pragma once

#include "core/domain/reading.hpp"

#include <array>

namespace stillwire {

// What keeps the level where it is. Quiet holds teach the meter's own noise; where the wire is being stirred
// (wiggled, or just after an excursion) a shift within the threshold must not pass for noise, so the noise learned
// quietly is the limit; a foot or hand at a working position has an unsteadiness of its own.
enum class Hold { quiet, stirred, foot };

// Median and 1.4826·MAD of the last kWindow readings that were no excursion (Hampel's identifier with a floor: with
// quantised readings the plain MAD collapses to 0, as the GSL manual warns of its impulse filter), and no more than
// their standard deviation, for between two counts the MAD jumps to a whole count.
class HeldLevel {
public:
    static constexpr int kWindow = 31;
    static constexpr int kFewReadings = 16; // below this the MAD is too rough to be trusted alone
    static constexpr int kRefreshEvery = 16;

    // `footNoise_V`: what to expect of a foot before there are readings.
    explicit HeldLevel(double resolution_V, double footNoise_V = 0);

    void setHold(Hold hold) {
        hold_ = hold;
        if (count_ == 0) begunBy_ = hold;
    }
    [[nodiscard]] Hold hold() const { return hold_; }
    [[nodiscard]] Hold begunBy() const { return begunBy_; }
    // How far a reading of an untouched wire lies from its level: 3 times the quiet noise, or a count.
    [[nodiscard]] double quietReach_V() const;
    // max(0.02 V, 6 times the quiet noise, 3 counts): the threshold where nothing is held long enough to learn from.
    [[nodiscard]] double quietThreshold_V() const { return thresholdFor_V(expected_V()); }
    void restart(); // forget the readings; the quietest noise so far is the guess until enough new ones are in
    void add(double volts_V) {
        put(volts_V);
        // Every reading while there are few; then now and again, for a level that moves between two refreshes is no
        // held level.
        if (++sinceRefresh_ >= kRefreshEvery || count_ < kFewReadings) refresh();
    }

    // As add() of each, of as many as it takes before it looks anew.
    [[nodiscard]] std::size_t untilRefresh() const {
        return count_ < kFewReadings ? 0 : static_cast<std::size_t>(kRefreshEvery - 1 - sinceRefresh_);
    }
    void addQuiet(const Reading* first, std::size_t count) {
        for (const Reading* r = first; r != first + count; ++r) put(r->volts_V);
        sinceRefresh_ += static_cast<int>(count);
    }

    // The newest readings have left the oldest behind by more than any noise or drift: the wire is being moved,
    // slowly.
    [[nodiscard]] bool moves() const { return moves_; }
    [[nodiscard]] int readingsSinceLeft() const; // how many readings ago it left the oldest

    [[nodiscard]] bool empty() const { return count_ == 0; }
    [[nodiscard]] double level_V() const { return level_V_; }
    [[nodiscard]] double noise_V() const { return noise_V_; }
    // max(0.02 V, 6·noise, 3 counts)
    [[nodiscard]] double threshold_V() const { return threshold_V_; }
    [[nodiscard]] double foot_V() const { return foot_V_; } // noise of the last long hold by a foot
    // How near two successive readings must be to count as settled: max(3·noise, 2 counts, 5 mV).
    [[nodiscard]] double settleTolerance_V() const;

private:
    void put(double volts_V) {
        ring_[static_cast<std::size_t>(next_)] = volts_V;
        next_ = next_ + 1 == kWindow ? 0 : next_ + 1;
        if (count_ < kWindow) ++count_;
    }
    void refresh();
    void set(double noise_V);
    [[nodiscard]] double thresholdFor_V(double noise_V) const;
    [[nodiscard]] double windowNoise_V();                   // of the readings in the window
    [[nodiscard]] double expected_V() const;                // before there are enough of them
    [[nodiscard]] double mean_V(int from, int count) const; // of a full window, oldest first

    std::array<double, kWindow> ring_{}; // the newest readings, oldest overwritten first
    double level_V_ = 0;
    double mad_V_ = 0; // at the last refresh: the guess for the next
    bool moves_ = false;
    int count_ = 0;
    int next_ = 0;
    int sinceRefresh_ = 0;
    double resolution_V_;
    double floor_V_;
    Hold hold_ = Hold::quiet, begunBy_ = Hold::quiet;
    double quietSum_V_ = 0; // of the noise at each refresh of a quiet hold with enough readings
    int quietCount_ = 0;
    double foot_V_; // noise of the last hold by a foot, or what to expect of one
    double noise_V_;
    double threshold_V_;
};

} // namespace stillwire
