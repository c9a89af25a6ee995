// SPDX-License-Identifier: GPL-3.0-or-later
// A meter reads a scene from its beginning to its end.
#pragma once

#include "core/domain/reading.hpp"
#include "tests/hands/meter.hpp"
#include "tests/hands/scene.hpp"

#include <vector>

namespace stillwire::hands {

[[nodiscard]] std::vector<Reading> takeReadings(const Scene& scene, const Meter& meter, Dice& dice);

} // namespace stillwire::hands
