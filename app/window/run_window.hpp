// SPDX-License-Identifier: GPL-3.0-or-later
// The program with its window.
#pragma once

#include <string>

namespace stillwire {

struct Opens {
    bool demo = false;   // at once on the simulated meter, on a sensor worn where it rests
    std::string capture; // a file; empty: the start page
};

// Returns the exit status.
[[nodiscard]] int runWindow(int& argc, char** argv, const Opens& opens);

} // namespace stillwire
