// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/marks.hpp"

#include <cmath>

namespace stillwire::families {
namespace {

// An analyser exactly as good as the mark misses more often than this once in a thousand runs, or less.
constexpr double kOneInAThousand = 3.1;

std::string tooFew(const char* what, const Share& share, double mark_percent) {
    const double mayMiss = share.of * (1 - mark_percent / 100);
    const double missed = share.of - share.got;
    if (missed <= mayMiss + kOneInAThousand * std::sqrt(mayMiss)) return {};
    return text("%s: %.2f %% of %.0f, wanted %.1f\n", what, share.percent(), share.of, mark_percent);
}

std::string tooMany(const char* what, int count, double hours, double mark_per50h) {
    const double may = mark_per50h * hours / 50;
    if (count <= may + kOneInAThousand * std::sqrt(may)) return {};
    return text("%s: %d in %.1f h, wanted %.0f or fewer in 50 h\n", what, count, hours, mark_per50h);
}

} // namespace

std::string shortOf(const PassMarks& marks, const Score& s) {
    std::string all =
        tooFew("readings clearly off that are flagged", s.seen, marks.seen_percent) +
        tooFew("movements found", s.moves, marks.moves_percent) +
        tooFew("seconds of sweeps under travel", s.sweeps, marks.sweeps_percent) +
        tooFew("wiggles", s.wiggles, marks.wiggles_percent) + tooFew("calm holds", s.calm, marks.calm_percent) +
        tooFew("plateaus with their level", s.plateaus, marks.plateaus_percent) +
        tooFew("blind spans", s.blind, marks.blind_percent) +
        tooMany("false flags", s.falseFlags, s.hours, marks.falseFlags_per50h) +
        tooMany("false travel and jumps", s.falseTravel + s.falseJumps, s.hours, marks.falseTravel_per50h) +
        tooMany("false wiggles", s.falseWiggles, s.hours, marks.falseWiggles_per50h) +
        tooMany("false blind spans", s.falseBlind, s.hours, marks.falseBlind_per50h);
    if (s.lawsBroken > marks.lawsBroken) all += text("laws broken: %d\n", s.lawsBroken);
    return all;
}

} // namespace stillwire::families
