// SPDX-License-Identifier: GPL-3.0-or-later
// The level the wire is held at, its noise, and the threshold an excursion must pass; each adapts to the meter.
#pragma once

#include <array>

namespace stillwire {

// Median and 1.4826·MAD of the last kWindow readings that were no excursion (Hampel's identifier with a floor: with
// quantised readings the plain MAD collapses to 0, as the GSL manual warns of its impulse filter).
class HeldLevel {
public:
    static constexpr int kWindow = 31;
    static constexpr int kFewReadings = 16; // below this the MAD is too rough to be trusted alone
    static constexpr int kRefreshEvery = 8;

    explicit HeldLevel(double resolution_V);

    void restart(); // forget the readings; the quietest noise so far is the guess until enough new ones are in
    void add(double volts_V) {
        ring_[static_cast<std::size_t>(next_)] = volts_V;
        next_ = next_ + 1 == kWindow ? 0 : next_ + 1;
        if (count_ < kWindow) ++count_;
        // Every reading while there are few; then now and again, for a level that moves between two refreshes is no
        // held level.
        if (++sinceRefresh_ >= kRefreshEvery || count_ < kFewReadings) refresh();
    }

    [[nodiscard]] bool empty() const { return count_ == 0; }
    [[nodiscard]] double level_V() const { return level_V_; }
    [[nodiscard]] double noise_V() const { return noise_V_; }
    // max(0.02 V, 6·noise, 3 counts)
    [[nodiscard]] double threshold_V() const { return threshold_V_; }
    // How near two successive readings must be to count as settled: max(3·noise, 2 counts, 5 mV).
    [[nodiscard]] double settleTolerance_V() const;

private:
    void refresh();
    void set(double noise_V);

    std::array<double, kWindow> ring_{}; // the newest readings, oldest overwritten first
    double level_V_ = 0;
    int count_ = 0;
    int next_ = 0;
    int sinceRefresh_ = 0;
    double resolution_V_;
    double floor_V_;
    double before_V_;      // noise of the quietest hold before the last restart
    bool trusted_ = false; // before_V_ comes from enough readings
    double noise_V_;
    double threshold_V_;
};

} // namespace stillwire
