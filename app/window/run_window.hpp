// SPDX-License-Identifier: GPL-3.0-or-later
// The program with its window.
#pragma once

namespace stillwire {

// `demo`: at once on the simulated meter, on a sensor worn where it rests. Returns the exit status.
[[nodiscard]] int runWindow(int& argc, char** argv, bool demo);

} // namespace stillwire
