// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/cli.hpp"
#include "app/window/run_window.hpp"

#include <csignal>
#include <string_view>

int main(int argc, char** argv) {
    std::signal(SIGXFSZ, SIG_IGN); // a file that may not grow is a disk that is full: said, and no end of the program
    const bool demo = argc == 2 && std::string_view(argv[1]) == "--demo";
    if (argc <= 1 || demo) return stillwire::runWindow(argc, argv, demo);
    return stillwire::runCommandLine(argc, argv);
}
