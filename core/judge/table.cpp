// SPDX-License-Identifier: GPL-3.0-or-later
// The rows, in the order of rank: what must hold, what it means, how it is said, and the test that would split it
// from the others.
#include "core/judge/case_facts.hpp"
#include "core/judge/within.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace stillwire {

namespace {

std::string poses(const ShakenTally& tally) { return std::to_string(std::max(tally.poses, tally.faultPoses)); }
std::string faults(const ShakenTally& tally) { return std::to_string(tally.faultPoses); }

// "section-2" as it is said.
Argument spoken(const std::string& place) {
    constexpr std::string_view kSection = "section-";
    if (!place.starts_with(kSection)) return byName(place);
    return Sentence{"section %1", {place.substr(kSection.size())}};
}

constexpr const char* kConnector = "section-1"; // sections count from the sensor

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
                                     {levelTo(r.worst_V, r.u_V), within(r.u_V), volts(c.sheet->reference.min_V),
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
        "reference drops along", Decision::checkSupply, [](const Case& c) { return c.secondMeter.decides; },
        [](const Case& c) {
            const ReferenceTally& r = c.secondMeter;
            return r.withSignal > 0
                       ? Sentence{"The reference went from %1 to %2 or further, and the signal went with it "
                                  "in the same proportion, %3 times: it is what feeds the sensor.",
                                  {volts(r.held_V), volts(r.extreme_V), std::to_string(r.withSignal)}}
                       : Sentence{"The reference went from %1 to %2 or further, %3 times.",
                                  {volts(r.held_V), volts(r.extreme_V), std::to_string(r.drops)}};
        },
        [](const Case&) {
            return Sentence{
                "Measure the reference at the controller at the same time: if it drops there too, the supply "
                "or another sensor on it; if it holds, the reference wire between.",
                {}};
        }},
    JudgementRow{
        "ground drop", Decision::checkWiring,
        [](const Case& c) { return c.findings->ground && c.findings->ground->conformance == Conformance::outside; },
        [](const Case& c) {
            const WireLevel& g = *c.findings->ground;
            return Sentence{"The ground wire is %1 above battery negative, good to %2; at most %3 is allowed.",
                            {volts(g.worst_V, 3), within(g.u_V), volts(c.sheet->maxDrop_V, 2)}};
        },
        [](const Case&) {
            return Sentence{"Measure the drop along the ground wire, pin by pin, from the sensor to the controller.",
                            {}};
        }},
    JudgementRow{"ground moves untouched", Decision::checkWiring, [](const Case& c) { return c.groundStill.decides; },
                 [](const Case& c) {
                     return Sentence{"The ground wire moved with nobody touching: %1 went to %2 or further.",
                                     {volts(c.groundStill.held_V, 3), volts(c.groundStill.extreme_V)}};
                 },
                 [](const Case&) {
                     return Sentence{"Key off, then look along the ground wire, pin by pin, for a loose crimp.", {}};
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
            const std::vector<Argument> figures{faults(c.harness), poses(c.harness), volts(c.harness.held_V),
                                                volts(c.harness.extreme_V)};
            return c.shaft.any ? Sentence{"The signal dropped out in %1 of %2 poses of the harness: %3 went to %4 or "
                                          "further.",
                                          figures}
                               : Sentence{"The signal dropped out in %1 of %2 poses of the harness: %3 went to %4 or "
                                          "further. The shaft "
                                          "did not do it.",
                                          figures};
        },
        [](const Case& c) {
            const std::string& section = c.harness.section;
            if (section == kConnector)
                return Sentence{"Key off, unplug the connector at the sensor: clean it, check pin grip and seal, and "
                                "wiggle it again.",
                                {}};
            return section.empty()
                       ? Sentence{"Wiggle the harness in short sections until one of them brings it back.", {}}
                       : Sentence{"Key off, then open the harness at %1 and look for a chafe or a broken strand.",
                                  {spoken(section)}};
        }},
    JudgementRow{
        "shaft", Decision::replace, shaftDecides,
        [](const Case& c) {
            return Sentence{
                "The signal dropped out in %1 of %2 poses of the shaft, the pedal still: %3 went to %4 or further.",
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
            return (c.shaft.decides || c.harness.decides) && !shaftDecides(c) && !harnessDecides(c);
        },
        [](const Case& c) {
            if (!c.harness.any)
                return Sentence{"Dropouts with the shaft (%1 of %2 poses); with the harness the meter left its range "
                                "(poses: %3), where the level should have stood still: the connector first, the "
                                "sensor second.",
                                {faults(c.shaft), poses(c.shaft), std::to_string(c.harness.offScale)}};
            if (!c.shaft.any)
                return Sentence{"Dropouts with the harness (%1 of %2 poses); with the shaft the meter left its range "
                                "(poses: %3), where the level should have stood still: the connector first, the "
                                "sensor second.",
                                {faults(c.harness), poses(c.harness), std::to_string(c.shaft.offScale)}};
            return Sentence{
                "Dropouts with the shaft (%1 of %2 poses) and with the harness (%3 of %4): the connector first, "
                "the sensor second.",
                {faults(c.shaft), poses(c.shaft), faults(c.harness), poses(c.harness)}};
        },
        [](const Case&) {
            return Sentence{"Hold the connector still and wiggle the shaft again.", {}};
        }},
    // The other side, where one decides: less often, and there all the same.
    JudgementRow{"harness too", Decision::checkWiring, [](const Case& c) { return c.harness.any && shaftDecides(c); },
                 [](const Case& c) {
                     return Sentence{"The harness too dropped out, less often: in %1 of %2 poses.",
                                     {faults(c.harness), poses(c.harness)}};
                 },
                 [](const Case&) {
                     return Sentence{"Wiggle the harness in short sections until one of them brings it back.", {}};
                 }},
    JudgementRow{
        "shaft too", Decision::replace,
        [](const Case& c) { return c.shaft.any && !shaftDecides(c) && (c.harness.decides || c.shaft.decides); },
        [](const Case& c) {
            return Sentence{"The shaft dropped out in %1 of %2 poses: the sensor itself, if the wiring proves "
                            "sound.",
                            {faults(c.shaft), poses(c.shaft)}};
        },
        [](const Case&) {
            return Sentence{"With the wiring mended, wiggle the shaft again.", {}};
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
        [](const Case& c) { return c.levels->hangs > 0 && c.levels->hungOnStop.value_or(true); },
        [](const Case& c) {
            if (c.levels->hangs >= c.levels->releases)
                return Sentence{
                    "Released, it came back to about %1 each of %2 times; before the first press it stood "
                    "at %3.",
                    {volts(c.levels->hangLevel_V), std::to_string(c.levels->releases), volts(c.levels->goodRest_V)}};
            return Sentence{
                "Released, it came back to %1 in %2 of %3 releases, and to %4 in the others: not repeatable.",
                {volts(c.levels->hangLevel_V), std::to_string(c.levels->hangs), std::to_string(c.levels->releases),
                 volts(c.levels->goodRest_V)}};
        },
        [](const Case& c) {
            return c.levels->hungOnStop ? Sentence{"The arm was on its stop: look at the sensor, then its mount.", {}}
                                        : Sentence{"When it hangs again, see whether the arm is on its stop.", {}};
        }},
    JudgementRow{
        "hangs off its stop", Decision::checkLinkage,
        [](const Case& c) { return c.levels->hangs > 0 && !c.levels->hungOnStop.value_or(true); },
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
    JudgementRow{
        "low alike", Decision::cannotTell, [](const Case& c) { return lowAlike(c).has_value(); },
        [](const Case& c) {
            return Sentence{"Every position is low by the same share, about %1 %%, while the reference holds: "
                            "a meter in low-impedance mode loads the signal so, and so does a resistance in "
                            "the signal wire.",
                            {plain(100 * lowAlike(c).value_or(0), 0)}};
        },
        [](const Case&) {
            return Sentence{"Turn the meter to plain DC volts, its low-impedance mode off, and measure every end "
                            "again; if it stays low, measure on both sides of the signal pin.",
                            {}};
        }},
    JudgementRow{"span", Decision::checkLinkage, spanOff,
                 [](const Case& c) {
                     const PositionLevel& p = worstPosition(c);
                     return c.sheet->driftAllowance_V ? Sentence{"%1 is %2 and no turn of the sensor brings every "
                                                                 "end well into its window: linkage, stop, or "
                                                                 "a wrong part.",
                                                                 {byName(p.name), volts(*p.level_V)}}
                                                      : Sentence{"%1 is %2, outside %3 to %4, and the mount has no "
                                                                 "adjustment: linkage, stop, or a wrong part.",
                                                                 {byName(p.name), volts(*p.level_V),
                                                                  volts(p.window_V.min_V), volts(p.window_V.max_V)}};
                 },
                 [](const Case&) {
                     return Sentence{"Look at the stops, the lever and the part number.", {}};
                 }},
    JudgementRow{
        "wants adjustment", Decision::adjust, adjustable,
        [](const Case& c) {
            const PositionLevel& p = worstPosition(c);
            const double shift_V = c.findings->adjustment.after_V.at(p.name) - *p.level_V; // of this end
            const std::vector<Argument> figures{byName(p.name), volts(worstLevel_V(p)), volts(p.window_V.min_V),
                                                volts(p.window_V.max_V), volts(std::abs(shift_V))};
            const bool lower = shift_V < 0;
            if (p.conformance == Conformance::outside)
                return Sentence{lower ? "Steady, but %1 is %2, outside %3 to %4: turn the sensor until it reads %5 "
                                        "lower."
                                      : "Steady, but %1 is %2, outside %3 to %4: turn the sensor until it reads %5 "
                                        "higher.",
                                figures};
            return Sentence{lower ? "Steady, but %1 at %2 is too near a limit of %3 to %4: turn the sensor until it "
                                    "reads %5 lower."
                                  : "Steady, but %1 at %2 is too near a limit of %3 to %4: turn the sensor until it "
                                    "reads %5 higher.",
                            figures};
        },
        [](const Case& c) {
            const auto& targets = c.findings->adjustment.targetRaw_V;
            const auto it = targets.find(c.sheet->rest().name);
            return it == targets.end()
                       ? Sentence{"Measure every end before turning the sensor.", {}}
                       : Sentence{"Loosen, turn until the meter shows %1 %2, tighten, and measure every end again.",
                                  {volts(it->second), byName(it->first)}};
        }},
    JudgementRow{
        "cold level", Decision::cannotTell,
        [](const Case& c) { return c.findings->adjustment.wanted && !adjustable(c) && onlyColdIsOff(c); },
        [](const Case& c) {
            const PositionLevel& p = worstPosition(c);
            return Sentence{"Cold, %1 was %2; later %3. The cold reading counts: a warm pass does not clear it.",
                            {byName(p.name), volts(p.coldLevel_V.value_or(0)), volts(p.level_V.value_or(0))}};
        },
        [](const Case&) {
            return Sentence{
                "Trace it cold: measure on both sides of the connector pin in the first minutes of the day.", {}};
        }},
    JudgementRow{"not enough seen", Decision::cannotTell, [](const Case& c) { return !c.missing.empty(); },
                 [](const Case& c) { return c.missing.front().says; },
                 [](const Case& c) { return c.missing.front().next; }},
    JudgementRow{"keep", Decision::keep, [](const Case&) { return true; },
                 [](const Case& c) {
                     const StepCoverage& w = c.findings->wiggle;
                     return Sentence{
                         "Inside its windows at every end; of dropouts of %1 or longer, none in %2 poses.",
                         {secondsAtMost(w.shortestVisible_s.value_or(0)), std::to_string(w.poses)}};
                 },
                 nothing},
};

} // namespace

std::span<const JudgementRow> judgementTable() { return kTable; }

} // namespace stillwire
