// SPDX-License-Identifier: GPL-3.0-or-later
// The command line of `stillwire`. Exit statuses: 0 done, whatever the verdict; 1 our fault; 2 wrong usage; 3 bad
// input, with one line on stderr. Nothing else goes to stderr: logs go to a file.
#pragma once

namespace stillwire {

[[nodiscard]] int runCommandLine(int argc, char** argv);

inline constexpr int kExitDone = 0;
inline constexpr int kExitOurFault = 1;
inline constexpr int kExitUsage = 2;
inline constexpr int kExitBadInput = 3;

} // namespace stillwire
