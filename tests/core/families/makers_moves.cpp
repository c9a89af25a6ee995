// SPDX-License-Identifier: GPL-3.0-or-later
// Benches on which movement is the trouble: sweeps, tremor, a lever in the middle, steps, quick presses.
#include "tests/core/families/makers.hpp"
#include "tests/core/families/truth.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::families {
namespace {

// Dropouts in a sweep, far enough from its ends that the line is known there.
void dropoutsInSweep(Made& made, Span sweep, Dice& dice) {
    const double edge_s = std::max(2.0, 6 * made.meter.interval_s), back_s = clearReturn_s(made.meter) + 1;
    const bool down = dice.chance(0.7);
    double at_s = sweep.from_s + edge_s + dice.between(0, 5);
    while (at_s < sweep.to_s - edge_s - 1) {
        const double level_V = made.wire.level.at(at_s);
        const double lasts_s = dice.between(0.02, 1.0);
        made.wire.dropout(at_s, lasts_s, anyDepth_V(dice, level_V, down));
        at_s += lasts_s + back_s + dice.between(0, 5);
    }
}

// A change of level as a step, a quick or an unhurried one.
double anyHaste_s(Dice& dice) { return dice.chance(0.3) ? 0 : dice.logBetween(0.05, 3); }

double aStepAway_V(Dice& dice, double from_V) {
    for (;;) {
        const double v = from_V + (dice.chance(0.5) ? 1 : -1) * dice.logBetween(0.1, 3);
        if (v > 0.5 && v < 4.5) return v;
    }
}

} // namespace

Made makeSweeps(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    wire.hold(dice.between(10, 25));
    for (int sweep = dice.whole(2, 4); sweep > 0; --sweep) {
        const bool up = wire.level_V() < 2.5;
        const double far_V = up ? dice.between(3.6, 4.5) : dice.between(0.5, 1.4);
        const double speed = dice.logBetween(0.05, 0.5);
        const bool pauses = dice.chance(0.6), sick = dice.chance(0.5);
        while (std::abs(wire.level_V() - far_V) > 0.02) {
            double to_V = far_V;
            if (pauses) {
                const double leg_V = dice.between(0.4, 1.5);
                to_V = up ? std::min(far_V, wire.level_V() + leg_V) : std::max(far_V, wire.level_V() - leg_V);
                if (std::abs(to_V - far_V) < 0.4) to_V = far_V;
            }
            const Span leg = wire.move(to_V, std::abs(to_V - wire.level_V()) / speed, true);
            if (sick) dropoutsInSweep(made, leg, dice);
            if (to_V != far_V) wire.hold(dice.between(1, 8));
        }
        wire.hold(dice.between(8, 25));
    }
    return made;
}

Made makeTremor(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    const int holds = dice.whole(4, 7);
    for (int h = 0; h <= holds; ++h) {
        const bool foot = dice.chance(0.75);
        const Tremor tremor{dice.logBetween(0.005, 0.04), dice.between(0.3, 1)};
        const double level_V = wire.level_V(), lasts_s = dice.between(20, 60);
        const Span hold = foot ? wire.hold(lasts_s, tremor, dice) : wire.hold(lasts_s);
        maybeGap(made, {hold.from_s + 6, hold.to_s - 6}, 0.15, dice);
        if (dice.chance(0.3))
            wiggle(wire, {hold.from_s + 10, hold.to_s - 3}, level_V, clearReturn_s(made.meter) + 0.5, dice);
        if (h < holds) wire.move(anotherLevel_V(dice, level_V, 0.6), dice.between(0.3, 2.5));
    }
    return made;
}

Made makeMiddle(Dice& dice) {
    Meter meter = anyMeter(dice);
    const double middle_V = dice.between(2.2, 2.8);
    Made made{Wire(middle_V), meter, {}};
    Wire& wire = made.wire;
    if (dice.chance(0.5)) wire.warmUp(dice.between(-0.05, 0.05), dice.between(60, 300));
    const double least_s = 1.3 * shortestStay_s(meter);
    const int trips = dice.whole(4, 8);
    for (int i = 0; i <= trips; ++i) {
        const double rest_V = wire.level_V();
        const Span rest = wire.hold(dice.between(10, 40));
        if (dice.chance(0.5)) wiggle(wire, {rest.from_s + 4, rest.to_s - 3}, rest_V, clearReturn_s(meter), dice);
        if (i == trips) break;
        double side = dice.chance(0.5) ? 1 : -1;
        wire.move(middle_V + side * dice.between(0.8, 1.9), dice.between(0.2, 2));
        wire.hold(dice.between(std::max(3.0, least_s), 15));
        if (dice.chance(0.3)) { // straight through to the other side
            side = -side;
            wire.move(middle_V + side * dice.between(0.8, 1.9), dice.between(0.4, 2.5));
            wire.hold(dice.between(std::max(3.0, least_s), 15));
        }
        // A spring brings it back nearly where it was.
        wire.move(middle_V + dice.between(-0.02, 0.02), dice.between(0.1, 1));
    }
    return made;
}

Made makeSteps(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    for (int step = dice.whole(8, 16); step >= 0; --step) {
        const double level_V = wire.level_V();
        const Span hold = wire.hold(dice.between(std::max(5.0, 2 * shortestStay_s(made.meter)), 25));
        if (hold.length_s() > 12 && dice.chance(0.3))
            loneDropout(wire, {hold.from_s + 5, hold.to_s - 4}, level_V, dice);
        // Smaller than what can be told from noise by anybody is no step.
        double to_V = aStepAway_V(dice, level_V);
        const double least_V = 10 * made.meter.noise_counts * made.meter.resolution_V;
        while (std::abs(to_V - level_V) < least_V) to_V = aStepAway_V(dice, level_V);
        wire.move(to_V, anyHaste_s(dice));
    }
    wire.hold(15);
    return made;
}

Made makeTwoChanges(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    for (int pair = dice.whole(5, 9); pair >= 0; --pair) {
        const double level_V = wire.level_V();
        wire.hold(dice.between(10, 30));
        const double apart_s = dice.between(1.5, 3);
        const double first_s = std::min(anyHaste_s(dice), 0.5 * apart_s);
        const double middle_V = anotherLevel_V(dice, level_V, 0.3);
        wire.move(middle_V, first_s);
        wire.hold(apart_s - first_s);
        // On, or part of the way back; all the way back would be a press.
        double end_V = anotherLevel_V(dice, middle_V, 0.3);
        while (std::abs(end_V - level_V) < 0.4) end_V = anotherLevel_V(dice, middle_V, 0.3);
        wire.move(end_V, std::min(anyHaste_s(dice), 1.0));
    }
    wire.hold(15);
    return made;
}

Made makePresses(Dice& dice) {
    Made made{startWire(dice), anyMeter(dice), {}};
    Wire& wire = made.wire;
    const double limit_s = shortestStay_s(made.meter), rest_V = wire.level_V();
    for (int press = dice.whole(6, 12); press >= 0; --press) {
        const Span hold = wire.hold(dice.between(8, 25));
        const double pressed_V = anotherLevel_V(dice, rest_V, 0.4),
                     edge_s = dice.chance(0.3) ? 0 : dice.between(0.02, 0.15);
        if (dice.chance(0.5)) {
            const double flat_s = dice.between(1.2 * limit_s, 4); // long enough to be meant
            wire.move(pressed_V, edge_s);
            wire.hold(flat_s);
            wire.move(rest_V, edge_s);
        } else {
            const double lasts_s = dice.between(1.0, 0.8 * limit_s);
            wire.dropout(hold.to_s, lasts_s, pressed_V - rest_V, edge_s);
            wire.hold(lasts_s); // one hold with the next, but for the truth's sake said in two
        }
    }
    wire.hold(12);
    return made;
}

} // namespace stillwire::families
