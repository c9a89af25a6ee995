// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/cli.hpp"
#include "app/window/run_window.hpp"

#include <csignal>
#include <string>
#include <string_view>

int main(int argc, char** argv) {
    std::signal(SIGXFSZ, SIG_IGN); // a file that may not grow is a disk that is full: said, and no end of the program
    const std::string_view first = argc == 2 ? argv[1] : "";
    if (argc <= 1 || first == "--demo")
        return stillwire::runWindow(argc, argv, {.demo = first == "--demo", .capture = {}});
    // A file is opened, as a desktop hands it over; a command's name never looks like one.
    const bool file = !first.empty() && first.front() != '-' && first.find_first_of("./") != std::string_view::npos;
    if (file) return stillwire::runWindow(argc, argv, {.demo = false, .capture = std::string(first)});
    return stillwire::runCommandLine(argc, argv);
}
