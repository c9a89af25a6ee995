// SPDX-License-Identifier: GPL-3.0-or-later
// Play or dropout, once it is known how long the arm was held over: a shift within the sheet's play that holds
// through its pose and goes back with it is play.
#pragma once

#include "core/domain/timeline.hpp"
#include "core/findings/findings.hpp"

#include <vector>

namespace stillwire {

struct PlayEvidence {
    const Timeline* timeline = nullptr;
    double interval_s = 0;
    double resolution_V = 0; // of the meter
};

// Settles the kind of each excursion. In order of time.
void tellPlay(std::vector<Excursion>& excursions, const PlayEvidence& evidence);

} // namespace stillwire
