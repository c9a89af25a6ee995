// SPDX-License-Identifier: GPL-3.0-or-later
// Levels of the wires and of the positions against their windows.
#pragma once

#include "core/analyse/plateau_book.hpp"
#include "core/domain/timeline.hpp"
#include "core/findings/findings.hpp"
#include "core/judge/ratiometric.hpp"

#include <optional>
#include <vector>

namespace stillwire {

// Conformance by probability (JCGM 106:2012, 8): inside from 0.95, outside up to 0.05.
inline constexpr double kSureInside = 0.95;
inline constexpr double kSureOutside = 0.05;
[[nodiscard]] Conformance conformanceOf(double probabilityInside);

// A position that stands elsewhere when it is come to from the other side.
struct LostMotion {
    std::string position, before, after; // the neighbours on the way
    double fromBefore_V = 0, fromAfter_V = 0;
};

struct Levels {
    Supply supply;
    std::optional<WireLevel> reference, ground;
    std::vector<PositionLevel> positions; // in the order of the sheet
    int releases = 0;                     // visits to rest that came from a working position
    int hangs = 0;
    double hangLevel_V = 0, goodRest_V = 0; // nominal, when there are hangs
    std::optional<bool> hungOnStop;         // where the arm was, as answered while it hung
    bool scattered = false;                 // releases spread inside the window without a gap
    double scatterLow_V = 0, scatterHigh_V = 0;
    std::optional<LostMotion> lostMotion; // of positions between two others
    bool adjusted = false;                // turns were made; the levels are those after the last
    bool confirmed = false;               // every position was visited in `confirm` after the last turn
};

struct LevelEvidence {
    const Sheet* sheet = nullptr;
    const MeterTraits* meter = nullptr;
    const Timeline* timeline = nullptr;
    const std::vector<Plateau>* stays = nullptr; // settledStays()
    bool blackOnSensorGround = false;
    // A second meter's readings of the reference, by step, and that meter; empty: there was none.
    const std::vector<Plateau>* secondReference = nullptr;
    const MeterTraits* referenceMeter = nullptr;
};

[[nodiscard]] Levels weighLevels(const LevelEvidence& evidence);

// One stay per place: the plateau with most readings, leaving out what was only carried over a mark that asked for
// movement.
[[nodiscard]] std::vector<Plateau> settledStays(const std::vector<Plateau>& plateaus, const Timeline& timeline);

} // namespace stillwire
