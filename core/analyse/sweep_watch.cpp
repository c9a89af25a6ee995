// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/sweep_watch.hpp"

#include <algorithm>

namespace stillwire {

void SweepWatch::tell(const Excursion& excursion) {
    dropouts_.push_back(excursion);
    toldTo_ = std::max(toldTo_, excursion.to);
}

void SweepWatch::push(Time time, double volts_V, double threshold_V, bool asked) {
    dropouts_.clear();
    onward_.clear();
    if (const auto ended = line_.push(time, volts_V, threshold_V); ended && (asked || line_.even(ended->readings)))
        undecided_.push_back(*ended);
    const auto bridged = bridge_.push(time, volts_V, threshold_V);
    if (const auto leapt = leap_.push(time, volts_V, threshold_V, !asked)) {
        tell(*leapt);
        withheld_.clear();
    }
    if (bridged && bridged->from > toldTo_) {
        tell(*bridged);
        leap_.reset(); // what it took for a leap was the way back
    }
    if (leap_.off()) {
        withheld_.push_back({time, volts_V});
        return;
    }
    // What the line makes of a leap too long for it is the wrong way round.
    for (const Excursion& e : undecided_)
        if (!leap_.covers(e) && e.from > toldTo_) tell(e);
    undecided_.clear();
    onward_.swap(withheld_);
    onward_.push_back({time, volts_V});
}

std::vector<SweepWatch::Point> SweepWatch::end() {
    line_.reset();
    leap_.reset();
    bridge_.reset();
    undecided_.clear();
    std::vector<Point> rest;
    rest.swap(withheld_);
    return rest;
}

} // namespace stillwire
