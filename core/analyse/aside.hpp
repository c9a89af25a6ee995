// SPDX-License-Identifier: GPL-3.0-or-later
// What hands do and sensors do not: a movement nobody asked for, an arm that leans with the push, a tip that lost
// contact. Told from a dropout by where it goes, how it gets there, and whether the same push does it again.
#pragma once

#include "core/analyse/plateau_book.hpp"
#include "core/domain/timeline.hpp"
#include "core/findings/findings.hpp"
#include "core/sheet/sheet.hpp"

#include <vector>

namespace stillwire {

struct AsideEvidence {
    const Sheet* sheet = nullptr;
    const Timeline* timeline = nullptr;
    const std::vector<Plateau>* plateaus = nullptr;
    Time aperture{0};
    double resolution_V = 0; // of the meter
};

// Says of each excursion whether it is set aside, and as what; play was told before. Takes the jumps that are out of
// their list.
[[nodiscard]] std::vector<Aside> tellAside(std::vector<Excursion>& excursions, std::vector<LevelJump>& jumps,
                                           const AsideEvidence& evidence);

// Visits that stand apart, among them, in order of time.
void addVisitsApart(const std::vector<PositionLevel>& positions, std::vector<Aside>& asides);

} // namespace stillwire
