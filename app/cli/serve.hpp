// SPDX-License-Identifier: GPL-3.0-or-later
// A made capture sent as a meter would send it: frame bytes at their times, on a pseudo-terminal.
#pragma once

#include "core/capture/reader.hpp"
#include "meters/describe/description.hpp"

#include <string>

namespace stillwire {

// Prints the terminal's name on a line of its own, then what can open it, and sends in real time until the last
// reading or Ctrl-C. `name`: what --meter takes for this description.
[[nodiscard]] Status serve(const Capture& capture, const MeterDescription& meter, const std::string& name);

} // namespace stillwire
