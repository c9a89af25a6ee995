// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/cli.hpp"

int main(int argc, char** argv) { return stillwire::runCommandLine(argc, argv); }
