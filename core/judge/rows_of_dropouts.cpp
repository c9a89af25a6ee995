// SPDX-License-Identifier: GPL-3.0-or-later
// Dropouts of the signal, by what was shaken or moved.
#include "core/judge/case_facts.hpp"
#include "core/judge/rows.hpp"
#include "core/judge/within.hpp"

#include <array>
#include <cmath>

namespace stillwire {

namespace {

constexpr std::string_view kConnector = "1"; // sections count from the sensor

// What the capture does not show, and would rule out before the money is spent.
Sentence ifTheLeadIsRuledOut(const Case& c) {
    return c.timeline->did(Step::leadCheck) ? Sentence{} : Sentence{"if the lead is ruled out"};
}
Sentence ifTheRestIsRuledOut(const Case& c) {
    if (c.held.poses > 0) return ifTheLeadIsRuledOut(c);
    return c.timeline->did(Step::leadCheck)
               ? Sentence{"if it drops out with the connector held"}
               : Sentence{"if it drops out with the connector held, and the lead is ruled out"};
}

Sentence lookAtTheConnector(const Case&) {
    return {"Key off, unplug the connector at the sensor: clean it, check pin grip and seal, and wiggle it again."};
}

const std::array kRows = {
    JudgementRow{"leads", Decision::cannotTell, [](const Case& c) { return c.leads.any; },
                 [](const Case& c) {
                     return Sentence{
                         "With nothing but the leads moved, the signal went from %1 to %2 or further, in %3 "
                         "of %4: the lead, or the pin it touches.",
                         {volts(c.leads.held_V), volts(c.leads.extreme_V), faults(c.leads), poses(c.leads)}};
                 },
                 [](const Case&) {
                     return Sentence{"Clip the lead again, best in another place of the same wire, repeat the lead "
                                     "check, then wiggle again: what was seen before does not count."};
                 },
                 nullptr, [](const Case&) { return std::optional(Step::leadCheck); }},
    JudgementRow{"harness", Decision::checkWiring, harnessDecides,
                 [](const Case& c) {
                     std::vector<Argument> figures{faults(c.harness), poses(c.harness), volts(c.harness.held_V),
                                                   volts(c.harness.extreme_V)};
                     if (!c.harness.dropped)
                         return Sentence{
                             "The level moved by itself in %1 of %2 of the harness: from %3 to %4, and stayed there.",
                             figures};
                     if (c.shaft.any || c.shaft.poses == 0)
                         return Sentence{
                             "The signal dropped out in %1 of %2 of the harness: %3 went to %4 or further.", figures};
                     figures.emplace_back(countedPoses(c.shaft.poses));
                     return Sentence{"The signal dropped out in %1 of %2 of the harness: %3 went to %4 or further; "
                                     "in %5 of the shaft it did not.",
                                     figures};
                 },
                 [](const Case& c) {
                     const PosePlace& area = c.harness.area;
                     if (area.section() == kConnector) return lookAtTheConnector(c);
                     return area.empty()
                                ? Sentence{"Wiggle the harness in short sections until one of them brings it back."}
                                : Sentence{
                                      "Key off, then open the harness at %1 and look for a chafe or a broken strand.",
                                      {placeAsSaid(area)}};
                 }},
    JudgementRow{"connector", Decision::checkWiring, connectorTold,
                 [](const Case& c) {
                     return Sentence{
                         "The signal dropped out in %1 of %2 of the shaft: %3 went to %4 or further; with "
                         "the connector held it did not, in %5: the connector at the sensor.",
                         {faults(c.shaft), poses(c.shaft), volts(c.shaft.held_V), volts(c.shaft.extreme_V),
                          countedPoses(c.held.poses)}};
                 },
                 lookAtTheConnector},
    JudgementRow{
        "shaft suspect", Decision::cannotTell,
        [](const Case& c) {
            const bool alone = c.shaft.decides && seenOnce(c.harness) && c.harness.offScale == 0 && loneInASection(c);
            return (shaftDecides(c) && !othersRuledOut(c)) || (alone && !shaftDecides(c));
        },
        [](const Case& c) {
            return Sentence{"The signal dropped out in %1 of %2 of the shaft, %3 to %4 or further: the shaft "
                            "is suspect, and its connector and the harness will tell.",
                            {faults(c.shaft), poses(c.shaft), volts(c.shaft.held_V), volts(c.shaft.extreme_V)}};
        },
        [](const Case& c) {
            return c.harnessEnough || (c.held.poses > 0 && !c.held.any && c.heldWanted > 0)
                       ? Sentence{"Hold the connector still and wiggle the shaft on, poses still wanted: %1.",
                                  {std::to_string(c.heldWanted)}}
                       : Sentence{};
        },
        nullptr,
        [](const Case& c) {
            const bool enough = c.harnessEnough && !loneInASection(c);
            return std::optional(enough ? Step::connectorHeld : Step::wiggleHarness);
        }},
    JudgementRow{"shaft", Decision::replace,
                 [](const Case& c) { return shaftDecides(c) && othersRuledOut(c) && !connectorTold(c); },
                 [](const Case& c) {
                     const std::vector<Argument> figures{faults(c.shaft), poses(c.shaft), volts(c.shaft.held_V),
                                                         volts(c.shaft.extreme_V)};
                     return c.shaft.dropped ? Sentence{"The signal dropped out in %1 of %2 of the shaft, and came "
                                                       "back: %3 went to %4 or further.",
                                                       figures}
                                            : Sentence{"The level moved by itself in %1 of %2 of the shaft: from %3 "
                                                       "to %4, and stayed there.",
                                                       figures};
                 },
                 [](const Case& c) {
                     const bool wires = c.timeline->did(Step::wiggleReference) && c.timeline->did(Step::wiggleGround);
                     const bool held = c.held.poses > 0;
                     if (held && wires) return Sentence{};
                     if (held) return Sentence{"Watch the reference and the ground wire under the same wiggle."};
                     return wires
                                ? Sentence{"Hold the connector still and repeat the wiggle."}
                                : Sentence{"Hold the connector still and repeat the wiggle; then watch the reference "
                                           "and the ground wire under the same wiggle."};
                 },
                 ifTheRestIsRuledOut},
    JudgementRow{"shaft and harness", Decision::checkWiring,
                 [](const Case& c) {
                     return (c.shaft.decides || c.harness.decides) && !shaftDecides(c) && !harnessDecides(c);
                 },
                 [](const Case& c) {
                     if (!c.harness.any)
                         return Sentence{
                             "Dropouts with the shaft (%1 of %2); with the harness the meter left its range (poses: "
                             "%3), where the level should have stood still: the connector first, the sensor second.",
                             {faults(c.shaft), poses(c.shaft), std::to_string(c.harness.offScale)}};
                     if (!c.shaft.any)
                         return Sentence{
                             "Dropouts with the harness (%1 of %2); with the shaft the meter left its range (poses: "
                             "%3), where the level should have stood still: the connector first, the sensor second.",
                             {faults(c.harness), poses(c.harness), std::to_string(c.shaft.offScale)}};
                     return Sentence{"Dropouts with the shaft (%1 of %2) and with the harness (%3 of %4): the "
                                     "connector first, the sensor second.",
                                     {faults(c.shaft), poses(c.shaft), faults(c.harness), poses(c.harness)}};
                 },
                 [](const Case&) { return Sentence{"Hold the connector still and wiggle the shaft again."}; }},
    // The other side, where one decides: less often, and there all the same.
    JudgementRow{"harness too", Decision::checkWiring, [](const Case& c) { return c.harness.any && shaftDecides(c); },
                 [](const Case& c) {
                     return Sentence{"With the harness it dropped out too, less often: in %1 of %2.",
                                     {faults(c.harness), poses(c.harness)}};
                 },
                 [](const Case&) {
                     return Sentence{"Wiggle the harness in short sections until one of them brings it back."};
                 }},
    JudgementRow{
        "shaft too", Decision::replace,
        [](const Case& c) { return c.shaft.any && !shaftDecides(c) && (c.harness.decides || c.shaft.decides); },
        [](const Case& c) {
            return Sentence{
                "With the shaft it dropped out in %1 of %2: the sensor itself, if the wiring proves sound.",
                {faults(c.shaft), poses(c.shaft)}};
        },
        [](const Case&) { return Sentence{"With the wiring mended, wiggle the shaft again."}; }},
    JudgementRow{
        "moving shaft", Decision::replace,
        [](const Case& c) { return c.moving.decides && !movesUntouched(c) && !c.harness.any && c.harnessEnough; },
        [](const Case& c) {
            const std::vector<Argument> figures{volts(c.moving.held_V), volts(c.moving.extreme_V)};
            return c.moving.dropped
                       ? Sentence{"Dropouts while the shaft turns: %1 went to %2 or further.", figures}
                       : Sentence{"The level moved by itself from %1 to %2 with the shaft held.", figures};
        },
        [](const Case&) {
            return Sentence{"Sweep again, the harness held still: a worn spot shows at the same place."};
        },
        ifTheLeadIsRuledOut}};

} // namespace

std::span<const JudgementRow> rowsOfDropouts() { return kRows; }

} // namespace stillwire
