// SPDX-License-Identifier: GPL-3.0-or-later
// A flagged span has to hold dropouts in six of ten of its readings; else it explains nothing: it sees none and is
// false.
#include "tests/core/families/score.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::families {
namespace {

constexpr double kFounded = 0.6;

struct Flagged {
    std::size_t first = 0, end = 0; // readings
    bool good = false;
};

Flagged judge(const Trace& trace, const ToldDropout& told) {
    const auto time_s = [&](const Reading& r) { return toSeconds(r.time); };
    constexpr double kMicrosecond_s = 1.5e-6;
    const auto begin = trace.readings.begin();
    const auto first = std::partition_point(
        begin, trace.readings.end(), [&](const Reading& r) { return time_s(r) < told.when.from_s - kMicrosecond_s; });
    const auto end = std::partition_point(
        first, trace.readings.end(), [&](const Reading& r) { return time_s(r) <= told.when.to_s + kMicrosecond_s; });
    Flagged flagged{static_cast<std::size_t>(first - begin), static_cast<std::size_t>(end - begin), false};
    double touched = 0, numbers = 0;
    for (std::size_t i = flagged.first; i < flagged.end; ++i) {
        if (!trace.readings[i].hasNumber()) continue;
        numbers += 1;
        touched += trace.truth.readings[i].touched();
    }
    // Where several readings share a stamp, a span of two seems to hold all of both stamps. Those between are its
    // own; of the rest as many as it says.
    if (trace.meter.stamps != Stamps::exact) {
        double own = told.when.length_s() > 0 ? 2 : 1;
        for (auto r = first; r != end; ++r)
            own += time_s(*r) > told.when.from_s + kMicrosecond_s && time_s(*r) < told.when.to_s - kMicrosecond_s;
        numbers = std::min(numbers, std::max(own, static_cast<double>(told.readings)));
    }
    flagged.good = touched > 0 && touched >= kFounded * numbers;
    return flagged;
}

} // namespace

void scoreDropouts(const Trace& trace, const Told& told, Score& into, Misses misses) {
    std::vector<char> seen(trace.readings.size(), 0);
    for (const ToldDropout& d : told.dropouts) {
        const Flagged flagged = judge(trace, d);
        if (flagged.good) {
            std::fill(seen.begin() + static_cast<std::ptrdiff_t>(flagged.first),
                      seen.begin() + static_cast<std::ptrdiff_t>(flagged.end), char{1});
            continue;
        }
        const bool undecided =
            std::any_of(trace.truth.moves.begin(), trace.truth.moves.end(),
                        [&](const TrueMove& m) { return m.cutOff && d.when.from_s >= m.move.from_s; });
        if (undecided) continue;
        ++into.falseFlags;
        if (misses)
            misses->push_back({"false-flag", d.when.from_s, "no dropout in six of ten of these readings",
                               text("dropout %.2f..%.2f of %d readings, held %.4f V, extreme %.4f V", d.when.from_s,
                                    d.when.to_s, d.readings, d.held_V, d.extreme_V)});
    }
    int lastTold = -1;
    for (std::size_t i = 0; i < trace.readings.size(); ++i) {
        const TrueReading& r = trace.truth.readings[i];
        if (!r.clear) continue;
        (r.required ? into.seen : into.bunched).add(seen[i] != 0);
        if (seen[i] || !r.required || !misses || r.dropout == lastTold) continue; // one line a dropout
        lastTold = r.dropout;
        const double at_s = toSeconds(trace.readings[i].time);
        misses->push_back({"unseen", at_s,
                           text("%+.4f V off %.4f V (%.1f times what has to be seen)", r.off_V, r.level_V,
                                std::abs(r.off_V) / r.border_V()),
                           phasesAround(told, at_s - 1, at_s + 1)});
    }
}

} // namespace stillwire::families
