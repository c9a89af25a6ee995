// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of telling what is set aside: movements of the arm, leans, leads and supply.
#pragma once

#include "core/analyse/aside.hpp"
#include "core/analyse/travel.hpp"

#include <optional>
#include <vector>

namespace stillwire {

inline constexpr double kAsideRail_V = 0.1; // own rule, no source

[[nodiscard]] inline bool atRail(double volts_V, const Sheet& sheet) {
    return volts_V <= kAsideRail_V || volts_V >= sheet.nominal_V - kAsideRail_V;
}
inline void setAside(Excursion& e, Likely likely) {
    e.kind = ExcursionKind::aside;
    e.likely = likely;
}
// A dropout of the signal, over, in a step.
[[nodiscard]] bool ofSignal(const Excursion& e, const AsideEvidence& evidence);

// Goes to another position's level, and comes back; not in push after push.
void tellMovements(std::vector<Excursion>& excursions, const Travel& travel, const AsideEvidence& evidence);
// The arm stood where it was before for some time after it was asked to move.
[[nodiscard]] std::vector<Aside> lateStarts(const AsideEvidence& evidence, const Travel& travel);
// A level that settled elsewhere: where the arm goes, or a reference that sinks.
[[nodiscard]] std::optional<Likely> asMovement(const LevelJump& jump, const Travel& travel,
                                               const AsideEvidence& evidence);
[[nodiscard]] std::optional<Likely> asSag(const LevelJump& jump, const AsideEvidence& evidence);

// The same push does the same.
void tellLeans(std::vector<Excursion>& excursions, const AsideEvidence& evidence);

// A lead that left before its step was over; what came once in all, for long.
void tellLeads(std::vector<Excursion>& excursions, const AsideEvidence& evidence);
// When what was set aside was over: a lead that left early stays away until its step is.
[[nodiscard]] Time overAt(const Excursion& e, const AsideEvidence& evidence);

} // namespace stillwire
