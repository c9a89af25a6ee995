// SPDX-License-Identifier: GPL-3.0-or-later
// The frame a meter of a described kind sends for a reading: the decoders' other half, for the simulated meter and
// tests.
#pragma once

#include "core/domain/reading.hpp"
#include "meters/describe/description.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace stillwire {

// `reading` is quantised to `resolution_V` (a power of ten, 1e-6 to 1; other values use the next finer one).
// decode(encode(x)) == x for every flag the kind can carry: text, polled, segments and ascii carry overload, hold,
// lowbat, autorange and unit; scpi carries overload, and `unit` as not-a-number. `ref` is nobody's. A number too
// large for the display comes out with fewer decimals, then as overload. No number and no cause: the digits go out
// (segments), else autorange's silence, which is no frame at all. Text lines come as "+4.123 V DC HOLD\r\n"; a
// pattern, if the description has one, must fit that.
[[nodiscard]] std::vector<std::uint8_t> encodeFrame(const FrameSettings& frame, const Reading& reading,
                                                    double resolution_V);

// Digits after the point that show `resolution_V`: 3 for 0.001.
[[nodiscard]] int decimalsOf(double resolution_V);

} // namespace stillwire
