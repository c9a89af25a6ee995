// SPDX-License-Identifier: GPL-3.0-or-later
// The supply: reference, ground, and a signal that stays at a rail.
#include "core/judge/case_facts.hpp"
#include "core/judge/rows.hpp"
#include "core/judge/within.hpp"

#include <array>
#include <cmath>
#include <string_view>

namespace stillwire {

namespace {

// The step of the wire that reads what it cannot.
std::optional<Step> wireReadWrongly(const Case& c) {
    const auto outside = [](const std::optional<WireLevel>& wire) {
        return wire && wire->conformance == Conformance::outside;
    };
    if (outside(c.findings->reference)) return Step::reference;
    return outside(c.findings->ground) ? Step::ground : Step::coldStart;
}

const std::array kRows = {
    JudgementRow{
        "over-voltage", Decision::checkWiring, [](const Case& c) { return c.findings->overVoltage; },
        [](const Case& c) {
            return Sentence{"It went over %1: a wire touches a battery feed. Stop, key off.",
                            {volts(c.sheet->overVoltage_V())}};
        },
        [](const Case&) { return Sentence{"Key off. Look for a chafe to a battery feed before anything else."}; }},
    // A lead reads so as well, and is clipped again in a minute.
    JudgementRow{
        "lead first", Decision::cannotTell, someWireReadsNothing,
        [](const Case& c) {
            const auto &r = c.findings->reference, &g = c.findings->ground;
            const double half_V = c.sheet->nominal_V / 2;
            if (r && r->level_V < half_V && r->conformance == Conformance::outside)
                return Sentence{"The reference reads %1: a tip that does not touch reads so. The lead first.",
                                {volts(r->level_V)}};
            if (g && (g->level_V < 0 || g->level_V > half_V) && g->conformance == Conformance::outside)
                return Sentence{"The ground wire reads %1: a lead on the wrong wire reads so. The lead first.",
                                {volts(g->level_V)}};
            return stuck(c, false)
                       ? Sentence{"The signal stays near 0 V wherever the pedal is: a tip that does not "
                                  "touch reads so. The lead first."}
                       : Sentence{"The signal stays near the reference wherever the pedal is: a lead on the "
                                  "wrong wire reads so. The lead first."};
        },
        [](const Case&) { return Sentence{"Clip the lead to the same wire in another place and measure again."}; },
        nullptr, wireReadWrongly},
    JudgementRow{
        "lead on the signal", Decision::cannotTell, leadOnSignal,
        [](const Case& c) {
            const auto& r = c.findings->reference;
            return r && r->conformance == Conformance::outside
                       ? Sentence{"The reference reads %1, as the signal does: the lead is still on the "
                                  "signal.",
                                  {volts(r->worst_V)}}
                       : Sentence{"The ground wire reads %1, as the signal does: the lead is still on the "
                                  "signal.",
                                  {volts(c.findings->ground->worst_V)}};
        },
        [](const Case&) { return Sentence{"Move the red lead to the wire it is to read, and measure again."}; },
        nullptr, wireReadWrongly},
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
                     return Sentence{"Unplug the other sensors on this reference one by one, key off each time, and "
                                     "watch it come back; then measure it at the controller."};
                 }},
    JudgementRow{"reference drops untouched", Decision::checkSupply,
                 [](const Case& c) { return c.referenceStill.decides; },
                 [](const Case& c) {
                     return Sentence{"The reference dropped with nobody touching: %1 went to %2 or further.",
                                     {volts(c.referenceStill.held_V), volts(c.referenceStill.extreme_V)}};
                 },
                 [](const Case&) { return Sentence{"Measure the reference at the controller at the same time."}; }},
    JudgementRow{"reference drops along", Decision::checkSupply, [](const Case& c) { return c.secondMeter.decides; },
                 [](const Case& c) {
                     const ReferenceTally& r = c.secondMeter;
                     return r.withSignal > 0
                                ? Sentence{"The reference went from %1 to %2 or further, and the signal went "
                                           "with it in the same proportion, %3: it is what feeds the sensor.",
                                           {volts(r.held_V), volts(r.extreme_V), countedTimes(r.withSignal)}}
                                : Sentence{"The reference went from %1 to %2 or further, %3.",
                                           {volts(r.held_V), volts(r.extreme_V), countedTimes(r.drops)}};
                 },
                 [](const Case&) {
                     return Sentence{
                         "Measure the reference at the controller at the same time: if it drops there too, the "
                         "supply or another sensor on it; if it holds, the reference wire between."};
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
            return Sentence{"Measure the drop along the ground wire, pin by pin, from the sensor to the controller."};
        }},
    JudgementRow{"ground moves untouched", Decision::checkWiring, [](const Case& c) { return c.groundStill.decides; },
                 [](const Case& c) {
                     return Sentence{"The ground wire moved with nobody touching: %1 went to %2 or further.",
                                     {volts(c.groundStill.held_V, 3), volts(c.groundStill.extreme_V)}};
                 },
                 [](const Case&) {
                     return Sentence{"Key off, then look along the ground wire, pin by pin, for a loose crimp."};
                 }},
    JudgementRow{"reference wire under the wiggle", Decision::checkWiring,
                 [](const Case& c) { return c.referenceWire.decides; },
                 [](const Case& c) {
                     return Sentence{
                         "The reference wire drops out under the same wiggle: %1 went to %2 or further in %3 of %4.",
                         {volts(c.referenceWire.held_V), volts(c.referenceWire.extreme_V), faults(c.referenceWire),
                          poses(c.referenceWire)}};
                 },
                 [](const Case&) { return Sentence{"Key off, then look at the reference pin and its crimp."}; }},
    JudgementRow{
        "ground wire under the wiggle", Decision::checkWiring, [](const Case& c) { return c.groundWire.decides; },
        [](const Case& c) {
            return Sentence{"The ground wire moves under the same wiggle: %1 went to %2 or further in %3 of %4.",
                            {volts(c.groundWire.held_V, 3), volts(c.groundWire.extreme_V), faults(c.groundWire),
                             poses(c.groundWire)}};
        },
        [](const Case&) { return Sentence{"Key off, then look at the ground pin and its crimp."}; }},
    JudgementRow{"stuck low", Decision::checkWiring, [](const Case& c) { return stuck(c, false); },
                 [](const Case&) {
                     return Sentence{"The signal stays near 0 V wherever the pedal is: open reference, open signal, "
                                     "or a short to ground."};
                 },
                 [](const Case&) { return Sentence{"Key off, unplug, and isolate the three wires one by one."}; }},
    JudgementRow{"stuck high", Decision::checkWiring, [](const Case& c) { return stuck(c, true); },
                 [](const Case&) {
                     return Sentence{"The signal stays near the reference wherever the pedal is: open ground, a "
                                     "short to the reference, or an open signal wire."};
                 },
                 [](const Case&) { return Sentence{"Look at the ground first, key off, then the signal pin."}; }}};

} // namespace

std::span<const JudgementRow> rowsOfWires() { return kRows; }

} // namespace stillwire
