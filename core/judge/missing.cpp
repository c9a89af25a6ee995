// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/blind_mend.hpp"
#include "core/judge/case_facts.hpp"
#include "core/judge/judgement.hpp"
#include "core/judge/phrases.hpp"
#include "core/judge/within.hpp"
#include "core/stats/exact.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr int kReleases = 3;

void wires(const Case& c, std::vector<Missing>& out) {
    const Findings& f = *c.findings;
    if (!c.levels->supply.referenceMeasured && !f.reference)
        out.push_back({"The reference was not measured.",
                       "Measure the reference wire at the sensor, black lead where it is.", Step::reference});
    if (f.reference && f.reference->conformance == Conformance::undecided)
        out.push_back({{"The reference, %1, good to %2, is too close to its limit to call.",
                        {levelTo(f.reference->worst_V, f.reference->u_V), within(f.reference->u_V)}},
                       "Measure the reference with a better meter or on a finer range."});
    if (!f.ground && !c.blackOnSensorGround)
        out.push_back({"The ground drop was not measured.",
                       "Measure the ground wire at the sensor against battery negative.", Step::ground});
    if (f.ground && f.ground->conformance == Conformance::undecided)
        out.push_back({{"The ground drop, %1, good to %2, is too close to its limit to call.",
                        {volts(f.ground->worst_V, 3), within(f.ground->u_V)}},
                       "Measure the ground drop on a finer range."});
}

// What made the poses of this step blind, and how to mend it.
Sentence mendOfBlindPoses(const Case& c, Step step) {
    std::vector<BlindSpan> inStep;
    for (const StepVisit& visit : c.timeline->stepVisits())
        for (const BlindSpan& span : c.findings->blind)
            if (visit.step == step && span.to > visit.from && (!visit.closed || span.from < visit.to))
                inStep.push_back(span);
    const Sentence mend = blindMend(inStep, Time(0), Time::max());
    return mend.empty() ? Sentence{"Lock the meter's range on DC volts and wiggle on."} : mend;
}

// Whoever chooses fewer poses is told what they can see.
Sentence whatSoManyShow(const Case& c, const StepCoverage& step) {
    const bool shaft = step.step == Step::wiggleShaft, sections = !shaft && bySection(c);
    int least = step.poses;
    for (const StepCoverage& one : c.findings->steps)
        if (sections && !one.section.empty()) least = std::min(least, one.poses);
    const double share = sections ? c.sheet->referenceFault.sectionShare : c.sheet->referenceFault.share;
    const double percent = std::floor(100 * (1 - std::pow(1 - share, least)));
    return {shaft ? "So many would show a fault of one push in %1 with a chance of %2 %%."
                  : "Where it was bent least, a fault of one bend in %1 would show with a chance of %2 %%.",
            {plain(1 / share, 0), plain(percent, 0)}};
}

// Where the most poses are wanted.
Sentence wiggleOn(const Case& c, const StepCoverage& step) {
    const std::string wanted = std::to_string(step.posesFor95.value_or(0));
    if (step.step == Step::wiggleShaft) return {"Wiggle the shaft, poses still wanted: %1.", {wanted}};
    const StepCoverage* section = nullptr;
    for (const StepCoverage& one : c.findings->steps)
        if (!one.section.empty() && one.posesFor95.value_or(0) > (section ? *section->posesFor95 : 0)) section = &one;
    if (!section) return {"Wiggle the harness, poses still wanted: %1.", {wanted}};
    return {"Wiggle the harness at %1, poses still wanted there: %2.",
            {byName(section->section), std::to_string(*section->posesFor95)}};
}

void wiggle(const Case& c, std::vector<Missing>& out) {
    for (const StepCoverage& step : c.findings->steps) {
        const bool shaft = step.step == Step::wiggleShaft;
        if (!traits(step.step).requiredWiggle() || !step.section.empty()) continue;
        if (!step.posesFor95) {
            out.push_back({"This meter cannot see a dropout of half a volt here.",
                           "Use a meter with a finer range or less noise."});
            continue;
        }
        const int offScale = (shaft ? c.shaft : c.harness).offScale;
        if (offScale > 0 && *step.posesFor95 == 0) {
            out.push_back({leftItsRange(offScale, shaft ? Wiggled::shaft : Wiggled::harness),
                           "Lock the meter's range on DC volts and repeat these poses.", step.step});
        }
        if (*step.posesFor95 == 0) continue;
        const std::string seen = std::to_string(step.poses), wanted = std::to_string(*step.posesFor95);
        const int lost = step.blindPoses + step.asidePoses;
        const Sentence says = lost > 0 ? Sentence{shaft ? "Shaft: %1 pushes counted, %2 lost, %3 to go."
                                                        : "Harness: %1 bends counted, %2 lost, %3 to go.",
                                                  {seen, std::to_string(lost), wanted}}
                                       : Sentence{shaft ? "Shaft: %1 pushes counted, %2 to go."
                                                        : "Harness: %1 bends counted, %2 to go.",
                                                  {seen, wanted}};
        const Sentence next = step.blindPoses > 0 ? mendOfBlindPoses(c, step.step) : wiggleOn(c, step);
        out.push_back({says, next, step.step});
        if (step.poses > 0) out.push_back({whatSoManyShow(c, step), next, step.step});
    }
}

void positions(const Case& c, std::vector<Missing>& out) {
    if (!c.timeline->did(Step::coldStart))
        out.push_back({"There is no cold reading at rest.",
                       "Let the machine stand cold, then record the first minute at rest, hands off.",
                       Step::coldStart});
    if (!c.timeline->did(Step::fullPress))
        out.push_back(
            {"Nothing was pressed fully and held.", "Press fully and hold it still, five seconds.", Step::fullPress});
    bool undecided = false;
    const int rest = static_cast<int>(&c.sheet->rest() - c.sheet->positions.data());
    for (const PositionLevel& position : c.findings->positions) {
        const bool resting = &position - c.findings->positions.data() == rest;
        if (!position.level_V) {
            out.push_back({{"The level %1 was not measured.", {byName(position.name)}},
                           resting ? Sentence{"Record the level %1, hands off.", {byName(position.name)}}
                                   : Sentence{"Press fully to %1 and hold it still.", {byName(position.name)}},
                           resting ? Step::release : Step::fullPress});
        } else if (!position.agreed) {
            out.push_back({{position.visits.size() == 1 ? "%1 was visited once; one visit is none."
                                                        : "No two visits of %1 agree.",
                            {byName(position.name)}},
                           resting ? Sentence{"Release to %1 again and let it settle.", {byName(position.name)}}
                                   : Sentence{"Press fully to %1 again and hold it still.", {byName(position.name)}},
                           resting ? Step::release : Step::fullPress});
        } else if (position.conformance == Conformance::undecided) {
            const bool wanders = c.levels->supply.referenceMeasured && !c.levels->supply.steady();
            undecided = true;
            out.push_back({tooCloseToCall(position),
                           wanders ? Sentence{"The reference changed by %1 between looks: watch it for longer, then "
                                              "measure %2 again.",
                                              {volts(c.levels->supply.referenceChange_V), byName(position.name)}}
                                   : Sentence{"Measure %1 again with a better meter or on a finer range.",
                                              {byName(position.name)}}});
        }
    }
    const AdjustmentAdvice& turn = c.findings->adjustment;
    if (turn.wanted && turn.feasible && !adjustable(c) && !undecided && !movesUntouched(c))
        out.push_back({"An end lies near its limit, and no turn would bring every end further in.",
                       "Look at the stops and the lever, then measure every end again."});
    if (c.levels->releases < kReleases)
        out.push_back({{"Releases recorded: %1 of 3.", {std::to_string(c.levels->releases)}},
                       "Press and release, three times, and let it settle each time.",
                       Step::release});
    if (c.levels->adjusted && !c.levels->confirmed)
        out.push_back({"The sensor was turned, and the ends were not all confirmed after tightening.",
                       "Tighten, work the pedal five times, then measure every end again.", Step::confirm});
}

void loneDropouts(const Case& c, std::vector<Missing>& out) {
    const auto lone = [&](bool holds, const ShakenTally& tally, const char* says, const char* next, Step again) {
        if (holds && seenOnce(tally))
            out.push_back({{says, {volts(tally.held_V), volts(tally.extreme_V)}}, {next, {}}, again});
    };
    const auto alone = [&](const ShakenTally& tally, Step step, const char* says, const char* next) {
        lone(stillWanted(c, step), tally, says, next, step);
    };
    const auto still = [&](const ShakenTally& tally, Step step, const char* says, const char* next) {
        lone(!doneSince(c, step, tally.newest), tally, says, next, step);
    };
    alone(c.shaft, Step::wiggleShaft,
          "A single short dropout with the shaft pushed: %1 went to %2 or further. One alone does not decide.",
          "Repeat the same pose of the shaft.");
    lone(loneInASection(c), c.harness,
         "A single short dropout with the harness moved: %1 went to %2 or further. One alone does not decide.",
         "Repeat the same place of the harness.", Step::wiggleHarness);
    alone(c.referenceWire, Step::wiggleReference,
          "A single short dropout of the reference: %1 went to %2 or further.",
          "Repeat the wiggle on the reference wire.");
    alone(c.groundWire, Step::wiggleGround, "A single short dropout on the ground wire: %1 went to %2 or further.",
          "Repeat the wiggle on the ground wire.");
    still(c.referenceStill, Step::reference, "The reference dropped once with nobody touching: %1 to %2 or further.",
          "Watch the reference for longer, with the other sensors on it unplugged one by one, key off each time.");
    still(c.groundStill, Step::ground, "The ground wire moved once with nobody touching: %1 to %2 or further.",
          "Watch the ground wire for longer, then along its way pin by pin.");
    if (c.secondMeter.drops > 0 && !c.secondMeter.decides)
        out.push_back(
            {{"A single short dropout of the reference: %1 went to %2 or further.",
              {volts(c.secondMeter.held_V), volts(c.secondMeter.extreme_V)}},
             {"Watch the reference for longer, with the other sensors on it unplugged one by one, key off each time.",
              {}}});
    lone(c.moving.cleanAfter < kReleases && !doneSince(c, Step::sweep, c.moving.newest), c.moving,
         "A single short dropout while the pedal was moved or held: %1 to %2 or further.",
         "Sweep slowly through the same place again.", Step::sweep);
    if (movesUntouched(c))
        out.push_back({{"A dropout with nobody touching anything: %1 to %2 or further. Its cause is not known.",
                        {volts(c.untouched.held_V), volts(c.untouched.extreme_V)}},
                       "Feet and hands off, and watch it at rest again.",
                       Step::coldStart});
}

} // namespace

std::vector<Missing> missingForKeep(const Case& c) {
    std::vector<Missing> out;
    if (!c.timeline->anyStep()) {
        if (c.unmarkedDropouts > 0)
            out.push_back({{"Dropouts of unknown cause: %1. The capture does not say what was being moved.",
                            {std::to_string(c.unmarkedDropouts)}},
                           "Record again with the steps marked, or add the marks."});
        else
            out.push_back({"The capture does not say what was done when.",
                           "Record again with the steps marked, or add the marks."});
    }
    loneDropouts(c, out);
    wires(c, out);
    positions(c, out);
    wiggle(c, out);
    return out;
}

} // namespace stillwire
