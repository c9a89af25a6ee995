// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/unmarked_play.hpp"

#include <algorithm>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
constexpr int kHeldReadings = 3; // as a pose holds
constexpr Time kHeld = 600ms;    // between its first reading and its last
constexpr Time kApart = 6s;      // one pose and the next
constexpr std::size_t kFewest = 3;
constexpr double kAlike_V = 0.015; // of one arm held over the same way
constexpr double kAlikeCounts = 2;

bool shiftLikePlay(const Excursion& e) {
    return e.unmarked && e.kind == ExcursionKind::dropout && e.depth_V() <= e.play_V && e.readings >= kHeldReadings &&
           e.to - e.from >= kHeld;
}

bool alike(const std::vector<Excursion>& all, std::size_t from, std::size_t to, double tolerance_V) {
    double least_V[2] = {1e9, 1e9}, most_V[2] = {0, 0};
    for (std::size_t i = from; i < to; ++i) {
        const std::size_t way = all[i].direction == Direction::up ? 1 : 0;
        least_V[way] = std::min(least_V[way], all[i].depth_V());
        most_V[way] = std::max(most_V[way], all[i].depth_V());
    }
    return most_V[0] - least_V[0] <= tolerance_V && most_V[1] - least_V[1] <= tolerance_V;
}
} // namespace

void tellUnmarkedPlay(std::vector<Excursion>& excursions, double resolution_V) {
    const double tolerance_V = std::max(kAlike_V, kAlikeCounts * resolution_V);
    std::size_t from = 0;
    while (from < excursions.size()) {
        if (!shiftLikePlay(excursions[from])) {
            ++from;
            continue;
        }
        std::size_t to = from + 1;
        while (to < excursions.size() && shiftLikePlay(excursions[to]) &&
               excursions[to].from - excursions[to - 1].to <= kApart)
            ++to;
        if (to - from >= kFewest && alike(excursions, from, to, tolerance_V))
            for (std::size_t i = from; i < to; ++i) excursions[i].kind = ExcursionKind::play;
        from = to;
    }
}

} // namespace stillwire
