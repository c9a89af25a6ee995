// SPDX-License-Identifier: GPL-3.0-or-later
// What the program ends with, whatever it was started for.
#pragma once

namespace stillwire {

inline constexpr int kExitDone = 0; // whatever the verdict
inline constexpr int kExitOurFault = 1;
inline constexpr int kExitUsage = 2;
inline constexpr int kExitBadInput = 3; // with one line on stderr

} // namespace stillwire
