// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/dice.hpp"

#include <cmath>

namespace stillwire::families {
namespace {

std::uint64_t seedOf(std::string_view family, std::uint64_t seed) {
    std::uint64_t mixed = 1469598103934665603ULL;
    for (const char c : family) mixed = (mixed ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
    return mixed ^ (seed * 0x9E3779B97F4A7C15ULL + 0x632BE59BD9B4E019ULL);
}

} // namespace

Dice::Dice(std::string_view family, std::uint64_t seed) : engine_(seedOf(family, seed)) {}

double Dice::uniform() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }

double Dice::logBetween(double low, double high) { return low * std::exp(std::log(high / low) * uniform()); }

int Dice::whole(int low, int high) { return low + static_cast<int>(uniform() * (high - low + 1)); }

double Dice::normal() {
    if (hasSpare_) {
        hasSpare_ = false;
        return spare_;
    }
    const double radius = std::sqrt(-2 * std::log(1 - uniform()));
    const double angle = 6.283185307179586 * uniform();
    spare_ = radius * std::sin(angle);
    hasSpare_ = true;
    return radius * std::cos(angle);
}

double Dice::student5() {
    const double z = normal();
    double chi2 = 0;
    for (int i = 0; i < 5; ++i) {
        const double n = normal();
        chi2 += n * n;
    }
    return z / std::sqrt(chi2 / 5) * std::sqrt(3.0 / 5);
}

} // namespace stillwire::families
