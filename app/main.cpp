// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/cli.hpp"
#include "app/window/run_window.hpp"

#include <string_view>

int main(int argc, char** argv) {
    const bool demo = argc == 2 && std::string_view(argv[1]) == "--demo";
    if (argc <= 1 || demo) return stillwire::runWindow(argc, argv, demo);
    return stillwire::runCommandLine(argc, argv);
}
