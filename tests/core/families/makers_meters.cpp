// SPDX-License-Identifier: GPL-3.0-or-later
// Benches on which the meter is the trouble: ranges, repeats, bunches, flags, ripple, more noise than before; and
// hours in which nothing happens at all.
#include "tests/core/families/makers.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::families {
namespace {

Made begin(Dice& dice) {
    const Meter meter = anyMeter(dice);
    return {startWire(dice), meter, {}};
}

Made quiet(Dice& dice, double mostNoise) {
    Made made = begin(dice);
    made.meter.resolution_V = dice.pick({0.0001, 0.001, 0.01});
    made.meter.noise_counts = mostNoise;
    // Half of them on the edge between two counts, where a number flips for hours.
    double level_V = anyLevel_V(dice);
    if (dice.chance(0.5)) level_V = (std::floor(level_V / made.meter.resolution_V) + 0.5) * made.meter.resolution_V;
    made.wire = Wire(level_V);
    if (dice.chance(0.5)) made.wire.warmUp(dice.between(-0.08, 0.08), dice.between(60, 300));
    made.wire.hold(3600);
    return made;
}

} // namespace

Made makeQuietHour(Dice& dice) { return quiet(dice, dice.pick({0.0, 0.1, 0.2, 0.3, 0.5, 0.8, 1.0, 1.3, 1.5})); }

Made makeHeavyTails(Dice& dice) {
    Made made = quiet(dice, dice.between(0.4, 1.5));
    made.meter.heavyTails = true;
    return made;
}

Made makeAutorange(Dice& dice) {
    Made made = begin(dice);
    Meter& meter = made.meter;
    meter.resolution_V = dice.pick({0.001, 0.01});
    meter.rangesMeet_V = dice.chance(0.6) ? 4.0 : 0.4;
    meter.lostMost = dice.whole(1, 3);
    meter.lostAreRows = dice.chance(0.5);
    Wire& wire = made.wire;
    const int holds = dice.whole(5, 9);
    const double back_s = clearReturn_s(meter) + (2 * meter.lostMost + 1) * meter.interval_s;
    for (int h = 0; h <= holds; ++h) {
        const double level_V = wire.level_V();
        const Span hold = wire.hold(dice.between(20, 60));
        if (dice.chance(0.5)) wiggle(wire, {hold.from_s + 6, hold.to_s - 4}, level_V, back_s, dice);
        if (h == holds) break;
        // Over the place where the ranges meet, every other time.
        double to_V = anotherLevel_V(dice, level_V);
        if (meter.rangesMeet_V > 1 && dice.chance(0.6))
            to_V = level_V < 3.7 ? dice.between(4.15, 4.5) : dice.between(1, 3.5);
        wire.move(to_V, dice.between(0.3, 2.5));
    }
    return made;
}

Made makeRepeats(Dice& dice) {
    Made made = begin(dice);
    made.meter.interval_s = dice.pick({0.1, 0.2}); // logged faster than the display is renewed
    made.meter.refresh = dice.whole(2, 3);
    made.meter.aperture_s = made.meter.interval_s * made.meter.refresh * dice.between(0.4, 1);
    holdsAndMoves(made, dice, 5, 9);
    return made;
}

Made makeBunched(Dice& dice) {
    Made made = begin(dice);
    made.meter.interval_s = dice.pick({0.1, 0.2});
    made.meter.aperture_s = made.meter.interval_s * dice.between(0.4, 1);
    made.meter.stamps = Stamps::bunched;
    made.meter.bunch = made.meter.interval_s < 0.15 ? dice.whole(2, 4) : 2; // never so long that it counts as silence
    holdsAndMoves(made, dice, 5, 9);
    return made;
}

Made makeFlags(Dice& dice) {
    Made made = begin(dice);
    made.meter.lostShare = dice.chance(0.5) ? dice.between(0.002, 0.02) : 0;
    Wire& wire = made.wire;
    const int holds = dice.whole(4, 8);
    for (int h = 0; h <= holds; ++h) {
        const double level_V = wire.level_V();
        const Span hold = wire.hold(dice.between(25, 60));
        const double at_s = dice.between(hold.from_s + 5, hold.to_s - 8);
        if (dice.chance(0.4))
            wire.flagged.push_back(
                {{at_s, at_s + dice.between(0.2, 3)}, dice.pick({Flag::overload, Flag::hold, Flag::unit})});
        else if (dice.chance(0.6))
            wiggle(wire, {hold.from_s + 5, hold.to_s - 4}, level_V, clearReturn_s(made.meter) + made.meter.interval_s,
                   dice);
        if (h < holds) wire.move(anotherLevel_V(dice, level_V), dice.between(0.3, 2.5));
    }
    return made;
}

Made makeLouder(Dice& dice) {
    Made made = begin(dice);
    made.meter.louder = dice.between(2, 4); // a fan or a charger starts, or stops
    if (dice.chance(0.3)) made.meter.louder = 1 / made.meter.louder;
    holdsAndMoves(made, dice, 4, 7);
    made.meter.louderFrom_s = dice.between(0.2, 0.7) * made.wire.now_s();
    return made;
}

Made makeHum(Dice& dice) {
    Made made = begin(dice);
    made.meter.hum_V = dice.between(0.002, 0.008); // the mains beating with the interval
    made.meter.humPeriod_s = dice.between(3, 30) * made.meter.interval_s;
    holdsAndMoves(made, dice, 5, 9);
    return made;
}

} // namespace stillwire::families
