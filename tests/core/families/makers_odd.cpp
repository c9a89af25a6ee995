// SPDX-License-Identifier: GPL-3.0-or-later
// What else a bench shows: captures that begin and end in the middle of things, levels that creep, levels close to a
// rail, notes in the margin.
#include "tests/core/families/makers.hpp"
#include "tests/core/families/truth.hpp"

#include <algorithm>

namespace stillwire::families {

Made makeEdges(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    const double stay_s = 1.3 * shortestStay_s(made.meter);
    // Somebody starts the log with a foot on the way, or moves at once, or the fault comes with the first seconds.
    if (dice.chance(0.4)) wire.move(anotherLevel_V(dice, wire.level_V()), dice.between(0.5, 2));
    const double first_V = wire.level_V();
    const Span first = wire.hold(dice.between(stay_s + 3, stay_s + 8));
    if (dice.chance(0.5)) loneDropout(wire, {first.from_s + stay_s, first.to_s - 1.5}, first_V, dice);
    for (int i = dice.whole(1, 3); i > 0; --i) {
        wire.move(anotherLevel_V(dice, wire.level_V()), dice.between(0.3, 2));
        const double level_V = wire.level_V();
        const Span hold = wire.hold(dice.between(stay_s + 4, stay_s + 12));
        if (dice.chance(0.5)) loneDropout(wire, {hold.from_s + stay_s, hold.to_s - 2}, level_V, dice);
    }
    if (dice.chance(0.5)) wire.move(anotherLevel_V(dice, wire.level_V()), dice.between(0.5, 2));
    return made;
}

Made makeCreep(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    for (int i = dice.whole(2, 4); i > 0; --i) {
        const double level_V = wire.level_V();
        const Span hold = wire.hold(dice.between(15, 40));
        if (dice.chance(0.5))
            wiggle(wire, {hold.from_s + 5, hold.to_s - 3}, level_V, clearReturn_s(made.meter), dice);
        // A slack spring or a sinking load: too slow for a movement, too far for a drift.
        const double by_V = dice.between(0.1, 0.5) * (level_V > 2.5 ? -1 : 1);
        wire.creep(level_V + by_V, dice.between(60, 300));
        wire.hold(dice.between(20, 40));
        wire.move(anotherLevel_V(dice, wire.level_V()), dice.between(0.3, 2));
    }
    wire.hold(15);
    return made;
}

Made makeRails(Dice& dice) {
    Meter meter = anyMeter(dice);
    const auto level = [&](bool low) { return low ? dice.between(0.15, 0.5) : dice.between(4.5, 4.85); };
    bool low = dice.chance(0.5);
    Made made{Wire(level(low)), meter, {}};
    Wire& wire = made.wire;
    const int holds = dice.whole(4, 8);
    for (int h = 0; h <= holds; ++h) {
        const double level_V = wire.level_V();
        const Span hold = wire.hold(dice.between(20, 50));
        if (dice.chance(0.6)) wiggle(wire, {hold.from_s + 5, hold.to_s - 3}, level_V, clearReturn_s(meter), dice);
        if (h == holds) break;
        low = dice.chance(0.8) ? !low : low;
        double to_V = level(low);
        while (to_V - level_V < 0.12 && level_V - to_V < 0.12) to_V = level(low);
        wire.move(to_V, dice.between(0.3, 2));
    }
    return made;
}

Made makeSilentMoves(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    const double silence_s = silenceLimit_s(made.meter);
    for (int i = dice.whole(5, 9); i > 0; --i) {
        const double level_V = wire.level_V();
        const Span hold = wire.hold(dice.between(15, 40));
        if (dice.chance(0.3)) loneDropout(wire, {hold.from_s + 6, hold.to_s - 5}, level_V, dice);
        const Span moved = wire.move(anotherLevel_V(dice, level_V), dice.between(0.3, 3));
        // The log loses the whole of it, its beginning, its end, or none.
        if (dice.chance(0.6)) wire.gap(moved.from_s + dice.between(-2, 2), silence_s + dice.between(0.3, 4));
    }
    wire.hold(15);
    return made;
}

Made makeNotes(Dice& dice) {
    Made made = makePlain(dice);
    const double end_s = made.wire.now_s();
    for (double t = dice.between(1, 20); t < end_s; t += dice.between(2, 40)) {
        const char* words = dice.pick({"note:cold, damp morning", "note:harness moved?", "lamp:on", "note:", "x"});
        made.notes.push_back({fromSeconds(t), words});
    }
    return made;
}

} // namespace stillwire::families
