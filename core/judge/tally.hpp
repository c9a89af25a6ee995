// SPDX-License-Identifier: GPL-3.0-or-later
// Who speaks for a fault: dropouts and level jumps, by what was shaken or moved, each place by itself.
#pragma once

#include "core/judge/pose_evidence.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>

namespace stillwire {

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

using Belongs = std::function<bool(std::optional<Step>, int pose)>; // pose: -1 outside poses
[[nodiscard]] ShakenTally tallyWhere(const CoverageEvidence& evidence, const Belongs& mine);

// The newest lead check that counts, and the end of the last one that showed anything: what was seen before it may
// have been the leads.
struct LeadChecks {
    ShakenTally newest;
    std::optional<Time> failedUntil{};
};
[[nodiscard]] LeadChecks tallyLeads(const CoverageEvidence& evidence);

// With the pedal moved or held, nothing wiggled: sweep, presses, releases.
[[nodiscard]] ShakenTally tallyMoving(const CoverageEvidence& evidence);

// Pushes with which the arm leaned; it has no vote unless it leans though it is held.
struct LeanTally {
    int free = 0, held = 0;      // leans, with the arm let alone and held by the other hand
    int heldPoses = 0;           // looked at with the arm held
    double from_V = 0, to_V = 0; // of the newest
};
[[nodiscard]] LeanTally tallyLeans(const CoverageEvidence& evidence);

// Every place, once.
struct Tallies {
    ShakenTally shaft;                           // pushed in wiggle-shaft and in warm-repeat
    ShakenTally shaftFirst;                      // in wiggle-shaft alone
    ShakenTally harness;                         // decides where its worst section does
    std::map<std::string, ShakenTally> sections; // of the harness, by name; between its poses: ""
    ShakenTally section;                         // the one that failed most often
    int shakenSections = 1;                      // of how many
    ShakenTally held;                            // the shaft, the connector held
    ShakenTally leads;                           // the newest lead check
    ShakenTally referenceWire, groundWire;       // the wiggle of the shaft, watched on those wires
    ShakenTally referenceStill, groundStill;     // dropouts of those wires with nobody touching
    ShakenTally moving;                          // sweep, presses and releases
    LeanTally leans;                             // of the arm, with the pushes
    ShakenTally untouched;                       // cold-start: nobody touches anything
};
[[nodiscard]] Tallies takeTallies(const CoverageEvidence& evidence, const LeadChecks& leads);

} // namespace stillwire
