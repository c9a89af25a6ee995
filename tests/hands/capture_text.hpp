// SPDX-License-Identifier: GPL-3.0-or-later
// A run as the bytes of a capture file.
#pragma once

#include <string>

namespace stillwire::hands {

struct LedRun;
[[nodiscard]] std::string captureText(const LedRun& run);

} // namespace stillwire::hands
