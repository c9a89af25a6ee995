// SPDX-License-Identifier: GPL-3.0-or-later
// How much a wiggle step looked at, and what it can therefore claim.
#pragma once

#include "core/analyse/plateau_book.hpp"
#include "core/domain/timeline.hpp"
#include "core/findings/findings.hpp"
#include "core/sheet/meter_traits.hpp"
#include "core/sheet/sheet.hpp"

#include <optional>
#include <vector>

namespace stillwire {

struct CoverageEvidence {
    const Sheet* sheet = nullptr;
    const Timeline* timeline = nullptr;
    const std::vector<Plateau>* plateaus = nullptr;
    const std::vector<Excursion>* excursions = nullptr;
    const std::vector<LevelJump>* jumps = nullptr;
    const std::vector<BlindSpan>* blind = nullptr;
    double interval_s = 0;
    std::optional<double> aperture_s;
    double threshold_V = 0; // of now, for a step without a plateau
    Time end{0};
    const std::vector<Time>* renewals = nullptr; // of an excursion, perhaps in a later pose
    const MeterTraits* meter = nullptr;
    const std::vector<std::string>* sections = nullptr; // of the harness, from the sensor, as the capture names them
    Time countsFrom{-10000000}; // poses before it do not count: a lead check failed; see tallyLeads()
};

// Votes of the poses for a fault: excursions deeper than the sheet's play, and level jumps.
struct ShakenTally {
    int poses = 0;        // looked at
    int offScale = 0;     // of a level far from any limit of its range: the meter left its range, or went over it
    int faultPoses = 0;   // with a vote
    int suspectPoses = 0; // with a vote, or off the scale
    bool decides = false; // dropouts or jumps in two poses of one place, or a second off the scale: one is none
    bool any = false;     // at least one vote
    bool dropped = false; // a dropout among them
    bool jumped = false;  // a level jump among them
    Time newest{0};       // its end
    double heldLow_V = 0, heldHigh_V = 0; // between these the dropouts left their levels
    double deepest_V = 0;
    double held_V = 0, extreme_V = 0; // of the deepest
    int cleanAfter = 0; // poses (of movements: places come to) looked at after the newest vote, without one
    PosePlace area;     // of the harness, where three in four of the faulty poses lie; empty if none
};

// True if this excursion may speak for a fault: a dropout deeper than play, in a step that counts, and not one that
// the reference made.
[[nodiscard]] bool votes(const Excursion& excursion, const Timeline& timeline);

// `shaken`: the shaft or the harness, in the wiggle steps and in warm-repeat.
[[nodiscard]] ShakenTally tally(const CoverageEvidence& evidence, Wiggled shaken);
// The section of the harness that failed most often, and of how many.
struct WorstSection {
    ShakenTally tally;
    int sections = 1;
};
[[nodiscard]] WorstSection worstSection(const CoverageEvidence& evidence);
// The newest lead check that counts, and the end of the last one that showed anything: what was seen before it may
// have been the leads.
struct LeadChecks {
    ShakenTally newest;
    std::optional<Time> failedUntil{};
};
[[nodiscard]] LeadChecks tallyLeads(const CoverageEvidence& evidence);
// The same for one step, whatever is shaken in it.
[[nodiscard]] ShakenTally tallyStep(const CoverageEvidence& evidence, Step step);

// With the pedal moved or held, nothing wiggled: sweep, presses, releases.
[[nodiscard]] ShakenTally tallyMoving(const CoverageEvidence& evidence);
// With nobody touching anything: cold-start.
[[nodiscard]] ShakenTally tallyUntouched(const CoverageEvidence& evidence);

// Of a step, or of what it shook of shaft and harness.
[[nodiscard]] StepCoverage coverStep(const CoverageEvidence& evidence, Step step,
                                     std::optional<Wiggled> shaken = std::nullopt);
// Every wiggle step done, and the two required ones; after wiggle-harness its sections, if the capture names them.
[[nodiscard]] std::vector<StepCoverage> coverSteps(const CoverageEvidence& evidence);
// Shaft and harness together: the bound is that of the worst place.
[[nodiscard]] StepCoverage coverAll(const std::vector<StepCoverage>& steps);

} // namespace stillwire
