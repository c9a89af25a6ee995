// SPDX-License-Identifier: GPL-3.0-or-later
// What the program was asked for.
#pragma once

#include "tests/hands/table.hpp"

#include <optional>

namespace stillwire::hands {

struct Options {
    RowOrder order;
    bool allKinds = false, allFaults = false;
    bool byStep = false;        // a row for each step of a kind
    std::size_t list = 1000000; // so many wrong runs of a row are listed
    bool undecided = false;     // list those that cannot tell, too
};

inline constexpr const char* kUsage =
    "hands [--kind NAME|all|none|several] [--step NAME] [--fault NAME|all|none] [--seeds N] [--seed FIRST]\n"
    "  --by-step      a row for each step of a kind\n"
    "  --list N       at most so many wrong runs of each row\n"
    "  --undecided    list the runs that cannot tell, too\n"
    "  --old-steps    without lead-check and connector-held\n"
    "  --no-spare     no pose and no visit more than is asked for\n"
    "  --quick-lead   the lead goes from wire to wire at once and never hangs for long\n"
    "  --without-act  the same runs, but nothing happens in them\n"
    "  --jobs N       so many at a time\n"
    "  --dump FOLDER  the captures, each with its truth beside it\n"
    "hands --kinds    what can happen, and in which steps\n"
    "hands --faults\n";

[[nodiscard]] std::optional<Options> parseOptions(int count, char** words);

} // namespace stillwire::hands
