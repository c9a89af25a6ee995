// SPDX-License-Identifier: GPL-3.0-or-later
// Every kind of trace that an analyser is held against, by name.
#pragma once

#include "tests/core/families/trace.hpp"

#include <string_view>
#include <vector>

namespace stillwire::families {

// What a maker hands over; the readings are taken by the one meter for all.
struct Made {
    Wire wire;
    Meter meter;
    std::vector<Mark> notes; // marks that mean nothing
};

struct Family {
    const char* name;
    const char* says;
    Made (*make)(Dice&);
    int quickSeeds = 30; // of a run in every build
    int longSeeds = 400; // enough for 5,000 events
    bool windowsAlwaysOff = false;
    bool heavy = false; // an hour and more a trace
};

[[nodiscard]] const std::vector<Family>& families();
[[nodiscard]] const Family* findFamily(std::string_view name);
// The same seed gives the same readings with windows on and off.
[[nodiscard]] Trace make(const Family& family, std::uint64_t seed, bool windowsOn);

} // namespace stillwire::families
