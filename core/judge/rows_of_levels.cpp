// SPDX-License-Identifier: GPL-3.0-or-later
// Levels that do not repeat, do not fit, or want the sensor turned.
#include "core/judge/case_facts.hpp"
#include "core/judge/rows.hpp"
#include "core/judge/within.hpp"

#include <array>
#include <cmath>
#include <string_view>

namespace stillwire {

namespace {

const std::array kRows = {
    // An arm that leans in the hand has no vote; one that leans though it is held hangs loose.
    JudgementRow{"leans though held", Decision::checkLinkage, [](const Case& c) { return c.leans.held >= 2; },
                 [](const Case& c) {
                     return Sentence{"With the push the arm leans, %1 to %2, and it does so with the arm held: the "
                                     "bushing or the mount is loose.",
                                     {volts(c.leans.from_V), volts(c.leans.to_V)}};
                 },
                 [](const Case&) {
                     return Sentence{"Key off, then feel for play at the pivot, its bushing and the sensor's mount."};
                 }},
    JudgementRow{
        "hangs", Decision::replace,
        [](const Case& c) { return c.levels->hangs > 0 && c.levels->hungOnStop.value_or(false); },
        [](const Case& c) {
            if (c.levels->hangs >= c.levels->releases)
                return Sentence{
                    "Released, it never came back: it stood at about %1 after %2, and at %3 before the first press.",
                    {volts(c.levels->hangLevel_V), countedReleases(c.levels->releases), volts(c.levels->goodRest_V)}};
            return Sentence{"Released, it came back to %1 in %2 of %3, and to %4 in the others: not repeatable.",
                            {volts(c.levels->hangLevel_V), std::to_string(c.levels->hangs),
                             countedReleases(c.levels->releases), volts(c.levels->goodRest_V)}};
        },
        [](const Case&) { return Sentence{"The arm was on its stop: look at the sensor, then its mount."}; },
        [](const Case&) { return Sentence{"if lever and mount are tight"}; }},
    JudgementRow{
        "hangs off its stop", Decision::checkLinkage,
        [](const Case& c) { return c.levels->hangs > 0 && !c.levels->hungOnStop.value_or(false); },
        [](const Case& c) {
            return Sentence{
                c.levels->hungOnStop
                    ? "Released, it hung at %1 in %2 of %3 with the arm off its stop: spring and linkage "
                      "first."
                    : "Released, it hung at %1 in %2 of %3, and nobody looked whether the arm was on its "
                      "stop: spring and linkage first.",
                {volts(c.levels->hangLevel_V), std::to_string(c.levels->hangs), countedReleases(c.levels->releases)}};
        },
        [](const Case& c) {
            return c.levels->hungOnStop
                       ? Sentence{"Look at the return spring, the pivot and the linkage, then release again."}
                       : Sentence{"When it hangs again, see whether the arm is on its stop."};
        }},
    JudgementRow{
        "other from the other side", Decision::checkLinkage,
        [](const Case& c) { return c.levels->lostMotion.has_value(); },
        [](const Case& c) {
            const LostMotion& lost = *c.levels->lostMotion;
            return Sentence{"%1 stands at %2 coming from %3, and at %4 coming from %5, again and again: backlash or "
                            "a worn bushing.",
                            {byName(lost.position), volts(lost.fromBefore_V), byName(lost.before),
                             volts(lost.fromAfter_V), byName(lost.after)}};
        },
        [](const Case&) {
            return Sentence{
                "Look for lost motion in the joints of the linkage and in the bushing, by hand, the shaft held."};
        }},
    JudgementRow{
        "scattered", Decision::checkLinkage, [](const Case& c) { return c.levels->scattered; },
        [](const Case& c) {
            return Sentence{
                "Released, it came back anywhere from %1 to %2, without spikes: spring, binding or slack first.",
                {volts(c.levels->scatterLow_V), volts(c.levels->scatterHigh_V)}};
        },
        [](const Case&) {
            return Sentence{"Look at the return spring, the pivot and the linkage, then release again."};
        }},
    JudgementRow{"low alike", Decision::cannotTell, [](const Case& c) { return lowAlike(c).has_value(); },
                 [](const Case& c) {
                     return Sentence{
                         "Every position is low by the same share, about %1 %%, while the reference holds: a meter "
                         "in low-impedance mode loads the signal so, and so does a resistance in the signal wire.",
                         {plain(100 * lowAlike(c).value_or(0), 0)}};
                 },
                 [](const Case&) {
                     return Sentence{"Turn the meter to plain DC volts, its low-impedance mode off, and measure "
                                     "every end again; if it stays low, measure on both sides of the signal pin."};
                 }},
    JudgementRow{"span", Decision::checkLinkage, spanOff,
                 [](const Case& c) {
                     const PositionLevel& p = worstPosition(c);
                     return c.sheet->driftAllowance_V
                                ? Sentence{"%1 is %2 and no turn of the sensor brings every end well into its "
                                           "window: linkage, stop, or a wrong part.",
                                           {byName(p.name), volts(*p.level_V)}}
                                : Sentence{"%1 is %2, outside %3 to %4, and the mount has no adjustment: linkage, "
                                           "stop, or a wrong part.",
                                           {byName(p.name), volts(*p.level_V), volts(p.window_V.min_V),
                                            volts(p.window_V.max_V)}};
                 },
                 [](const Case&) { return Sentence{"Look at the stops, the lever and the part number."}; }},
    JudgementRow{
        "wants adjustment", Decision::adjust, adjustable,
        [](const Case& c) {
            const PositionLevel& p = worstPosition(c);
            const double shift_V = c.findings->adjustment.after_V.at(p.name) - *p.level_V; // of this end
            const std::vector<Argument> figures{byName(p.name), volts(worstLevel_V(p)), volts(p.window_V.min_V),
                                                volts(p.window_V.max_V), volts(std::abs(shift_V))};
            const bool lower = shift_V < 0;
            if (p.conformance == Conformance::outside)
                return Sentence{
                    lower ? "Steady, but %1 is %2, outside %3 to %4: turn the sensor until it reads %5 lower."
                          : "Steady, but %1 is %2, outside %3 to %4: turn the sensor until it reads %5 higher.",
                    figures};
            return Sentence{
                lower
                    ? "Steady, but %1 at %2 is too near a limit of %3 to %4: turn the sensor until it reads %5 lower."
                    : "Steady, but %1 at %2 is too near a limit of %3 to %4: turn the sensor until it reads %5 "
                      "higher.",
                figures};
        },
        [](const Case& c) {
            const auto& targets = c.findings->adjustment.targetRaw_V;
            const auto it = targets.find(c.sheet->rest().name);
            return it == targets.end()
                       ? Sentence{"Measure every end before turning the sensor."}
                       : Sentence{"Loosen, turn until the meter shows %1 %2, tighten, and measure every end again.",
                                  {volts(it->second), byName(it->first)}};
        }},
    // Beside an end that lies outside: what else shifts the ends so, while the wires are good where they were
    // measured.
    JudgementRow{
        "ends as under a ground resistance", Decision::checkWiring,
        [](const Case& c) { return misplaced(c) && groundSide_V(c).has_value(); },
        [](const Case& c) {
            return Sentence{
                "The low end is up and the high end nearly as it should be, as about %1 on the ground side of the "
                "track would leave them: a resistance beyond the place where the ground was measured.",
                {volts(groundSide_V(c).value_or(0))}};
        },
        [](const Case&) {
            return Sentence{"Before turning anything, measure the ground at the sensor's own pin, then the drop "
                            "along the ground wire."};
        }},
    JudgementRow{"ends as under a feed resistance", Decision::checkWiring,
                 [](const Case& c) { return misplaced(c) && !lowAlike(c) && lowShare(c).has_value(); },
                 [](const Case& c) {
                     return Sentence{
                         "Every position is low by the same share, about %1 %%, as a resistance in the reference "
                         "feed or in the signal wire would leave them, beyond the places where they were measured.",
                         {plain(100 * lowShare(c).value_or(0), 0)}};
                 },
                 [](const Case&) {
                     return Sentence{"Before turning anything, measure the reference at the sensor's own pin, then "
                                     "the signal on both sides of its pin."};
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
                "Trace it cold: measure on both sides of the connector pin in the first minutes of the day."};
        }}};

} // namespace

std::span<const JudgementRow> rowsOfLevels() { return kRows; }

} // namespace stillwire
