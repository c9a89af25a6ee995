// SPDX-License-Identifier: GPL-3.0-or-later
// The contract's formula of what a meter is certain to see, written from the contract alone.
#pragma once

#include "tests/hands/meter.hpp"

namespace stillwire::hands {

// What leaves a held level by more is away from it: 0.02 V, 6 x noise, 3 counts, whichever is most.
[[nodiscard]] double threshold_V(double noise_V, double count_V);
// Chance that a fall of `depth_V` lasting `lasts_s` shows, at a random moment.
[[nodiscard]] double chanceToShow(double interval_s, double aperture_s, double threshold_V, double depth_V,
                                  double lasts_s);
// t*: the shortest that cannot hide; precondition: depth_V >= threshold_V.
[[nodiscard]] double shortestSure_s(double interval_s, double aperture_s, double threshold_V, double depth_V);
// The same for a meter with its own noise, range and display filter, with a little to spare.
[[nodiscard]] double surelySeen_s(const Meter& meter, double level_V, double depth_V);

} // namespace stillwire::hands
