// SPDX-License-Identifier: GPL-3.0-or-later
// How long a pose is held. A pace locked to the meter can miss every dropout, so each hold has a random part of up to
// one interval, from a generator of our own: the same seed gives the same holds on every machine.
#pragma once

#include <cstdint>

namespace stillwire {

class Pace {
public:
    explicit Pace(std::uint64_t seed) : state_(seed) {}

    // Even in [0, 1), 53 bits. SplitMix64: Steele, Lea, Flood, "Fast splittable pseudorandom number generators",
    // 2014.
    [[nodiscard]] double chance();
    // Three intervals and a random 0 to 1 more; never under what a hand can follow, nor under `shortestVisible_s`.
    // All in seconds; interval_s <= 0: unknown, taken as 0.33.
    [[nodiscard]] double hold_s(double interval_s, double shortestVisible_s);

private:
    std::uint64_t state_;
};

// The next 64 bits of SplitMix64; moves `state` on.
[[nodiscard]] std::uint64_t splitMix64(std::uint64_t& state);

// No hand changes pose faster than this and holds still (common practice, no source: one wiggle in one to two
// seconds).
inline constexpr double kShortestHold_s = 0.8;
inline constexpr int kReadingsPerPose = 3;

} // namespace stillwire
