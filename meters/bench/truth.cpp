// SPDX-License-Identifier: GPL-3.0-or-later
// The judgement table applied to what is true: what a bench that saw everything would say.
#include "meters/bench/truth.hpp"

#include "meters/bench/faults.hpp"
#include "meters/bench/simulate.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {
namespace {

using bench::Place;

constexpr int kEnoughPoses = 29; // one in ten unseen with 95 %: ceil(ln 0.05 / ln 0.9)
constexpr int kEnoughReleases = 3;

enum class Mount { fine, turn, noTurnHelps };

// Levels against windows: is a shift wanted, and does one exist that brings every position inside?
Mount mountOf(const std::vector<double>& level_V, const std::vector<double>& share, const Sheet& sheet) {
    const double keepOff_V = sheet.driftAllowance_V.value_or(0);
    double least_V = -1e9, most_V = 1e9; // of the mount
    bool wanted = false;
    for (std::size_t i = 0; i < level_V.size(); ++i) {
        const Window& window = sheet.positions[i].window;
        const double low_V = level_V[i] - window.min_V, high_V = window.max_V - level_V[i];
        wanted = wanted || std::min(low_V, high_V) < keepOff_V;
        const double s = i < share.size() && share[i] > 0 ? share[i] : 1;
        least_V = std::max(least_V, -low_V / s);
        most_V = std::min(most_V, high_V / s);
    }
    if (!wanted) return Mount::fine;
    return least_V <= most_V && sheet.driftAllowance_V ? Mount::turn : Mount::noTurnHelps;
}

bool done(const BenchPlan& plan, Step step) {
    return std::find(plan.steps.begin(), plan.steps.end(), step) != plan.steps.end();
}

bool enough(const BenchPlan& plan) {
    const bool all = std::all_of(kStepTable.begin(), kStepTable.end(),
                                 [&](const StepTraits& t) { return t.need != Need::required || done(plan, t.step); });
    return all && plan.marked && plan.shaftPoses >= kEnoughPoses && plan.harnessPoses >= kEnoughPoses &&
           plan.releases >= kEnoughReleases;
}

} // namespace

void judgeTruth(Truth& truth, const bench::BenchSetup& setup, const BenchPlan& plan, const Sheet& sheet) {
    bench::Rig still(setup, setup.mechanics.level_V, bench::restIndex(sheet), MeterTraits{}, 0);
    still.key(true);
    truth.reference_V = still.settled_V(Wire::reference);
    truth.ground_V = still.settled_V(Wire::ground);
    truth.level_V.clear();
    for (std::size_t i = 0; i < sheet.positions.size(); ++i) {
        truth.level_V.push_back(still.trueLevel_V(static_cast<double>(i)));
    }
    const auto has = [&](auto&& wanted) { return std::any_of(setup.faults.begin(), setup.faults.end(), wanted); };
    const bool inHarness = has([](const bench::Intermittent& f) { return f.place != Place::wiper; });
    const bool inSensor = has([](const bench::Intermittent& f) { return f.place == Place::wiper; });
    // A signal wire that opens beyond the probe changes nothing the probe can see.
    const bool beyondProbe = setup.side == ProbeSide::sensorSide &&
                             has([](const bench::Intermittent& f) { return f.place == Place::signalWire; });
    // The mount counts as it stands after the turns that were made.
    int turns = 0;
    if (done(plan, Step::adjust)) {
        for (const int turn : plan.turns) turns += turn;
    }
    bench::Rig after(setup, setup.mechanics.level_V, bench::restIndex(sheet), MeterTraits{}, 0);
    after.key(true);
    after.turn(turns);
    std::vector<double> level_V;
    for (std::size_t i = 0; i < sheet.positions.size(); ++i) {
        level_V.push_back(after.trueLevel_V(static_cast<double>(i)));
    }
    const Mount mount = mountOf(level_V, setup.mechanics.share, sheet);

    struct Row {
        bool holds;
        Decision decision;
        const char* cause;
    };
    const double lowest_V = truth.reference_V - setup.reference.wander_V;
    const Row rows[] = {
        {lowest_V < sheet.reference.min_V || truth.reference_V > sheet.reference.max_V, Decision::checkSupply,
         "reference outside its limits"},
        {std::abs(truth.ground_V) > sheet.maxDrop_V, Decision::checkWiring, "ground drop"},
        {inHarness && !beyondProbe, Decision::checkWiring, "dropouts in the harness"},
        {inSensor, Decision::replace, "dropouts in the sensor"},
        {truth.hangs > 1, setup.mechanics.hangInSensor ? Decision::replace : Decision::checkLinkage,
         "releases that hang"},
        {mount == Mount::noTurnHelps, Decision::checkLinkage, "span that no shift mends"},
        {mount == Mount::turn, Decision::adjust, "wants adjustment"},
        {!enough(plan), Decision::cannotTell, "not looked at enough"},
    };
    truth.verdict = Decision::keep;
    truth.causes.clear();
    for (const Row& row : rows) {
        if (!row.holds) continue;
        if (truth.causes.empty()) truth.verdict = row.decision;
        truth.causes.emplace_back(row.cause);
    }
}

} // namespace stillwire
