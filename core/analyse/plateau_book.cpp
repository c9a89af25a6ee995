// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/plateau_book.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <utility>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
constexpr Time kEarly = 10s;
constexpr std::size_t kMostEarly = 64;
constexpr Time kStay = 2s;
constexpr std::int64_t kStayReadings = 3;
constexpr std::int64_t kNoiseEvery = 16; // readings between samples of the running noise
} // namespace

void PlateauBook::levelAnew(int number) {
    close();
    number_ = number;
    moved_ = true;
}

void PlateauBook::held(const Reading* first, std::size_t count, int number, const Context& place, double noise_V,
                       double threshold_V) {
    if (number != number_) {
        close();
        number_ = number;
        moved_ = false;
    }
    Plateau& plateau = open_.plateau;
    if (plateau.readings == 0) {
        plateau.from = first->time;
        plateau.place = place;
        plateau.moved = moved_;
        open_.leastNoise_V = leastNoise_V_;
    }
    const Reading* const end = first + count;
    const auto more = static_cast<std::int64_t>(count);
    open_.histogram.add(first, count);
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

std::vector<Stay> staysOf(const std::vector<Plateau>& plateaus, const Sheet& sheet) {
    std::vector<Stay> stays;
    Wire wire = Wire::none;
    for (const Plateau& p : plateaus) {
        const auto more = static_cast<double>(p.readings);
        const bool another = p.place.wire != std::exchange(wire, p.place.wire);
        if (p.moved || another) {
            stays.push_back({p.from, p.to, p.level_V, p.noise_V, p.readings, {}});
            continue;
        }
        Stay& stay = stays.back(); // carried over a mark: medians by their weight
        const double share = more / (static_cast<double>(stay.readings) + more);
        stay.level_V += share * (p.level_V - stay.level_V);
        stay.noise_V += share * (p.noise_V - stay.noise_V);
        stay.readings += p.readings;
        stay.to = p.to;
    }
    std::erase_if(stays, [](const Stay& s) { return s.readings < kStayReadings || s.to - s.from < kStay; });
    for (Stay& stay : stays)
        for (const Position& position : sheet.positions)
            if (position.window.contains(stay.level_V)) stay.windows.push_back(position.name);
    return stays;
}

} // namespace stillwire
