// SPDX-License-Identifier: GPL-3.0-or-later
// The short sounds of the bench and when they sound. Makes samples and decides; plays nothing.
#pragma once

#include "app/window/feed.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace stillwire {

enum class Tone {
    down, // a dropout towards 0: two notes, falling
    up,   // a dropout upwards: three notes, rising
    tick  // the next pose begins
};

// Mono samples, -1 to 1, silent at both ends so that nothing clicks.
[[nodiscard]] std::vector<float> toneSamples(Tone tone, int rate_Hz);

// Listens to the scenes of a led run; a replay is silent. One tone a scene at most, dropouts before ticks.
class ToneWatch {
public:
    [[nodiscard]] std::optional<Tone> hear(const Scene& scene);
    void reset() { *this = ToneWatch{}; } // another session

private:
    std::size_t dropouts_ = 0;
    Time pose_{-1};
};

} // namespace stillwire
