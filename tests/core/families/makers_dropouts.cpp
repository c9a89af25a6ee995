// SPDX-License-Identifier: GPL-3.0-or-later
// Benches on which the dropouts are the trouble: chatter, long ones, bursts amid calm, slow ones.
#include "tests/core/families/makers.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::families {
namespace {

constexpr double kQuietStart_s = 8; // time to know the level before the first trouble

double moveOn(Made& made, Dice& dice) {
    made.wire.move(anotherLevel_V(dice, made.wire.level_V()), dice.between(0.3, 2.5));
    return made.wire.level_V();
}

} // namespace

Made makeChatter(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    const int holds = dice.whole(3, 5);
    for (int h = 0; h <= holds; ++h) {
        const double level_V = wire.level_V();
        const Span hold = wire.hold(dice.between(40, 90));
        maybeGap(made, {hold.from_s + kQuietStart_s, hold.to_s - 6}, 0.2, dice);
        const bool down = dice.chance(0.7);
        // A rattling contact: many openings of one kind within a second or two, then peace for a while.
        for (double at_s = hold.from_s + kQuietStart_s; at_s < hold.to_s - 8; at_s += dice.between(4, 12)) {
            const double until_s = at_s + dice.between(0.8, 2);
            const double shortest_s = dice.logBetween(0.02, 0.1), depth_V = std::abs(anyDepth_V(dice, level_V, down));
            while (at_s < until_s) {
                const double lasts_s = shortest_s * dice.between(1, 2.5);
                const double deep_V = depth_V * dice.between(0.4, 1);
                wire.dropout(at_s, lasts_s, down ? -deep_V : deep_V);
                at_s += lasts_s + shortest_s * dice.between(0.5, 4);
            }
        }
        if (h < holds) moveOn(made, dice);
    }
    return made;
}

Made makeLongDropouts(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    const int holds = dice.whole(3, 6);
    for (int h = 0; h <= holds; ++h) {
        const double level_V = wire.level_V();
        const Span hold = wire.hold(dice.between(60, 150));
        maybeGap(made, {hold.from_s + kQuietStart_s, hold.to_s - 6}, 0.2, dice); // in the middle of one too
        double at_s = hold.from_s + dice.between(kQuietStart_s, 20);
        const int most = dice.whole(1, 3);
        for (int i = 0; i < most; ++i) {
            const double lasts_s = dice.logBetween(2, 60);
            if (at_s + lasts_s > hold.to_s - 8) break;
            if (dice.chance(0.65)) {
                const bool low = dice.chance(0.6);
                wire.pull(at_s, lasts_s, low ? dice.between(0, 0.03) : dice.between(4.97, 5.0),
                          dice.between(0, 0.003));
            } else {
                // Nothing that a lever could do: it wanders by more than half of what it is off.
                const bool down = level_V > 2.5;
                const double depth_V = dice.between(0.4, 1.8), rough_V = depth_V * dice.between(0.2, 0.4);
                wire.rough(at_s, lasts_s, down ? -depth_V : depth_V, rough_V);
            }
            at_s += lasts_s + dice.between(8, 30);
        }
        if (h < holds) moveOn(made, dice);
    }
    return made;
}

Made makeBursts(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    const double back_s = clearReturn_s(made.meter);
    const int holds = dice.whole(2, 4);
    for (int h = 0; h <= holds; ++h) {
        const double level_V = wire.level_V();
        const int bursts = dice.whole(1, 3);
        double at_s = wire.now_s() + dice.between(kQuietStart_s, 30);
        std::vector<std::pair<double, std::pair<double, double>>> planned; // begin, (length, depth)
        for (int b = 0; b < bursts; ++b) {
            const int count = dice.whole(4, 30);
            const double pause_s = dice.logBetween(0.5, 6);
            const bool down = dice.chance(0.7), mixed = dice.chance(0.3);
            for (int i = 0; i < count; ++i) {
                const double lasts_s = dice.between(0.02, 1);
                planned.push_back({at_s, {lasts_s, anyDepth_V(dice, level_V, mixed ? dice.chance(0.5) : down)}});
                at_s += lasts_s + back_s + dice.between(0, 2 * pause_s);
            }
            at_s += dice.between(26, 60); // more than 20 s, so each is a wiggle of its own
        }
        wire.hold(at_s - wire.now_s() - dice.between(0, 15));
        for (const auto& [from_s, what] : planned) wire.dropout(from_s, what.first, what.second);
        if (h < holds) moveOn(made, dice);
    }
    return made;
}

Made makeFading(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    const int holds = dice.whole(4, 7);
    for (int h = 0; h <= holds; ++h) {
        const double level_V = wire.level_V();
        const Span hold = wire.hold(dice.between(30, 70));
        double at_s = hold.from_s + kQuietStart_s;
        // The pin's capacitor and the meter's own resistance: an open wire sinks over a second, and is back at once.
        while (dice.chance(0.8)) {
            const double lasts_s = dice.between(0.1, 1.8), memory_s = dice.between(0.2, 1.2);
            const bool slowBack = dice.chance(0.3);
            const double all_s = lasts_s + (slowBack ? 7 * memory_s : 0);
            if (at_s + all_s > hold.to_s - 4) break;
            const double depth_V = anyDepth_V(dice, level_V, dice.chance(0.7));
            wire.fading(at_s, lasts_s, depth_V, memory_s, slowBack);
            at_s += all_s + clearReturn_s(made.meter) + dice.between(0.5, 6);
        }
        if (h < holds) moveOn(made, dice);
    }
    return made;
}

} // namespace stillwire::families
