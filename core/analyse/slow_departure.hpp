// SPDX-License-Identifier: GPL-3.0-or-later
// Tells a movement that nobody marked from a dropout by how it left its level: a shaft that is swept leaves it step
// by step, a fault at once.
#pragma once

#include "core/base/time.hpp"

#include <array>
#include <cstddef>

namespace stillwire {

class SlowDeparture {
public:
    void begin(Time time, double volts_V, double held_V); // with the first reading off the level
    // True once it is plain that the readings move away from the level evenly.
    bool push(Time time, double volts_V, double threshold_V);

private:
    static constexpr std::size_t kSamples = 6; // half a second apart
    std::array<double, kSamples> time_s_{}, volts_V_{};
    std::size_t count_ = 0;
    Time from_{0};
    double held_V_ = 0;
    double early_V_ = -1; // how far off half a second after it left
};

} // namespace stillwire
