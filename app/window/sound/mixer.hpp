// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that sounds, as one stream of samples: the short tones, and under them the tone that follows the
// voltage. Plays nothing.
#pragma once

#include "app/window/sound/hum.hpp"
#include "app/window/sound/tones.hpp"

#include <array>
#include <atomic>
#include <vector>

namespace stillwire {

// `strike`, `follow` and `hum` from any thread; `fill` from the one that plays.
class Mixer {
public:
    explicit Mixer(int rate_Hz);

    // In place of the tone that sounds: the newer one matters. A tick takes no dropout's place.
    void strike(Tone tone);
    void forget() { struck_ = -1; }                          // what was asked for while nobody played
    void hum(bool on) { humming_ = on; }                     // the tone that follows the voltage
    void follow(double frequency_Hz) { at_ = frequency_Hz; } // what it follows; 0: nothing
    [[nodiscard]] bool hums() const { return humming_ && at_ > 0; }
    // The next `count` samples, within -1 to 1 and without a step from one to the next. False: silence.
    bool fill(float* samples, std::size_t count);
    [[nodiscard]] int rate_Hz() const { return rate_Hz_; }

private:
    const int rate_Hz_;
    const std::array<std::vector<float>, 3> tones_;
    std::atomic<int> struck_{-1}; // asked for, not begun
    std::atomic<bool> humming_{false};
    std::atomic<double> at_{0};

    // The thread that plays.
    const std::vector<float>* playing_ = nullptr;
    std::size_t position_ = 0;
    float left_ = 0; // of a tone that another one cut off: dies away
    Hum hum_;
};

} // namespace stillwire
