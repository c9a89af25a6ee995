// SPDX-License-Identifier: GPL-3.0-or-later
// Plateaus: stretches in which the wire was held at one level in one place. Levels of positions, of the reference and
// of the ground, and of the phases are all taken from them.
#pragma once

#include "core/analyse/level_histogram.hpp"
#include "core/domain/timeline.hpp"

#include <vector>

namespace stillwire {

struct Plateau {
    Time from{0}, to{0};
    Context place;
    bool moved = false; // the level settled anew within this place, rather than being carried over its mark
    double level_V = 0; // median, shown
    double early_V = 0; // median of its first ten seconds
    double lowest_V = 0, highest_V = 0;
    double noise_V = 0;     // of one reading
    double threshold_V = 0; // the last in force
    std::int64_t readings = 0;
};

class PlateauBook {
public:
    // `aperture`: readings whose aperture began before the place did belong to neither. `leastNoise_V`: what rounding
    // adds.
    PlateauBook(Time aperture, double leastNoise_V) : aperture_(aperture), leastNoise_V_(leastNoise_V) {}

    // Readings held with no mark between; `settledAnew`: the first is that of a new level.
    void held(const Reading* first, std::size_t count, bool settledAnew, double noise_V, double threshold_V);
    void placeChanged(const Context& place); // at a mark

    // All with at least one reading, the open one last.
    [[nodiscard]] std::vector<Plateau> all() const;

private:
    struct Open {
        Plateau plateau;
        LevelHistogram histogram;
        std::vector<double> early;
        double leastNoise_V = 0;
        double noiseSum_V = 0;
        int noiseSamples = 0;
    };
    void begin(Time time);
    void close();
    [[nodiscard]] static Plateau finish(const Open& open);

    Time aperture_;
    double leastNoise_V_;
    Context place_;
    Open open_;
    bool moved_ = false;
    std::vector<Plateau> closed_;
};

} // namespace stillwire
