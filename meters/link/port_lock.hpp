// SPDX-License-Identifier: GPL-3.0-or-later
// One reader for a port: two would share its bytes between them, and both see torn frames.
#pragma once

#include <string>

namespace stillwire {

// Who holds a lock file on the port, as "process 1234"; empty: nobody that lives. `directory` is the usual one but in
// tests.
[[nodiscard]] std::string lockFileHolder(const std::string& port, const std::string& directory = "/run/lock");

// Keeps others out: exclusive mode, and an advisory lock for those who may override that. False: another holds it.
[[nodiscard]] bool claimPort(int descriptor);

} // namespace stillwire
