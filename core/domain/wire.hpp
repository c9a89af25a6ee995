// SPDX-License-Identifier: GPL-3.0-or-later
// The three wires of a sensor, and the ends of the harness they are measured at.
#pragma once

namespace stillwire {

enum class Wire { none, reference, ground, signal }; // none: the lead hangs in the air

enum class ProbeSide { sensorSide, controllerSide };

} // namespace stillwire
