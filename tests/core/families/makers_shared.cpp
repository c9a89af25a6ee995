// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/makers.hpp"
#include "tests/core/families/truth.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::families {

Meter anyMeter(Dice& dice) {
    Meter meter;
    meter.interval_s = dice.chance(0.7) ? dice.pick({0.1, 0.2, 0.25, 0.33, 0.5}) : dice.between(0.1, 0.5);
    meter.aperture_s = meter.interval_s * dice.between(0.4, 1.0);
    meter.resolution_V = dice.pick({0.001, 0.001, 0.01});
    meter.noise_counts = dice.between(0.4, 1.3);
    return meter;
}

double anyLevel_V(Dice& dice) { return dice.between(0.6, 4.4); }

double anotherLevel_V(Dice& dice, double from_V, double apart_V) {
    for (;;) {
        const double v = anyLevel_V(dice);
        if (std::abs(v - from_V) >= apart_V) return v;
    }
}

Wire startWire(Dice& dice) {
    Wire wire(anyLevel_V(dice));
    if (dice.chance(0.5)) wire.warmUp(dice.between(-0.08, 0.08), dice.between(60, 300));
    return wire;
}

double anyDepth_V(Dice& dice, double level_V, bool down) {
    const double depth_V = dice.logBetween(0.01, 2.5);
    return down ? -std::min(depth_V, level_V - 0.05) : std::min(depth_V, 4.95 - level_V);
}

void wiggle(Wire& wire, Span when, double level_V, double return_s, Dice& dice) {
    const bool mostlyDown = dice.chance(0.7);
    const bool mixed = dice.chance(0.2);
    double at_s = when.from_s;
    while (at_s < when.to_s - 1) {
        const double lasts_s = dice.between(0.02, 1.0);
        const bool down = mixed ? dice.chance(0.5) : mostlyDown;
        wire.dropout(at_s, lasts_s, anyDepth_V(dice, level_V, down));
        at_s += lasts_s + dice.between(return_s, return_s + 2.5);
    }
}

void loneDropout(Wire& wire, Span when, double level_V, Dice& dice) {
    const double lasts_s = dice.between(0.02, 1.0);
    if (when.length_s() < lasts_s) return;
    const double at_s = dice.between(when.from_s, when.to_s - lasts_s);
    wire.dropout(at_s, lasts_s, anyDepth_V(dice, level_V, dice.chance(0.7)));
}

double clearReturn_s(const Meter& meter) {
    // A lag forgets a deep one only after several of its own lengths.
    const double lag_s = meter.firstOrder > 0 ? 5 / meter.firstOrder * meter.interval_s : 0;
    return memory_s(meter) + lag_s + 2 * meter.interval_s;
}

void maybeGap(Made& made, Span when, double share, Dice& dice) {
    const double interval_s = made.meter.interval_s;
    if (!dice.chance(share) || when.length_s() < 2) return;
    made.wire.gap(dice.between(when.from_s, when.to_s - 2), dice.between(6 * interval_s, 3 + 6 * interval_s));
}

void holdsAndMoves(Made& made, Dice& dice, int least, int most, double stretch) {
    Wire& wire = made.wire;
    const double back_s = clearReturn_s(made.meter);
    const int holds = dice.whole(least, most);
    for (int i = 0; i <= holds; ++i) {
        const double level_V = wire.level_V();
        const Span hold = wire.hold(stretch * dice.between(20, 60));
        const Span inner{hold.from_s + stretch * dice.between(3, 6), hold.to_s - stretch * dice.between(2, 4)};
        const double what = dice.uniform();
        if (what < 0.5)
            wiggle(wire, {inner.from_s + dice.between(0.5, 2), inner.to_s}, level_V, back_s, dice);
        else if (what < 0.7)
            loneDropout(wire, inner, level_V, dice);
        maybeGap(made, inner, 0.25, dice);
        if (i < holds) wire.move(anotherLevel_V(dice, level_V), stretch * dice.between(0.3, 2.5));
    }
}

} // namespace stillwire::families
