// SPDX-License-Identifier: GPL-3.0-or-later
// The judgement: a table of rows, the first that holds decides, all that hold are listed.
#pragma once

#include "core/domain/timeline.hpp"
#include "core/findings/findings.hpp"
#include "core/judge/coverage.hpp"
#include "core/judge/levels.hpp"

#include <span>
#include <vector>

namespace stillwire {

// What still stands between this case and `keep`: a sentence, and what to do about it.
struct Missing {
    Sentence says;
    Sentence next;
};

// The reference under the eyes of a second meter.
struct ReferenceTally {
    int drops = 0;                    // with the signal going along, or out of the sheet's limits
    int withSignal = 0;               // the signal went along in the same proportion
    bool decides = false;             // two, or one of three readings or more
    double held_V = 0, extreme_V = 0; // of the deepest
};

// Everything the rows look at.
struct Case {
    const Sheet* sheet = nullptr;
    const Timeline* timeline = nullptr;
    const Findings* findings = nullptr; // all but the verdict
    const Levels* levels = nullptr;
    ShakenTally shaft, harness;              // wiggle steps and warm-repeat
    ShakenTally section;                     // the worst of the harness; `harness` decides where it does
    int sections = 1;                        // in how many the harness was shaken
    ShakenTally held;                        // the shaft, the connector held
    ShakenTally leads;                       // the newest lead check
    bool harnessEnough = false;              // every section looked at enough
    int heldWanted = 0;                      // poses still wanted with the connector held
    ShakenTally referenceWire, groundWire;   // the wiggle of the shaft, watched on those wires
    ShakenTally referenceStill, groundStill; // dropouts of those wires with nobody touching
    ReferenceTally secondMeter;              // dropouts of the reference that a second meter saw
    ShakenTally moving;                      // sweep, presses and releases
    ShakenTally untouched;                   // cold-start, and wherever nobody moved anything
    int unmarkedDropouts = 0;
    bool blackOnSensorGround = false;
    bool probeAtSensor = true; // else at the controller
    bool meterKnown = true;
    std::vector<Missing> missing; // missingForKeep() of the rest, found once for all rows
};

struct JudgementRow {
    const char* name;
    Decision decision;
    bool (*holds)(const Case&);
    Sentence (*says)(const Case&);
    Sentence (*nextTest)(const Case&);
    Sentence (*condition)(const Case&) = nullptr; // the decision holds if; null: without one
    CauseKind kind{};                             // given by the part of the table it stands in
};

// In the order of rank; the last one always holds.
[[nodiscard]] std::span<const JudgementRow> judgementTable();

[[nodiscard]] Verdict judge(const Case& facts);

[[nodiscard]] std::vector<Missing> missingForKeep(const Case& facts);

} // namespace stillwire
