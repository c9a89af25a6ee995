// SPDX-License-Identifier: GPL-3.0-or-later
// Plateaus: stretches in which the wire was held at one level in one place. Levels of positions, of the reference and
// of the ground, and of the phases are all taken from them.
#pragma once

#include "core/analyse/level_histogram.hpp"
#include "core/domain/timeline.hpp"
#include "core/findings/findings.hpp"

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
    // `leastNoise_V`: what rounding adds.
    explicit PlateauBook(double leastNoise_V) : leastNoise_V_(leastNoise_V) {}

    // Readings held in one place, known by its number; `anew`: the first is that of a new level. What straddles the
    // end of a place belongs to none, and is not given.
    void held(const Reading* first, std::size_t count, int number, const Context& place, double noise_V,
              double threshold_V);
    void levelAnew(int number); // the next reading held is of a new level, in this place

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
    void close();
    [[nodiscard]] static Plateau finish(const Open& open);

    double leastNoise_V_;
    int number_ = -1; // of the place
    Open open_;
    bool moved_ = false; // the level, within it
    std::vector<Plateau> closed_;
};

// Stretches at one level, over marks and dropouts, of at least three readings and two seconds; each with the windows
// it lies in.
[[nodiscard]] std::vector<Stay> staysOf(const std::vector<Plateau>& plateaus, const Sheet& sheet);

} // namespace stillwire
