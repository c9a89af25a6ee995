// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/families.hpp"

#include "tests/core/families/makers.hpp"

namespace stillwire::families {

const std::vector<Family>& families() {
    static const std::vector<Family> all{
        {"plain", "holds, movements, wiggles, gaps", makePlain},
        {"whole-seconds", "three to five readings share a whole second", makeWholeSeconds},
        {"two-seconds", "one reading in two seconds", makeTwoSeconds},
        {"running-mean", "the display shows the mean of three to six readings", makeRunningMean},
        {"first-order", "the display follows with a first-order lag", makeFirstOrder},
    };
    return all;
}

const Family* findFamily(std::string_view name) {
    for (const Family& family : families())
        if (name == family.name) return &family;
    return nullptr;
}

Trace make(const Family& family, std::uint64_t seed, bool windowsOn) {
    Dice dice(family.name, seed);
    Made made = family.make(dice);
    const bool on = windowsOn && !family.windowsAlwaysOff;
    Trace trace = record(made.wire, made.meter, dice);
    trace.family = family.name;
    trace.seed = seed;
    trace.windowsOn = on;
    trace.sheetToml = sheetFor(made.wire, on);
    std::size_t at = 0;
    for (Mark& note : made.notes) {
        while (at < trace.readings.size() && trace.readings[at].time <= note.time) ++at;
        trace.marks.emplace_back(at, std::move(note));
    }
    return trace;
}

} // namespace stillwire::families
