// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/judgement.hpp"

#include "core/judge/adjustment.hpp"
#include "core/judge/visibility.hpp"
#include "core/stats/exact.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kSignificant = 0.05;
constexpr double kLeaning = 0.15; // against a side with but one short dropout
constexpr double kLeastTurn_V = 0.01;
constexpr double kStuckShare = 0.10;     // of the sheet's span: less movement than this is none
constexpr double kRailShare = 0.04;      // of the nominal: this near to a rail is on it
constexpr double kShortDropout_s = 0.05; // what a short one is, for the chance printed in not_tested

// Half a count is not "0.00 V".
std::string within(double u_V) { return volts(2 * u_V, 2 * u_V < 0.0095 ? 3 : 2); }

bool moreOften(const ShakenTally& a, const ShakenTally& b) {
    const double sure = b.decides ? kSignificant : kLeaning;
    return b.poses > 0 && greaterRateTest(a.faultPoses, std::max(1, a.poses), b.faultPoses, b.poses) < sure;
}

std::string poses(const ShakenTally& tally) { return std::to_string(std::max(tally.poses, tally.faultPoses)); }
std::string faults(const ShakenTally& tally) { return std::to_string(tally.faultPoses); }

// Does the signal stay at a rail wherever the pedal is put?
bool stuck(const Case& c, bool high) {
    int measured = 0;
    double low_V = 1e9, high_V = -1e9;
    for (const PositionLevel& position : c.findings->positions) {
        if (!position.raw_V) continue;
        ++measured;
        low_V = std::min(low_V, *position.raw_V);
        high_V = std::max(high_V, *position.raw_V);
    }
    double least = 1e9, most = -1e9;
    for (const Position& p : c.sheet->positions) {
        least = std::min(least, p.window.middle_V());
        most = std::max(most, p.window.middle_V());
    }
    if (measured < 2 || high_V - low_V > kStuckShare * (most - least)) return false;
    return high ? low_V >= (1 - kRailShare) * c.levels->supply.reference.level_V
                : high_V <= kRailShare * c.sheet->nominal_V;
}

bool allMeasured(const Case& c) {
    return std::all_of(c.findings->positions.begin(), c.findings->positions.end(),
                       [](const PositionLevel& p) { return p.level_V.has_value(); });
}

// Would the levels fit if the cold one were left out? Then it is the temperature, not the span.
bool onlyColdIsOff(const Case& c) {
    std::vector<ShiftDemand> demands;
    bool cold = false;
    for (const PositionLevel& p : c.findings->positions) {
        if (!p.level_V) continue;
        demands.push_back({*p.level_V, c.findings->adjustment.share.at(p.name), p.window_V});
        cold = cold || (p.coldLevel_V && std::abs(*p.coldLevel_V - *p.level_V) > c.sheet->play_V);
    }
    if (!cold || demands.empty()) return false;
    const double shift_V = c.sheet->driftAllowance_V ? bestShift_V(demands) : 0.0;
    return std::all_of(demands.begin(), demands.end(), [&](const ShiftDemand& d) { return d.margin(shift_V) > 0; });
}

bool spanOff(const Case& c) {
    const AdjustmentAdvice& a = c.findings->adjustment;
    if (!allMeasured(c) || !a.wanted || a.feasible || onlyColdIsOff(c)) return false;
    // Without an adjustable mount a level that is merely undecided is no linkage fault.
    return std::any_of(c.findings->positions.begin(), c.findings->positions.end(),
                       [](const PositionLevel& p) { return p.conformance == Conformance::outside; }) ||
           c.sheet->driftAllowance_V.has_value();
}

const PositionLevel& worstPosition(const Case& c) {
    const std::vector<PositionLevel>& all = c.findings->positions;
    return *std::min_element(all.begin(), all.end(), [](const PositionLevel& a, const PositionLevel& b) {
        return a.probabilityInside.value_or(2) < b.probabilityInside.value_or(2);
    });
}

// The stay furthest out of (or nearest to leaving) its window, hangs left out: what the conformance speaks of.
double worstLevel_V(const PositionLevel& p) {
    const auto margin = [&](double v) { return std::min(v - p.window_V.min_V, p.window_V.max_V - v); };
    double worst_V = *p.level_V;
    for (const Visit& visit : p.visits)
        if (!visit.hang && margin(visit.level_V) < margin(worst_V)) worst_V = visit.level_V;
    if (p.coldLevel_V && margin(*p.coldLevel_V) < margin(worst_V)) worst_V = *p.coldLevel_V;
    return worst_V;
}

bool shaftDecides(const Case& c) { return c.shaft.decides && (!c.harness.any || moreOften(c.shaft, c.harness)); }
bool harnessDecides(const Case& c) { return c.harness.decides && (!c.shaft.any || moreOften(c.harness, c.shaft)); }

// A turn of less than a hundredth of a volt is none: what is uncertain there wants a better reading.
bool adjustable(const Case& c) {
    const AdjustmentAdvice& a = c.findings->adjustment;
    return a.wanted && a.feasible && std::abs(a.shift_V.value_or(0)) >= kLeastTurn_V;
}

Sentence nothing(const Case&) { return {}; }

const std::array kTable = {
    JudgementRow{"over-voltage", Decision::checkWiring, [](const Case& c) { return c.findings->overVoltage; },
                 [](const Case&) {
                     return Sentence{"The signal went over 5.5 V: it touches a battery feed. Stop, key off.", {}};
                 },
                 [](const Case&) {
                     return Sentence{"Key off. Look for a chafe to a battery feed before anything else.", {}};
                 }},
    JudgementRow{"reference outside", Decision::checkSupply,
                 [](const Case& c) {
                     return c.findings->reference && c.findings->reference->conformance == Conformance::outside;
                 },
                 [](const Case& c) {
                     const WireLevel& r = *c.findings->reference;
                     return Sentence{"The reference is %1, good to %2; it should be %3 to %4.",
                                     {volts(r.level_V), within(r.u_V), volts(c.sheet->reference.min_V),
                                      volts(c.sheet->reference.max_V)}};
                 },
                 [](const Case&) {
                     return Sentence{
                         "Unplug the other sensors on this reference one by one, key off each time, and watch it "
                         "come back; then measure it at the controller.",
                         {}};
                 }},
    JudgementRow{"reference drops untouched", Decision::checkSupply,
                 [](const Case& c) { return c.referenceStill.decides; },
                 [](const Case& c) {
                     return Sentence{"The reference dropped with nobody touching: %1 went to %2 or further.",
                                     {volts(c.referenceStill.held_V), volts(c.referenceStill.extreme_V)}};
                 },
                 [](const Case&) {
                     return Sentence{"Measure the reference at the controller at the same time.", {}};
                 }},
    JudgementRow{
        "ground drop", Decision::checkWiring,
        [](const Case& c) { return c.findings->ground && c.findings->ground->conformance == Conformance::outside; },
        [](const Case& c) {
            const WireLevel& g = *c.findings->ground;
            return Sentence{"The ground wire is %1 above battery negative, good to %2; at most %3 is allowed.",
                            {volts(g.level_V, 3), within(g.u_V), volts(c.sheet->maxDrop_V, 2)}};
        },
        [](const Case&) {
            return Sentence{"Measure the drop along the ground wire, pin by pin, from the sensor to the controller.",
                            {}};
        }},
    JudgementRow{
        "reference wire under the wiggle", Decision::checkWiring,
        [](const Case& c) { return c.referenceWire.decides; },
        [](const Case& c) {
            return Sentence{
                "The reference wire drops out under the same wiggle: %1 went to %2 or further in %3 of %4 poses.",
                {volts(c.referenceWire.held_V), volts(c.referenceWire.extreme_V), faults(c.referenceWire),
                 poses(c.referenceWire)}};
        },
        [](const Case&) {
            return Sentence{"Key off, then look at the reference pin and its crimp.", {}};
        }},
    JudgementRow{"ground wire under the wiggle", Decision::checkWiring,
                 [](const Case& c) { return c.groundWire.decides; },
                 [](const Case& c) {
                     return Sentence{
                         "The ground wire moves under the same wiggle: %1 went to %2 or further in %3 of %4 poses.",
                         {volts(c.groundWire.held_V, 3), volts(c.groundWire.extreme_V), faults(c.groundWire),
                          poses(c.groundWire)}};
                 },
                 [](const Case&) {
                     return Sentence{"Key off, then look at the ground pin and its crimp.", {}};
                 }},
    JudgementRow{
        "stuck low", Decision::checkWiring, [](const Case& c) { return stuck(c, false); },
        [](const Case&) {
            return Sentence{
                "The signal stays near 0 V wherever the pedal is: open reference, open signal, or a short to "
                "ground.",
                {}};
        },
        [](const Case&) {
            return Sentence{"Key off, unplug, and isolate the three wires one by one.", {}};
        }},
    JudgementRow{"stuck high", Decision::checkWiring, [](const Case& c) { return stuck(c, true); },
                 [](const Case&) {
                     return Sentence{
                         "The signal stays near the reference wherever the pedal is: open ground, a short to the "
                         "reference, or an open signal wire.",
                         {}};
                 },
                 [](const Case&) {
                     return Sentence{"Look at the ground first, key off, then the signal pin.", {}};
                 }},
    JudgementRow{
        "harness", Decision::checkWiring, harnessDecides,
        [](const Case& c) {
            return Sentence{
                "%1 of %2 poses of the harness dropped out: %3 went to %4 or further. The shaft did not do it.",
                {faults(c.harness), poses(c.harness), volts(c.harness.held_V), volts(c.harness.extreme_V)}};
        },
        [](const Case& c) {
            return c.harness.places.size() == 1
                       ? Sentence{"Key off, then open the harness at %1 and look for a chafe or a broken strand.",
                                  {c.harness.places.front()}}
                       : Sentence{"Wiggle the harness in short sections until one of them brings it back.", {}};
        }},
    JudgementRow{
        "shaft", Decision::replace, shaftDecides,
        [](const Case& c) {
            return Sentence{"%1 of %2 poses of the shaft dropped out with the pedal still: %3 went to %4 or further.",
                            {faults(c.shaft), poses(c.shaft), volts(c.shaft.held_V), volts(c.shaft.extreme_V)}};
        },
        [](const Case&) {
            return Sentence{
                "Hold the connector still and repeat the wiggle; then watch the reference and the ground wire "
                "under the same wiggle.",
                {}};
        }},
    JudgementRow{
        "shaft and harness", Decision::checkWiring,
        [](const Case& c) {
            return c.shaft.any && c.harness.any && (c.shaft.decides || c.harness.decides) && !shaftDecides(c) &&
                   !harnessDecides(c);
        },
        [](const Case& c) {
            return Sentence{
                "Dropouts with the shaft (%1 of %2 poses) and with the harness (%3 of %4): the connector first, "
                "the sensor second.",
                {faults(c.shaft), poses(c.shaft), faults(c.harness), poses(c.harness)}};
        },
        [](const Case&) {
            return Sentence{"Hold the connector still and wiggle the shaft again.", {}};
        }},
    JudgementRow{"moving shaft", Decision::replace,
                 [](const Case& c) { return c.moving.decides && !c.untouched.any && !c.harness.any; },
                 [](const Case& c) {
                     return Sentence{
                         "Dropouts while the shaft turns, nothing else touched: %1 went to %2 or further.",
                         {volts(c.moving.held_V), volts(c.moving.extreme_V)}};
                 },
                 [](const Case&) {
                     return Sentence{"Sweep again, the harness held still: a worn spot shows at the same place.", {}};
                 }},
    JudgementRow{
        "hangs", Decision::replace,
        [](const Case& c) { return c.levels->hangs > 0 && c.places->armOnStop().value_or(true); },
        [](const Case& c) {
            return Sentence{
                "Released, it came back to %1 in %2 of %3 releases, and to %4 in the others: not repeatable.",
                {volts(c.levels->hangLevel_V), std::to_string(c.levels->hangs), std::to_string(c.levels->releases),
                 volts(c.levels->goodRest_V)}};
        },
        [](const Case& c) {
            return c.places->armOnStop()
                       ? Sentence{"The arm was on its stop: look at the sensor, then its mount.", {}}
                       : Sentence{"When it hangs again, see whether the arm is on its stop.", {}};
        }},
    JudgementRow{
        "hangs off its stop", Decision::checkLinkage,
        [](const Case& c) { return c.levels->hangs > 0 && !c.places->armOnStop().value_or(true); },
        [](const Case& c) {
            return Sentence{
                "Released, it hung at %1 in %2 of %3 releases with the arm off its stop: spring and linkage first.",
                {volts(c.levels->hangLevel_V), std::to_string(c.levels->hangs), std::to_string(c.levels->releases)}};
        },
        [](const Case&) {
            return Sentence{"Look at the return spring, the pivot and the linkage, then release again.", {}};
        }},
    JudgementRow{
        "scattered", Decision::checkLinkage, [](const Case& c) { return c.levels->scattered; },
        [](const Case& c) {
            return Sentence{
                "Released, it came back anywhere from %1 to %2, without spikes: spring, binding or slack first.",
                {volts(c.levels->scatterLow_V), volts(c.levels->scatterHigh_V)}};
        },
        [](const Case&) {
            return Sentence{"Look at the return spring, the pivot and the linkage, then release again.", {}};
        }},
    JudgementRow{"span", Decision::checkLinkage, spanOff,
                 [](const Case& c) {
                     const PositionLevel& p = worstPosition(c);
                     return c.sheet->driftAllowance_V ? Sentence{"%1 is %2 and no turn of the sensor brings every "
                                                                 "end into its window: linkage, stop, or "
                                                                 "a wrong part.",
                                                                 {p.name, volts(*p.level_V)}}
                                                      : Sentence{"%1 is %2, outside %3 to %4, and the mount has no "
                                                                 "adjustment: linkage, stop, or a wrong part.",
                                                                 {p.name, volts(*p.level_V), volts(p.window_V.min_V),
                                                                  volts(p.window_V.max_V)}};
                 },
                 [](const Case&) {
                     return Sentence{"Look at the stops, the lever and the part number.", {}};
                 }},
    JudgementRow{
        "wants adjustment", Decision::adjust, adjustable,
        [](const Case& c) {
            const PositionLevel& p = worstPosition(c);
            const double shift_V = *c.findings->adjustment.shift_V;
            if (p.conformance == Conformance::outside)
                return Sentence{
                    "Steady, but %1 is %2, outside %3 to %4: turn the sensor by %5.",
                    {p.name, volts(*p.level_V), volts(p.window_V.min_V), volts(p.window_V.max_V), volts(shift_V)}};
            return Sentence{
                "Steady, but %1 at %2 is too near a limit of %3 to %4: turn the sensor by %5.",
                {p.name, volts(*p.level_V), volts(p.window_V.min_V), volts(p.window_V.max_V), volts(shift_V)}};
        },
        [](const Case& c) {
            const auto& targets = c.findings->adjustment.targetRaw_V;
            const auto it = targets.find(c.sheet->rest().name);
            return it == targets.end()
                       ? Sentence{"Measure every end before turning the sensor.", {}}
                       : Sentence{"Loosen, turn until the meter shows %1 %2, tighten, and measure every end again.",
                                  {volts(it->second), it->first}};
        }},
    JudgementRow{
        "cold level", Decision::cannotTell,
        [](const Case& c) { return c.findings->adjustment.wanted && !adjustable(c) && onlyColdIsOff(c); },
        [](const Case& c) {
            const PositionLevel& p = worstPosition(c);
            return Sentence{"Cold, %1 was %2; later %3. The cold reading counts: a warm pass does not clear it.",
                            {p.name, volts(p.coldLevel_V.value_or(0)), volts(p.level_V.value_or(0))}};
        },
        [](const Case&) {
            return Sentence{
                "Trace it cold: measure on both sides of the connector pin in the first minutes of the day.", {}};
        }},
    JudgementRow{"not enough seen", Decision::cannotTell, [](const Case& c) { return !missingForKeep(c).empty(); },
                 [](const Case& c) { return missingForKeep(c).front().says; },
                 [](const Case& c) { return missingForKeep(c).front().next; }},
    JudgementRow{"keep", Decision::keep, [](const Case&) { return true; },
                 [](const Case& c) {
                     const StepCoverage& w = c.findings->wiggle;
                     return Sentence{
                         "Inside its windows at every end; of dropouts of %1 or longer, none in %2 poses.",
                         {seconds(w.shortestVisible_s.value_or(0)), std::to_string(w.poses)}};
                 },
                 nothing},
};

void addLevelReasons(const Case& c, Verdict& verdict) {
    for (const PositionLevel& p : c.findings->positions) {
        if (!p.level_V) continue;
        const bool coldIsWorse = p.coldLevel_V && worstLevel_V(p) == *p.coldLevel_V &&
                                 std::abs(*p.coldLevel_V - *p.level_V) > c.sheet->play_V;
        // The conformance is that of the worst stay, and is said of it.
        const double level_V =
            coldIsWorse ? *p.coldLevel_V : (p.conformance == Conformance::inside ? *p.level_V : worstLevel_V(p));
        const char* pattern = p.conformance == Conformance::inside ? "%1: %2, good to %3, inside %4 to %5."
                              : p.conformance == Conformance::outside
                                  ? "%1: %2, good to %3, outside %4 to %5."
                                  : "%1: %2, good to %3, too close to a limit of %4 to %5 to call.";
        verdict.reasons.push_back(
            {pattern, {p.name, volts(level_V), within(*p.u_V), volts(p.window_V.min_V), volts(p.window_V.max_V)}});
        if (coldIsWorse)
            verdict.reasons.push_back({"%1 was %2 cold and %3 later. The cold reading counts.",
                                       {p.name, volts(*p.coldLevel_V), volts(*p.level_V)}});
    }
    if (c.levels->supply.referenceMeasured)
        verdict.reasons.push_back({"The meter's gain error drops out: it measured the reference too.", {}});
    if (!c.meterKnown) verdict.reasons.push_back({"The meter is not described: 1 % + 5 counts is assumed.", {}});
}

void addNotTested(const Case& c, Verdict& verdict) {
    struct Optional {
        Step step;
        const char* says;
    };
    for (const Optional& o :
         {Optional{Step::sweep, "The sweep was not done."}, Optional{Step::lift, "The lift check was not done."},
          Optional{Step::warmRepeat, "Nothing was repeated warm."}})
        if (!c.places->did(o.step)) verdict.notTested.push_back({o.says, {}});
    for (const Step step : c.places->skippedSteps())
        if (step != Step::sweep && step != Step::lift && step != Step::warmRepeat)
            verdict.notTested.push_back({"Skipped: %1.", {std::string(stepName(step))}});
    int undone = 0;
    for (const Excursion& e : c.findings->excursions)
        if (e.kind == ExcursionKind::dropout && e.poseIndex >= 0 &&
            c.places->undone(c.places->poses()[static_cast<std::size_t>(e.poseIndex)].stepVisit))
            ++undone;
    if (undone > 0)
        verdict.notTested.push_back(
            {"%1 dropouts were seen in a step that was undone; they do not count.", {std::to_string(undone)}});
    const StepCoverage& w = c.findings->wiggle;
    if (w.shortestVisible_s && w.poses > 0) {
        const Sight sight{c.findings->meter.interval_s, c.findings->meter.aperture_s,
                          std::max(0.02, c.findings->meter.threshold_V)};
        // One that can hide: a twentieth of a second, or half of what cannot.
        const double short_s = std::min(kShortDropout_s, 0.5 * *w.shortestVisible_s);
        const double chance = chanceToShow(sight, c.sheet->referenceFault.depth_V, short_s);
        verdict.notTested.push_back({"Dropouts shorter than %1: one of %2 shows with a chance of %3 %%.",
                                     {seconds(*w.shortestVisible_s), seconds(short_s), plain(100 * chance, 0)}});
    }
}

} // namespace

std::span<const JudgementRow> judgementTable() { return kTable; }

Verdict judge(const Case& facts) {
    Verdict verdict;
    bool decided = false;
    for (const JudgementRow& row : kTable) {
        const bool verdictOnly = row.decision == Decision::keep || row.decision == Decision::cannotTell;
        if (decided && verdictOnly) continue; // what is missing is no cause
        if (!row.holds(facts)) continue;
        Cause cause{row.decision, row.says(facts), row.nextTest(facts)};
        if (!decided) {
            verdict.decision = row.decision;
            verdict.reasons.push_back(cause.says);
            decided = true;
        }
        verdict.causes.push_back(std::move(cause));
    }
    if (verdict.decision == Decision::checkWiring &&
        facts.shaft.decides) // the sensor is not cleared by its connector
        verdict.causes.push_back({Decision::replace, {"The sensor itself, if the wiring proves sound.", {}}, {}});
    addLevelReasons(facts, verdict);
    for (const Cause& cause : verdict.causes)
        if (!cause.nextTest.empty()) verdict.next.push_back(cause.nextTest);
    if (verdict.decision == Decision::cannotTell) {
        for (const Missing& missing : missingForKeep(facts)) {
            if (std::find(verdict.reasons.begin(), verdict.reasons.end(), missing.says) == verdict.reasons.end())
                verdict.reasons.push_back(missing.says);
            if (std::find(verdict.next.begin(), verdict.next.end(), missing.next) == verdict.next.end())
                verdict.next.push_back(missing.next);
        }
    }
    addNotTested(facts, verdict);
    return verdict;
}

} // namespace stillwire
