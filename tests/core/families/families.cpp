// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/families.hpp"

#include "tests/core/families/makers.hpp"

namespace stillwire::families {

const std::vector<Family>& families() {
    static const std::vector<Family> all{
        {"plain", "holds, movements, wiggles, gaps", makePlain, 30, 700},
        {"whole-seconds", "three to five readings share a whole second", makeWholeSeconds, 30, 700},
        {"two-seconds", "one reading in two seconds", makeTwoSeconds, 30, 700},
        {"running-mean", "the display shows the mean of three to six readings", makeRunningMean, 30, 700},
        {"first-order", "the display follows with a first-order lag", makeFirstOrder, 30, 700},
        {"chatter", "bursts of many short dropouts within a second or two", makeChatter, 30, 500},
        {"long-dropouts", "2 to 60 s at a rail, or off it and noisy", makeLongDropouts, 30, 500},
        {"sweeps", "0.05 to 0.5 V a second with pauses and dropouts", makeSweeps, 40, 900},
        {"tremor", "a foot holds it: 5 to 40 mV of slow noise", makeTremor, 40, 1000},
        {"autorange", "two ranges meet, and a change costs readings", makeAutorange, 30, 700},
        {"no-window", "the plain bench, no level in any window", makePlain, 30, 700, true},
        {"middle", "a lever that rests in the middle and goes to both sides", makeMiddle, 30, 600},
        {"quiet-hour", "an hour with nothing", makeQuietHour, 20, 300},
        {"heavy-tails", "an hour with nothing, noise with heavier tails", makeHeavyTails, 20, 300},
        {"steps", "changes of level from 0.1 V up, at once to 3 s", makeSteps, 40, 500},
        {"two-changes", "two quick changes 1.5 to 3 s apart", makeTwoChanges, 40, 500},
        {"presses", "there and back: long enough for a movement, or a dropout", makePresses, 40, 500},
        {"bursts", "wiggles of 4 to 30 mixed dropouts amid calm", makeBursts, 20, 600},
        {"edges", "captures of seconds that begin and end amid things", makeEdges, 100, 2500},
        {"fading", "an open wire that sinks like a capacitor", makeFading, 30, 500},
        {"repeats", "each number logged two or three times", makeRepeats, 30, 700},
        {"bunched", "rows that arrive together", makeBunched, 30, 700},
        {"creep", "a level that creeps for minutes", makeCreep, 40, 800},
        {"near-rails", "levels close to 0 and 5 V", makeRails, 30, 700},
        {"flags", "overload, hold, another unit; single rows lost", makeFlags, 30, 900},
        {"louder", "noise that grows or falls on the way", makeLouder, 30, 800},
        {"hum", "a slow ripple of 2 to 8 mV", makeHum, 30, 700},
        {"silent-moves", "the log loses movements, or parts of them", makeSilentMoves, 30, 900},
        {"notes", "marks that mean nothing", makeNotes, 30, 700},
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
        // One after the last reading would make the capture longer.
        if (at < trace.readings.size()) trace.marks.emplace_back(at, std::move(note));
    }
    return trace;
}

} // namespace stillwire::families
