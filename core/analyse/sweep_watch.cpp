// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/sweep_watch.hpp"

namespace stillwire {

void SweepWatch::push(Time time, double volts_V, double threshold_V, bool asked) {
    dropouts_.clear();
    onward_.clear();
    if (const auto ended = line_.push(time, volts_V, threshold_V); ended && (asked || line_.even(ended->readings)))
        undecided_.push_back(*ended);
    if (const auto leapt = leap_.push(time, volts_V, threshold_V, !asked)) {
        dropouts_.push_back(*leapt);
        withheld_.clear();
    }
    if (leap_.off()) {
        withheld_.push_back({time, volts_V});
        return;
    }
    // What the line makes of a leap too long for it is the wrong way round.
    for (const Excursion& e : undecided_)
        if (!leap_.covers(e)) dropouts_.push_back(e);
    undecided_.clear();
    onward_.swap(withheld_);
    onward_.push_back({time, volts_V});
}

std::vector<SweepWatch::Point> SweepWatch::end() {
    line_.reset();
    leap_.reset();
    undecided_.clear();
    std::vector<Point> rest;
    rest.swap(withheld_);
    return rest;
}

} // namespace stillwire
