// SPDX-License-Identifier: GPL-3.0-or-later
// What a run on the fault bench is: the sensor and its faults, the hand and what it does. A file of it: README.md
// here.
#pragma once

#include "core/base/result.hpp"
#include "core/domain/mark.hpp"
#include "meters/bench/hand.hpp"
#include "meters/bench/setup.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace stillwire {

// What the scripted hand does, in the order of the procedure.
struct BenchPlan {
    std::vector<Step> steps = {Step::hookUp,    Step::reference,   Step::ground,        Step::coldStart,
                               Step::leadCheck, Step::wiggleShaft, Step::connectorHeld, Step::wiggleHarness,
                               Step::fullPress, Step::sweep,       Step::release,       Step::lift};
    int shaftPoses = 32;
    int harnessPoses = 32;
    int sections = 3; // section 1 is the sensor's own connector
    int warmPoses = 32;
    int releases = 5;
    double coldStart_s = 35;
    double warmWait_s = 60;  // before warm-repeat; 12 minutes at a machine
    std::vector<int> turns;  // part-turns of the adjust step, one mark each
    bool marked = true;      // false: the same doings, no marks but none
    double poseReadings = 3; // a pose lasts this many intervals and a random part of one more
};

// One fault: a kind by name, tuned, or one built from nothing at a place.
struct BenchFault {
    std::string kind; // "worn-track"; empty: `place` says where
    std::optional<bench::Place> place;
    std::optional<std::string> cause;
    std::optional<int> section;
    std::vector<std::pair<double bench::Intermittent::*, double>> tuned;
    int line = 0; // in the script
};

struct BenchScript {
    std::string name, notes;
    std::string started = "2026-01-12T06:40:00+01:00";
    std::string sheet, meter; // names or paths the script asks for; may be empty. Looked up outside.
    bench::BenchSetup setup;
    std::vector<BenchFault> faults; // put into `setup` when the sheet is known
    bench::HandHabits habits;
    BenchPlan plan;
};

// `where` names the file in errors. Errors: not TOML, newer format, an unknown word, a figure out of its range; each
// with its line. Unknown keys are an error too: a misspelt figure would make a bench that is not the one meant.
[[nodiscard]] Result<BenchScript> parseBenchScript(std::string_view toml, const std::string& where);

} // namespace stillwire
