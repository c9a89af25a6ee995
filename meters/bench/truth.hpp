// SPDX-License-Identifier: GPL-3.0-or-later
// What really happened on the bench, free of noise, beside what the meter made of it. Times are seconds of the
// capture.
#pragma once

#include "core/findings/findings.hpp"
#include "core/sheet/sheet.hpp"
#include "meters/bench/setup.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace stillwire {

// A reading that an event reached: how far its aperture's mean stands from what it would have been without the event.
struct TruthTouch {
    std::size_t reading = 0; // index among the capture's readings
    double depth_V = 0;      // as the lead sees it: before gain, counts, noise and display filter
};

struct TruthEvent {
    std::string cause;
    double from_s = 0, to_s = 0; // the contact; the filter may trail behind
    double depth_V = 0;          // deepest moment, signed: negative is down
    std::string step, pose;      // in force when it began; empty outside
    std::vector<TruthTouch> touched;
};

struct TruthSpan { // what the hand was about: "still", "wiggle", "travel", "lead off"
    std::string kind;
    double from_s = 0, to_s = 0;
};

struct TruthBlind {
    std::string cause; // "autorange", "overload"
    double from_s = 0, to_s = 0;
};

struct TruthVisit { // a stay at a position, from the end of the move
    std::string position;
    double from_s = 0;
    double level_V = 0; // nominal, settled, as a perfect meter and perfect formula would find it
    bool hang = false;
};

struct Truth {
    std::vector<TruthEvent> events;
    std::vector<TruthSpan> spans; // tile the capture
    std::vector<TruthBlind> blind;
    std::vector<TruthVisit> visits;
    double reference_V = 0, ground_V = 0; // settled, at the start, as read
    std::vector<double> level_V;          // settled level of each position at the start, nominal
    int hangs = 0;
    // What the fault set and what was done ask for, by the judgement table; `causes` are all rows that hold.
    Decision verdict = Decision::cannotTell;
    std::vector<std::string> causes;
};

// One JSON object, indented, a newline at its end; keys as the members above, `_s` times of the capture.
[[nodiscard]] std::string truthJson(const Truth& truth);

} // namespace stillwire
