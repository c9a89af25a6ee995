// SPDX-License-Identifier: GPL-3.0-or-later
// The makers, and the habits of a bench that several of them share.
#pragma once

#include "tests/core/families/families.hpp"

namespace stillwire::families {

// Shared.
[[nodiscard]] Meter anyMeter(Dice& dice);
[[nodiscard]] double anyLevel_V(Dice& dice);
// Another level, at least `apart_V` away, in 0.6 to 4.4 V.
[[nodiscard]] double anotherLevel_V(Dice& dice, double from_V, double apart_V = 0.4);
[[nodiscard]] Wire startWire(Dice& dice); // a level, and a warm-up or none
// A signed depth that stays between the rails; down is negative.
[[nodiscard]] double anyDepth_V(Dice& dice, double level_V, bool down);
// Dropouts one after the other from `from_s` to `to_s`, each return at least `return_s` long.
void wiggle(Wire& wire, Span when, double level_V, double return_s, Dice& dice);
// A lone dropout somewhere inside.
void loneDropout(Wire& wire, Span when, double level_V, Dice& dice);
// The least a return has to last so that a whole reading shows it, with room.
[[nodiscard]] double clearReturn_s(const Meter& meter);
// The log falls silent for a while, somewhere inside; in a share of the cases.
void maybeGap(Made& made, Span when, double share, Dice& dice);
// Holds with wiggles, lone dropouts and gaps, and movements between them.
void holdsAndMoves(Made& made, Dice& dice, int least, int most, double stretch = 1);

[[nodiscard]] Made makePlain(Dice& dice);
[[nodiscard]] Made makeWholeSeconds(Dice& dice);
[[nodiscard]] Made makeTwoSeconds(Dice& dice);
[[nodiscard]] Made makeRunningMean(Dice& dice);
[[nodiscard]] Made makeFirstOrder(Dice& dice);
[[nodiscard]] Made makeChatter(Dice& dice);
[[nodiscard]] Made makeLongDropouts(Dice& dice);
[[nodiscard]] Made makeSweeps(Dice& dice);
[[nodiscard]] Made makeTremor(Dice& dice);
[[nodiscard]] Made makeAutorange(Dice& dice);
[[nodiscard]] Made makeMiddle(Dice& dice);
[[nodiscard]] Made makeQuietHour(Dice& dice);
[[nodiscard]] Made makeHeavyTails(Dice& dice);
[[nodiscard]] Made makeSteps(Dice& dice);
[[nodiscard]] Made makeTwoChanges(Dice& dice);
[[nodiscard]] Made makePresses(Dice& dice);
[[nodiscard]] Made makeBursts(Dice& dice);
[[nodiscard]] Made makeEdges(Dice& dice);
[[nodiscard]] Made makeFading(Dice& dice);
[[nodiscard]] Made makeRepeats(Dice& dice);
[[nodiscard]] Made makeBunched(Dice& dice);
[[nodiscard]] Made makeCreep(Dice& dice);
[[nodiscard]] Made makeRails(Dice& dice);
[[nodiscard]] Made makeFlags(Dice& dice);
[[nodiscard]] Made makeLouder(Dice& dice);
[[nodiscard]] Made makeHum(Dice& dice);
[[nodiscard]] Made makeSilentMoves(Dice& dice);
[[nodiscard]] Made makeNotes(Dice& dice);

} // namespace stillwire::families
