// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/pace.hpp"

#include <algorithm>

namespace stillwire {

std::uint64_t splitMix64(std::uint64_t& state) {
    state += 0x9e3779b97f4a7c15U;
    std::uint64_t z = state;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31U);
}

double Pace::chance() { return static_cast<double>(splitMix64(state_) >> 11U) * 0x1.0p-53; }

double Pace::hold_s(double interval_s, double shortestVisible_s) {
    const double interval = interval_s > 0 ? interval_s : 0.33;
    const double base = std::max({kReadingsPerPose * interval, shortestVisible_s, kShortestHold_s});
    return base + chance() * interval;
}

} // namespace stillwire
