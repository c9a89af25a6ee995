// SPDX-License-Identifier: GPL-3.0-or-later
// Chance that means the same on every machine: the engine is the standard's, the transforms are written out here,
// since the standard leaves those of its distributions to each library.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <random>
#include <string_view>

namespace stillwire::families {

class Dice {
public:
    // Two families with one seed have nothing in common.
    Dice(std::string_view family, std::uint64_t seed);

    double uniform(); // 0 <= u < 1
    double between(double low, double high) { return low + (high - low) * uniform(); }
    double logBetween(double low, double high);
    int whole(int low, int high); // both ends included
    bool chance(double share) { return uniform() < share; }
    double normal();   // mean 0, sd 1
    double student5(); // five degrees of freedom, scaled to sd 1
    template <typename T> T pick(std::initializer_list<T> of) {
        return *(of.begin() + whole(0, static_cast<int>(of.size()) - 1));
    }

private:
    std::mt19937_64 engine_;
    double spare_ = 0;
    bool hasSpare_ = false;
};

} // namespace stillwire::families
