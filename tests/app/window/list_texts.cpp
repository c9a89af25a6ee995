// SPDX-License-Identifier: GPL-3.0-or-later
// list_texts SOURCE: what core, meters and the resources say to people, as a file for lupdate, on stdout.
#include "tests/app/support/source_texts.hpp"

#include <cstdio>

int main(int argc, char** argv) {
    if (argc != 2) {
        std::fputs("usage: list_texts SOURCE\n", stderr);
        return 2;
    }
    std::fputs(stillwire::test::textsForLupdate(argv[1]).c_str(), stdout);
    return 0;
}
