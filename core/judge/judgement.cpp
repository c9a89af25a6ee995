// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/judgement.hpp"

#include "core/judge/case_facts.hpp"
#include "core/judge/phrases.hpp"
#include "core/judge/visibility.hpp"
#include "core/judge/within.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace stillwire {

namespace {

constexpr double kShortDropout_s = 0.05; // what a short one is, for the chance printed in not_tested

constexpr std::array kLeftOut{
    std::pair{Step::leadCheck, "The lead check was not done."}, std::pair{Step::sweep, "The sweep was not done."},
    std::pair{Step::lift, "The lift check was not done."}, std::pair{Step::warmRepeat, "Nothing was repeated warm."}};
static_assert(std::all_of(kStepTable.begin(), kStepTable.end(), [](const StepTraits& t) {
    const bool told = std::any_of(kLeftOut.begin(), kLeftOut.end(), [&](const auto& o) { return o.first == t.step; });
    return told == (t.need == Need::reported);
}));

// The same need may be seen from two sides: it is said once.
template <class Kind> bool isSaid(const std::vector<Said<Kind>>& all, const Sentence& sentence) {
    return std::any_of(all.begin(), all.end(), [&](const Said<Kind>& one) { return one.says == sentence; });
}

void askAgain(std::optional<Step> step, Verdict& verdict) {
    std::vector<Step>& again = verdict.again;
    if (step && std::find(again.begin(), again.end(), *step) == again.end()) again.push_back(*step);
}

void addLevelReasons(const Case& c, Verdict& verdict) {
    for (const PositionLevel& p : c.findings->positions) {
        if (!p.level_V) continue;
        const bool coldIsWorse = p.coldLevel_V && worstLevel_V(p) == *p.coldLevel_V &&
                                 std::abs(*p.coldLevel_V - *p.level_V) > c.sheet->play_V;
        // The conformance is that of the worst stay, and is said of it.
        const double level_V =
            coldIsWorse ? *p.coldLevel_V : (p.conformance == Conformance::inside ? *p.level_V : worstLevel_V(p));
        if (p.conformance == Conformance::undecided)
            verdict.reasons.push_back({ReasonKind::undecidedLevel, tooCloseToCall(p)});
        else
            verdict.reasons.push_back(
                {ReasonKind::level,
                 {p.conformance == Conformance::inside ? "%1: %2, good to %3, inside %4 to %5."
                                                       : "%1: %2, good to %3, outside %4 to %5.",
                  {byName(p.name), levelTo(level_V, *p.u_V), within(*p.u_V), volts(p.window_V.min_V),
                   volts(p.window_V.max_V)}}});
        if (coldIsWorse)
            verdict.reasons.push_back({ReasonKind::coldLevel,
                                       {"%1 was %2 cold and %3 later. The cold reading counts.",
                                        {byName(p.name), volts(*p.coldLevel_V), volts(*p.level_V)}}});
    }
    if (c.levels->supply.referenceMeasured && c.levels->supply.referenceMeter == nullptr)
        verdict.reasons.push_back(
            {ReasonKind::gainCancels, "The meter's gain error cancels: it measured the reference too."});
    if (!c.meterKnown)
        verdict.reasons.push_back(
            {ReasonKind::meterAssumed, "The meter is not described: 1 % + 5 counts is assumed."});
}

// What was seen once, and not again in as many as would have shown it.
void addSeenOnce(const Case& c, Verdict& verdict) {
    const auto once = [&](const ShakenTally& tally, const char* says) {
        if (seenOnce(tally))
            verdict.reasons.push_back(
                {ReasonKind::seenOnce,
                 {says, {volts(tally.held_V), volts(tally.extreme_V), std::to_string(tally.cleanAfter)}}});
    };
    once(c.shaft, "Seen once with the shaft pushed, %1 to %2 or further, and not again in %3 more poses.");
    once(c.harness, "Seen once with the harness moved, %1 to %2 or further, and not again in %3 more poses.");
    once(c.moving, "Seen once on the move, %1 to %2 or further, and not again at %3 more stops.");
}

void addNotTested(const Case& c, Verdict& verdict) {
    for (const auto& [step, says] : kLeftOut)
        if (!c.timeline->did(step)) verdict.notTested.push_back({NotTestedKind::step, {says, {}}});
    for (const Step step : c.timeline->skippedSteps())
        if (traits(step).need != Need::reported)
            verdict.notTested.push_back(
                {NotTestedKind::skipped, {"Skipped: %1.", {byName(std::string(stepName(step)))}}});
    for (const StepCoverage& step : c.findings->steps) {
        if (step.blindPoses == 0 || !step.section.empty() || !traits(step.step).requiredWiggle()) continue;
        const Sentence dark = countedPoses(step.blindPoses);
        verdict.notTested.push_back(
            {NotTestedKind::blind, step.step == Step::wiggleShaft
                                       ? Sentence{"The meter was blind in %1 of the shaft.", {dark}}
                                       : Sentence{"The meter was blind in %1 of the harness.", {dark}}});
    }
    if (c.findings->holdTheArm)
        verdict.notTested.push_back({NotTestedKind::step,
                                     {"The arm leaned with the push, %1 to %2; it was not pushed with the arm held.",
                                      {volts(c.leans.from_V), volts(c.leans.to_V)}}});
    int undone = 0;
    for (const Excursion& e : c.findings->excursions)
        if (e.kind == ExcursionKind::dropout && e.poseIndex >= 0 &&
            c.timeline->undone(c.timeline->poses()[static_cast<std::size_t>(e.poseIndex)].stepVisit))
            ++undone;
    if (undone > 0)
        verdict.notTested.push_back(
            {NotTestedKind::undone,
             {"Dropouts in a step that was undone do not count: %1.", {std::to_string(undone)}}});
    if (c.probeAtSensor && (verdict.decision == Decision::keep || verdict.decision == Decision::cannotTell))
        verdict.notTested.push_back(
            {NotTestedKind::beyondTheSensor,
             "Measured at the sensor: a break between there and the controller would not show."});
    const StepCoverage& w = c.findings->wiggle;
    if (w.shortestVisible_s && w.poses > 0) {
        const MeterFigures& meter = c.findings->meter;
        const Sight sight{meter.interval_s, meter.aperture_s,
                          poseThreshold_V(std::max(0.02, meter.threshold_V), c.sheet->play_V, meter.resolution_V)};
        // One that can hide: a twentieth of a second, or half of what cannot.
        const double short_s = std::min(kShortDropout_s, 0.5 * *w.shortestVisible_s);
        const double chance = chanceToShow(sight, c.sheet->referenceFault.depth_V, short_s);
        verdict.notTested.push_back(
            {NotTestedKind::shortDropouts,
             {"Dropouts shorter than %1: one of %2 shows with a chance of %3 %%.",
              {secondsAtMost(*w.shortestVisible_s), seconds(short_s), plain(std::floor(100 * chance), 0)}}});
    }
}

// Could this step still put another row before the one that decides? What follows a dropout with the shaft can only
// where there was one.
bool couldOutrank(Step step, CauseKind decided, const Case& c) {
    switch (step) {
    case Step::reference:
    case Step::ground: return true;
    case Step::wiggleReference:
    case Step::wiggleGround:
    case Step::connectorHeld: return c.shaft.any && decided != CauseKind::wires;
    case Step::leadCheck:
    case Step::wiggleShaft:
    case Step::wiggleHarness: return decided != CauseKind::wires;
    case Step::coldStart:
    case Step::fullPress:
    case Step::sweep:
    case Step::release:
    case Step::lift:
    case Step::warmRepeat: return decided == CauseKind::levels || decided == CauseKind::allWell;
    case Step::hookUp:
    case Step::adjust:
    case Step::confirm:
    case Step::putBack: return false;
    }
    return false;
}

bool nothingLeft(const Verdict& verdict, const Case& c) {
    if (verdict.decision == Decision::cannotTell) return false;
    const CauseKind decided = verdict.causes.front().kind;
    const auto& skipped = c.timeline->skippedSteps();
    return std::all_of(kStepTable.begin(), kStepTable.end(), [&](const StepTraits& t) {
        const bool declined = std::find(skipped.begin(), skipped.end(), t.step) != skipped.end();
        return declined || c.timeline->did(t.step) || !couldOutrank(t.step, decided, c);
    });
}

} // namespace

Verdict judge(const Case& facts) {
    Verdict verdict;
    bool decided = false;
    for (const JudgementRow& row : judgementTable()) {
        const bool verdictOnly = row.decision == Decision::keep || row.decision == Decision::cannotTell;
        if (decided && verdictOnly) continue; // what is missing is no cause
        if (!row.holds(facts)) continue;
        Cause cause{row.kind, row.decision, row.says(facts), row.nextTest(facts)};
        if (!decided) {
            verdict.decision = row.decision;
            if (row.condition) verdict.condition = row.condition(facts);
            if (row.again) askAgain(row.again(facts), verdict);
            verdict.reasons.push_back({ReasonKind::cause, cause.says});
            decided = true;
        }
        verdict.causes.push_back(std::move(cause));
    }
    for (const Cause& cause : verdict.causes)
        if (!cause.nextTest.empty()) verdict.next.push_back({NextKind::splitsCauses, cause.nextTest});
    if (verdict.decision == Decision::cannotTell) {
        for (const Missing& missing : facts.missing) {
            if (!isSaid(verdict.reasons, missing.says))
                verdict.reasons.push_back({ReasonKind::missing, missing.says});
            if (!isSaid(verdict.next, missing.next)) verdict.next.push_back({NextKind::fillsIn, missing.next});
            askAgain(missing.again, verdict);
        }
    }
    if (verdict.decision != Decision::cannotTell) { // else it is missing
        if (facts.shaft.any && facts.shaft.offScale > 0)
            verdict.reasons.push_back({ReasonKind::offScale, leftItsRange(facts.shaft.offScale, Wiggled::shaft)});
        if (facts.harness.any && facts.harness.offScale > 0)
            verdict.reasons.push_back({ReasonKind::offScale, leftItsRange(facts.harness.offScale, Wiggled::harness)});
    }
    if (verdict.decision == Decision::keep) addSeenOnce(facts, verdict);
    addLevelReasons(facts, verdict);
    addNotTested(facts, verdict);
    verdict.settled = nothingLeft(verdict, facts);
    if (verdict.settled) verdict.next.push_back({NextKind::nothingLeft, {"No step left would change this.", {}}});
    return verdict;
}

} // namespace stillwire
