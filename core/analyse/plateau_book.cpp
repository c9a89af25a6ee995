// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/plateau_book.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
constexpr Time kEarly = 10s;
constexpr std::size_t kMostEarly = 64;
constexpr std::int64_t kNoiseEvery = 16; // readings between samples of the running noise
} // namespace

void PlateauBook::begin(Time time) {
    open_.plateau.from = time;
    open_.plateau.place = place_;
    open_.plateau.moved = moved_;
    open_.leastNoise_V = leastNoise_V_;
}

void PlateauBook::held(const Reading* first, std::size_t count, bool settledAnew, double noise_V,
                       double threshold_V) {
    if (settledAnew) {
        close();
        moved_ = true;
    }
    const Reading* const end = first + count;
    while (first != end && first->time - aperture_ < place_.from) ++first;
    if (first == end) return;
    Plateau& plateau = open_.plateau;
    if (plateau.readings == 0) begin(first->time);
    const auto more = static_cast<std::int64_t>(end - first);
    open_.histogram.add(first, static_cast<std::size_t>(more));
    for (std::int64_t due = plateau.readings / kNoiseEvery; due < (plateau.readings + more) / kNoiseEvery; ++due) {
        open_.noiseSum_V += noise_V;
        ++open_.noiseSamples;
    }
    plateau.readings += more;
    for (; first != end && open_.early.size() < kMostEarly && first->time - plateau.from <= kEarly; ++first)
        open_.early.push_back(first->volts_V);
    plateau.to = (end - 1)->time;
    plateau.threshold_V = threshold_V;
}

void PlateauBook::placeChanged(const Context& place) {
    close();
    place_ = place;
    moved_ = false;
}

Plateau PlateauBook::finish(const Open& open) {
    Plateau plateau = open.plateau;
    plateau.level_V = open.histogram.median_V();
    plateau.lowest_V = open.histogram.lowest_V();
    plateau.highest_V = open.histogram.highest_V();
    plateau.early_V = medianOf(open.early);
    // Its own scatter; for a long one that drifts, the mean of the running noise, which does not see the drift.
    plateau.noise_V = std::max(kMadToSigma * open.histogram.mad_V(), open.leastNoise_V);
    if (open.noiseSamples > 0) plateau.noise_V = std::min(plateau.noise_V, open.noiseSum_V / open.noiseSamples);
    return plateau;
}

void PlateauBook::close() {
    if (open_.plateau.readings > 0) closed_.push_back(finish(open_));
    open_ = Open{};
}

std::vector<Plateau> PlateauBook::all() const {
    std::vector<Plateau> plateaus = closed_;
    if (open_.plateau.readings > 0) plateaus.push_back(finish(open_));
    return plateaus;
}

} // namespace stillwire
