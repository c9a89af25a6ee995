// SPDX-License-Identifier: GPL-3.0-or-later
// The command line of `stillwire`. Bad input is said in one line on stderr; nothing else goes there: logs go to a
// file.
#pragma once

namespace stillwire {

// The exit status (app/shared/exit_status.hpp).
[[nodiscard]] int runCommandLine(int argc, char** argv);

} // namespace stillwire
