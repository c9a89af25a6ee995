// SPDX-License-Identifier: GPL-3.0-or-later
// The plain bench, and the same bench behind meters that say less: coarse stamps, a slow display, a filter.
#include "tests/core/families/makers.hpp"

namespace stillwire::families {
namespace {

Made begin(Dice& dice) {
    const Meter meter = anyMeter(dice);
    return {startWire(dice), meter, {}};
}

} // namespace

Made makePlain(Dice& dice) {
    Made made = begin(dice);
    holdsAndMoves(made, dice, 5, 9);
    return made;
}

Made makeWholeSeconds(Dice& dice) {
    Made made = begin(dice);
    const double share = made.meter.aperture_s / made.meter.interval_s;
    made.meter.interval_s = dice.pick({0.2, 0.25, 0.33}); // three to five readings a second
    made.meter.aperture_s = share * made.meter.interval_s;
    made.meter.stamps = Stamps::wholeSecond;
    holdsAndMoves(made, dice, 5, 9);
    return made;
}

Made makeTwoSeconds(Dice& dice) {
    Made made = begin(dice);
    const double share = made.meter.aperture_s / made.meter.interval_s;
    made.meter.interval_s = 2;
    made.meter.aperture_s = 2 * share;
    holdsAndMoves(made, dice, 4, 7, 3);
    return made;
}

Made makeRunningMean(Dice& dice) {
    Made made = begin(dice);
    made.meter.meanOf = dice.whole(3, 6);
    holdsAndMoves(made, dice, 5, 9);
    return made;
}

Made makeFirstOrder(Dice& dice) {
    Made made = begin(dice);
    made.meter.firstOrder = dice.between(0.25, 0.6);
    holdsAndMoves(made, dice, 5, 9);
    return made;
}

} // namespace stillwire::families
