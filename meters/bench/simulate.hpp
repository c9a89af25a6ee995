// SPDX-License-Identifier: GPL-3.0-or-later
// The one door to the fault bench: a script, a sheet, a meter and a seed in; a capture and its truth out.
#pragma once

#include "core/base/result.hpp"
#include "core/capture/reader.hpp"
#include "core/sheet/meter_traits.hpp"
#include "core/sheet/sheet.hpp"
#include "meters/bench/hand.hpp"
#include "meters/bench/setup.hpp"
#include "meters/bench/truth.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

// What the scripted hand does, in the order of the procedure.
struct BenchPlan {
    std::vector<Step> steps = {Step::hookUp,        Step::reference, Step::ground, Step::coldStart, Step::wiggleShaft,
                               Step::wiggleHarness, Step::fullPress, Step::sweep,  Step::release,   Step::lift};
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

struct BenchScript {
    std::string name, notes;
    std::string started = "2026-01-12T06:40:00+01:00";
    std::string sheet, meter; // names or paths the script asks for; may be empty. Looked up outside.
    bench::BenchSetup setup;
    std::vector<std::string> faultKinds; // as written: added to `setup` when the sheet is known
    bench::HandHabits habits;
    BenchPlan plan;
};

struct Simulation {
    Capture capture; // header, readings, marks and rows as a recording would hold them
    Truth truth;
};

// Errors: a sheet with fewer than two positions; levels that do not fit the sheet; a fault of no known name.
[[nodiscard]] Result<Simulation> simulate(const BenchScript& script, const Sheet& sheet, const MeterTraits& meter,
                                          std::uint64_t seed);

// The setup with the script's named faults in it, and levels filled from the sheet.
[[nodiscard]] Result<bench::BenchSetup> prepare(const BenchScript& script, const Sheet& sheet);

// Fills reference, ground, levels, verdict and causes: the judgement table applied to what is true.
// `hangs` and what was done must be in `truth` already.
void judgeTruth(Truth& truth, const bench::BenchSetup& setup, const BenchPlan& plan, const Sheet& sheet);

} // namespace stillwire
