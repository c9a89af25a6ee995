// SPDX-License-Identifier: GPL-3.0-or-later
// What a trace says: plain data, copied to whoever shows it. "nominal" volts are at the nominal reference, "shown"
// volts are what the meter showed. An absent optional was not measured.
#pragma once

#include "core/base/sentence.hpp"
#include "core/base/time.hpp"
#include "core/domain/mark.hpp"
#include "core/sheet/sheet.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace stillwire {

enum class BlindCause { autorange, gap, overload, hold, frozen, unit };
struct BlindSpan {
    Time from{0}, to{0};
    BlindCause cause = BlindCause::gap;
};

// Phases tile the capture: each begins where the one before ends.
enum class PhaseKind { quiet, wiggle, travel, blind };
struct Phase {
    PhaseKind kind = PhaseKind::quiet;
    Time from{0}, to{0};
    std::optional<double> level_V, noise_V; // shown
};

// What was set aside, by what it most likely was: it speaks for no fault. slip, tap: the arm went towards another
// position, or to rest, and back. early, late: a movement that was asked for came at another time. unfinished:
// stopped short of where the others went. resting: a foot left on it. creep: through readings on the way, and stayed.
// lean: the arm turns a little with the push. lead: the tip lost contact. crank, sag: the supply.
enum class Likely { slip, tap, early, late, unfinished, resting, creep, lean, lead, crank, sag, unknown };
struct Aside {
    Time from{0}, to{0};
    double from_V = 0, to_V = 0; // shown
    std::optional<Step> step;
    Likely likely = Likely::unknown;
};

enum class Direction { down, up };
enum class ExcursionKind { dropout, play, aside };
// An excursion from the held level that came back (or, while `open`, has not yet). All volts shown. The depth is a
// lower bound, the duration an interval: the meter averages.
struct Excursion {
    Time from{0}, to{0}; // first and last reading that show it
    double held_V = 0;
    double extreme_V = 0;
    double threshold_V = 0; // in force when it was flagged
    double play_V = 0;      // how deep the bushing alone may make it here; only a deeper one speaks for a fault
    Direction direction = Direction::down;
    ExcursionKind kind = ExcursionKind::dropout;
    int readings = 0;
    bool open = false;
    bool unmarked = false;           // no step was open
    std::optional<Step> step;        // in force when the first reading's aperture began
    PosePlace pose;                  // empty outside a pose
    int poseIndex = -1;              // counts the poses of the capture; -1 outside a pose
    bool withReference = false;      // the reference went along in the same proportion: the supply, not the sensor
    double far_V = 0;                // median of the readings at its far end: within a seventh of the depth
    double farSpread_V = 0;          // of those, from the lowest to the highest
    int farReadings = 0;             // how many those are
    Likely likely = Likely::unknown; // of one set aside

    [[nodiscard]] double depth_V() const { return held_V > extreme_V ? held_V - extreme_V : extreme_V - held_V; }
};

struct LevelJump {
    Time at{0};
    double from_V = 0, to_V = 0; // shown
    std::optional<Step> step;
    int poseIndex = -1;
    bool withReference = false; // as of an excursion
    bool leapt = false;         // no more than a reading on the way
};

// A stretch at one level, marked or not: at least three readings and two seconds. Volts shown.
struct Stay {
    Time from{0}, to{0};
    double level_V = 0; // median
    double noise_V = 0; // of one reading
    std::int64_t readings = 0;
    std::vector<std::string> windows; // names of the positions whose windows it lies in
};

// The newest readings of two meters together.
struct LiveRatio {
    double reference_V = 0;        // shown by the second meter
    std::optional<double> level_V; // nominal, of the newest reading of the signal by the ratio; absent: no number
};

enum class Conformance { inside, outside, undecided };

// One stay at a position. Volts shown but for level_V and u_V (nominal, k = 1).
struct Visit {
    Time from{0}, to{0};
    double raw_V = 0;
    double level_V = 0;
    double u_V = 0;
    int readings = 0;
    bool hang = false; // stopped short on its way back to rest, among visits that did not; and not alone in that
    std::optional<Step> step;
    std::optional<Likely> aside; // stands apart from visits that agree: decides nothing alone

    [[nodiscard]] bool standsApart() const { return hang || aside; }
    [[nodiscard]] bool stoppedShort() const { return hang || aside == Likely::resting; }
};

struct PositionLevel {
    std::string name;
    Window window_V;                         // nominal
    std::optional<double> level_V, raw_V;    // median over visits: nominal, shown
    std::optional<double> u_V;               // k = 1, nominal
    std::optional<double> probabilityInside; // of the worst visit that is not a hang
    std::optional<Conformance> conformance;
    std::optional<double> coldLevel_V; // the first cold visit, nominal
    std::optional<double> spread_V;    // over visits, nominal
    std::vector<Visit> visits;
    bool agreed = false; // two visits do: one alone speaks for nothing
};

struct WireLevel { // reference or ground, as read
    double level_V = 0;
    double u_V = 0;
    double lowest_V = 0, highest_V = 0;
    int visits = 0;
    double change_V = 0; // largest difference between visits
    double lowestVisit_V = 0, highestVisit_V = 0;
    double worst_V = 0; // the visit that the probability is of
    double probabilityInside = 0;
    Conformance conformance = Conformance::undecided;
};

struct StepCoverage {
    Step step = Step::wiggleShaft;
    std::string section{}; // of the harness; empty: the whole step
    int poses = 0;         // looked at: not blind
    int blindPoses = 0;
    int asidePoses = 0;                // something in them was set aside: no evidence either way
    int dropouts = 0;                  // poses that showed at least one
    std::optional<double> rateUpper95; // per pose, for the shortest visible or longer
    std::optional<int> posesFor95;     // still needed; absent: this meter cannot see the reference fault here
    std::optional<double> shortestVisible_s;
    int jumps = 0;
    int again = 0; // to be asked for beyond posesFor95: after one that dropped out alone, or to be surer
};

struct AdjustmentAdvice {
    bool wanted = false;
    bool feasible = false;
    std::optional<double> shift_V;                         // nominal, of the rest position
    std::map<std::string, double> targetRaw_V;             // shown, by position
    std::map<std::string, double> after_V;                 // nominal
    std::map<std::string, double> share;                   // how much of the shift each position takes; rest is 1
    std::optional<double> margin;                          // smallest, in half-windows, after the shift
    std::optional<double> voltsPerTurn_V, uVoltsPerTurn_V; // learned from two turns or more
    int turns = 0;
    bool sharesAssumed = false; // no turn has taught them, and equal ones would not do
};

struct MachineStrip {
    int stops = 0;         // sure
    int stopsPossible = 0; // the sure ones and those the averaged readings allow
    struct Point {
        Time time{0};
        double drive = 0; // 0 none, 1 full
    };
    std::vector<Point> points; // where the drive changes
};

struct WearBin {
    double from = 0, to = 0; // share of the travel between the outermost window middles
    double time_s = 0;
    int dropouts = 0;
    double noise_V = 0;
};

struct ColdWarm {
    int coldPoses = 0, coldDropouts = 0, warmPoses = 0, warmDropouts = 0;
    double p = 1; // exact, two-sided
    bool significant = false;
};

enum class Decision { keep, adjust, replace, checkWiring, checkSupply, checkLinkage, cannotTell };
[[nodiscard]] const char* decisionName(Decision decision); // "check-wiring"

// What a sentence of the verdict is about, for programs; the words are for people alone.
template <class Kind> struct Said {
    Kind kind;
    Sentence says;
};
template <class Kind> [[nodiscard]] std::vector<Sentence> wordsOf(const std::vector<Said<Kind>>& all) {
    std::vector<Sentence> words;
    for (const Said<Kind>& one : all) words.push_back(one.says);
    return words;
}

// What a row of the judgement table speaks of, by its rank.
enum class CauseKind { wires, dropouts, levels, tooLittleSeen, allWell };
// A row of the judgement table that holds, with the test that would split it from the others.
struct Cause {
    CauseKind kind = CauseKind::tooLittleSeen;
    Decision decision = Decision::cannotTell;
    Sentence says;
    Sentence nextTest;
};

enum class ReasonKind {
    cause,
    missing,
    offScale,
    seenOnce,
    level,
    undecidedLevel,
    coldLevel,
    gainCancels,
    meterAssumed
};
enum class NotTestedKind { step, skipped, blind, undone, beyondTheSensor, shortDropouts };
enum class NextKind { splitsCauses, fillsIn, nothingLeft }; // the test of a cause; what is missing for keep; none

struct Verdict {
    Decision decision = Decision::cannotTell;
    bool settled = false;    // no step left would change it: each that could outrank it is done or declined
    std::vector<Step> again; // to be done, or done again, so that it can be told; empty where it is
    Sentence condition;      // stands beside the decision, as in "if lever and mount are tight"; or empty
    std::vector<Said<ReasonKind>> reasons; // the first is the decision's
    std::vector<Cause> causes;             // ranked; the first is the decision's
    std::vector<Said<NotTestedKind>> notTested;
    std::vector<Said<NextKind>> next;
};

// What the meter does to the evidence, as the bench found it.
struct MeterFigures {
    double interval_s = 0; // as described, or as seen where the description is absent or wrong
    std::optional<double> aperture_s;
    double resolution_V = 0;
    double held_V = 0;      // of now, shown
    double noise_V = 0;     // of now
    double threshold_V = 0; // of now
};

// What is happening at the newest reading, for the word beside the number.
enum class WireState { silent, steady, moving, dropped, jumped, blind, overVoltage };

struct Findings {
    std::size_t readings = 0;
    Time duration{0};
    MeterFigures meter;
    WireState state = WireState::silent;
    std::vector<Sentence> assumed;
    std::vector<BlindSpan> blind;
    std::vector<Phase> phases;
    std::vector<Excursion> excursions; // dropouts and play, in order of time
    std::vector<LevelJump> jumps;
    std::vector<Aside> aside;
    std::vector<Stay> plateaus;
    std::vector<PositionLevel> positions; // in the order of the sheet
    std::optional<WireLevel> reference, ground;
    std::vector<Excursion> referenceMoves; // of the reference, seen by a second meter
    std::vector<BlindSpan> referenceBlind; // when the second meter did not see it
    std::optional<LiveRatio> ratio;        // while a second meter reads the reference
    std::vector<StepCoverage> steps;       // wiggle steps done, and the required ones; sections after their step
    StepCoverage wiggle;                   // shaft and harness together
    AdjustmentAdvice adjustment;
    MachineStrip machine;
    std::vector<WearBin> wear;
    std::optional<ColdWarm> coldWarm;
    bool leadsFailed = false; // the newest lead check showed something
    bool holdTheArm = false;  // it leaned with the pushes, and nobody has held it for them yet
    bool overVoltage = false; // signal or reference over 1.1 times the nominal: stop, key off
    Verdict verdict;
};

} // namespace stillwire
