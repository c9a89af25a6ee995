// SPDX-License-Identifier: GPL-3.0-or-later
// Chance that is the same on every machine: the engine is fixed by the C++ standard, the distributions are ours (the
// standard's own may differ between libraries).
#pragma once

#include <cstdint>
#include <random>

namespace stillwire::bench {

class Random {
public:
    // Streams of one seed are independent: the hand, the faults and the meter draw without disturbing each other.
    Random(std::uint64_t seed, std::uint64_t stream);

    [[nodiscard]] double uniform(); // [0, 1)
    [[nodiscard]] double uniform(double from, double to) { return from + (to - from) * uniform(); }
    // Mean 0, deviation 1: the sum of twelve uniforms less six. No tail beyond six, no library function inside.
    [[nodiscard]] double normal();
    [[nodiscard]] double exponential(double mean);           // mean > 0
    [[nodiscard]] double logUniform(double from, double to); // 0 < from <= to
    [[nodiscard]] bool chance(double probability) { return uniform() < probability; }

private:
    std::mt19937_64 engine_;
};

// A value in [0, 1) that belongs to (seed, cell) for ever: randomness of place instead of time.
[[nodiscard]] double uniformAt(std::uint64_t seed, std::int64_t cell);

} // namespace stillwire::bench
