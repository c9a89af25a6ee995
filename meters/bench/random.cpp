// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/random.hpp"

#include <cmath>

namespace stillwire::bench {
namespace {

constexpr double kTwoToMinus53 = 1.0 / 9007199254740992.0;

// SplitMix64 finaliser: spreads neighbouring seeds over the whole word.
std::uint64_t mix(std::uint64_t z) {
    z += 0x9E3779B97F4A7C15ULL;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
}

double toUnit(std::uint64_t word) { return static_cast<double>(word >> 11) * kTwoToMinus53; }

} // namespace

Random::Random(std::uint64_t seed, std::uint64_t stream) : engine_(mix(mix(seed) ^ stream)) {}

double Random::uniform() { return toUnit(engine_()); }

double Random::normal() {
    double sum = -6.0;
    for (int i = 0; i < 12; ++i) sum += uniform();
    return sum;
}

double Random::exponential(double mean) { return -mean * std::log1p(-uniform()); }

double Random::logUniform(double from, double to) {
    if (!(to > from)) return from;
    return from * std::exp(uniform() * std::log(to / from));
}

double uniformAt(std::uint64_t seed, std::int64_t cell) {
    return toUnit(mix(mix(seed) ^ static_cast<std::uint64_t>(cell)));
}

} // namespace stillwire::bench
