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
    std::optional<Step> again{}; // the step that would fill it in, done or done again
};

// The reference under the eyes of a second meter.
struct ReferenceTally {
    int drops = 0;                    // with the signal going along, or out of the sheet's limits
    int withSignal = 0;               // the signal went along in the same proportion
    bool decides = false;             // two, or one of three readings or more
    double held_V = 0, extreme_V = 0; // of the deepest
};

// Everything the rows look at.
struct Case : Tallies {
    const Sheet* sheet = nullptr;
    const Timeline* timeline = nullptr;
    const Findings* findings = nullptr; // all but the verdict
    const Levels* levels = nullptr;
    bool harnessEnough = false; // every section looked at enough
    int heldWanted = 0;         // poses still wanted with the connector held
    ReferenceTally secondMeter; // dropouts of the reference that a second meter saw
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
    Sentence (*condition)(const Case&) = nullptr;        // the decision holds if; null: without one
    std::optional<Step> (*again)(const Case&) = nullptr; // of one that cannot tell: what to do again; null: nothing
    CauseKind kind{};                                    // given by the part of the table it stands in
};

// In the order of rank; the last one always holds.
[[nodiscard]] std::span<const JudgementRow> judgementTable();

[[nodiscard]] Verdict judge(const Case& facts);

[[nodiscard]] std::vector<Missing> missingForKeep(const Case& facts);

} // namespace stillwire
