// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/hypothesis.hpp"

#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
constexpr double kNewest = 0.5; // weight of the newest step in the slope
constexpr double kUneven = 0.3; // and of the newest distance in the unevenness
} // namespace

void Way::add(Time time, double volts_V, double still_V) {
    const double dt_s = toSeconds(time - last);
    if (dt_s > 0) {
        const double step_V_per_s = (volts_V - last_V) / dt_s;
        const double off_V = std::abs(volts_V - at(time));
        uneven_V = readings <= 2 ? off_V : uneven_V + kUneven * (off_V - uneven_V);
        slope_V_per_s = readings <= 1 ? step_V_per_s : slope_V_per_s + kNewest * (step_V_per_s - slope_V_per_s);
    }
    last_V = volts_V;
    last = time;
    ++readings;
    if (time - then < 1s) return;
    paused = std::abs(volts_V - then_V) < still_V * toSeconds(time - then);
    then_V = volts_V;
    then = time;
}

} // namespace stillwire
