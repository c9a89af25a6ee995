// SPDX-License-Identifier: GPL-3.0-or-later
// The tone that follows the voltage. Makes samples; plays nothing.
#pragma once

#include <atomic>
#include <cstddef>

namespace stillwire {

// Two octaves from nothing to the nominal reference: 0.1 V of 5 V is half a semitone, low or high. 0: silence.
[[nodiscard]] double humFrequency_Hz(double volts_V, double nominal_V);

// Glides from level to level without a click. `aim` from any thread; `fill` from the one that plays.
class Hum {
public:
    void aim(double frequency_Hz) { aim_Hz_ = frequency_Hz; }  // NaN or 0: falls silent
    bool fill(float* samples, std::size_t count, int rate_Hz); // false: silence

private:
    std::atomic<double> aim_Hz_ = 0;
    double now_Hz_ = 0, loud_ = 0, phase_ = 0;
};

} // namespace stillwire
