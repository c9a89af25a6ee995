// SPDX-License-Identifier: GPL-3.0-or-later
// Questions that the judgement table asks of a case.
#pragma once

#include "core/judge/judgement.hpp"

#include <optional>

namespace stillwire {

// Which side the dropouts speak for: only that one, or significantly more often per pose (exact test; a lone short
// dropout on the other side outweighs less).
[[nodiscard]] bool shaftDecides(const Case& facts);
[[nodiscard]] bool harnessDecides(const Case& facts);

// Dropouts with the shaft, and none with the connector held where their own rate would have shown.
[[nodiscard]] bool connectorTold(const Case& facts);
// Everything was looked at that could speak against the sensor.
[[nodiscard]] bool othersRuledOut(const Case& facts);

// A wire reads what no such wire reads, as long as the lead is where it belongs: at 0 V, at the reference, or below
// battery negative. And one that reads what the signal does.
[[nodiscard]] bool someWireReadsNothing(const Case& facts);
[[nodiscard]] bool leadOnSignal(const Case& facts);

// Seen, and not often enough to decide.
[[nodiscard]] bool seenOnce(const ShakenTally& tally);
// Are poses still wanted there, to have looked enough or after one that dropped out alone?
[[nodiscard]] bool stillWanted(const Case& facts, Step step, const std::string& section = {});
// One that dropped out alone in a section, and has not yet been answered by as many clean ones as its step asks for.
[[nodiscard]] bool loneInASection(const Case& facts);
[[nodiscard]] bool bySection(const Case& facts); // the capture names the sections of the harness

// Was this step done again since, to its end?
[[nodiscard]] bool doneSince(const Case& facts, Step step, Time since);
// Dropouts with nobody touching: one is none once as long a rest was without.
[[nodiscard]] bool movesUntouched(const Case& facts);

// Does the signal stay at a rail wherever the pedal is put?
[[nodiscard]] bool stuck(const Case& facts, bool high);

// Would the levels fit if the cold one were left out? Then it is the temperature, not the span.
[[nodiscard]] bool onlyColdIsOff(const Case& facts);
// No turn of the sensor brings every end into its window.
[[nodiscard]] bool spanOff(const Case& facts);
// A turn is wanted, would help, and is more than a person can see.
[[nodiscard]] bool adjustable(const Case& facts);

// Every position is low by the same share of its aim, and by so much as a load on the signal takes, while reference
// and ground hold: that share. A load of 3 kohm, a meter in low-impedance mode, takes about 17 % from a 5 kohm track
// near either end (Thevenin: x(1-x)·R against the load).
[[nodiscard]] std::optional<double> lowAlike(const Case& facts);

// The same for less than a load takes, down to a few hundredths: what a resistance in the reference feed leaves
// beyond the place where the reference was measured, and one in the signal wire under a pull-down.
[[nodiscard]] std::optional<double> lowShare(const Case& facts);
// The lowest position is up and the others follow as G·(1 - x), x their share of the reference, while the ground wire
// is good where it was measured, if it was: that G.
[[nodiscard]] std::optional<double> groundSide_V(const Case& facts);
// An end lies outside its window.
[[nodiscard]] bool misplaced(const Case& facts);

[[nodiscard]] const PositionLevel& worstPosition(const Case& facts);
// The stay furthest out of (or nearest to leaving) its window, hangs left out: what the conformance speaks of.
[[nodiscard]] double worstLevel_V(const PositionLevel& position);
// A level that stands still leaves no range: where the meter left it, the level may have leapt unseen.
[[nodiscard]] Sentence leftItsRange(int poses, Wiggled shaken);
// "released 4.21 V, good to 0.03 V: too close to the 4.20 V limit to call."
[[nodiscard]] Sentence tooCloseToCall(const PositionLevel& position);

} // namespace stillwire
