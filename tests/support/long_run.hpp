// SPDX-License-Identifier: GPL-3.0-or-later
// How much a statistical test does: tens of seeds in every run, all that is promised with tests/run --long.
#pragma once

#include <cstdlib>

namespace stillwire::test {

inline bool longRun() {
    const char* asked = std::getenv("STILLWIRE_LONG");
    return asked && *asked == '1';
}
inline int scaled(int always, int inLongRun) { return longRun() ? inLongRun : always; }

} // namespace stillwire::test
