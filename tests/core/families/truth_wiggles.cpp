// SPDX-License-Identifier: GPL-3.0-or-later
// Wiggles by the stated rule: from 1 s before the first to 1 s after the last of three or more dropouts off one
// level, none more than 20 s from the next, no travel between. And the calm that is left.
#include "tests/core/families/truth.hpp"

#include <algorithm>
#include <set>

namespace stillwire::families {
namespace {

constexpr double kApart_s = 20, kAround_s = 1;

// Readings touched one after the other.
struct Episode {
    Span touched, clear; // stamps
    bool isClear = false;
    std::set<int> dropouts;
    bool rough = false; // may look like many
};

std::vector<Episode> episodes(const Wire& wire, const Trace& trace) {
    std::vector<Episode> all;
    bool open = false;
    for (std::size_t i = 0; i < trace.readings.size(); ++i) {
        const TrueReading& r = trace.truth.readings[i];
        if (!r.touched()) {
            open = false;
            continue;
        }
        const double t = toSeconds(trace.readings[i].time);
        if (!open) all.push_back({{t, t}, {t, t}, false, {}, false});
        open = true;
        Episode& e = all.back();
        e.touched.to_s = t;
        e.dropouts.insert(r.dropout);
        e.rough = e.rough || wire.dropouts[static_cast<std::size_t>(r.dropout)].rough_V > 0;
        if (!r.clear) continue;
        if (!e.isClear) e.clear.from_s = t;
        e.clear.to_s = t;
        e.isClear = true;
    }
    return all;
}

void subtract(std::vector<Span>& from, Span away) {
    std::vector<Span> left;
    for (const Span& s : from) {
        if (!s.meets(away.from_s, away.to_s)) {
            left.push_back(s);
            continue;
        }
        if (away.from_s > s.from_s) left.push_back({s.from_s, away.from_s});
        if (away.to_s < s.to_s) left.push_back({away.to_s, s.to_s});
    }
    from = left;
}

double grace_s(const Meter& meter) { return kAround_s + 2 * meter.interval_s + meter.stampSlack_s(); }

bool movedBetween(const Wire& wire, double from_s, double to_s) {
    return std::any_of(wire.moves.begin(), wire.moves.end(),
                       [&](const Move& m) { return m.from_s >= from_s && m.to_s <= to_s; });
}

// Chains of touched readings, whether anybody can see them or not; alone ones too.
struct Chain {
    Span hull;
    int dropouts = 0;
};
std::vector<Chain> chains(const Wire& wire, const Trace& trace) {
    std::vector<Chain> all;
    for (const Episode& e : episodes(wire, trace)) {
        const double reach_s = kApart_s + 2 * trace.meter.interval_s + trace.meter.stampSlack_s();
        const int count = e.rough ? 3 : static_cast<int>(e.dropouts.size());
        const bool near = !all.empty() && e.touched.from_s - all.back().hull.to_s <= reach_s;
        if (near && !movedBetween(wire, all.back().hull.to_s, e.touched.from_s)) {
            all.back().hull.to_s = e.touched.to_s;
            all.back().dropouts += count;
        } else {
            all.push_back({e.touched, count});
        }
    }
    return all;
}

} // namespace

void tellWiggles(const Wire& wire, Trace& trace) {
    const double grace = grace_s(trace.meter);
    std::vector<Span> possible;
    for (const Chain& chain : chains(wire, trace))
        if (chain.dropouts >= 3) possible.push_back({chain.hull.from_s - grace, chain.hull.to_s + grace});
    trace.truth.wigglesPossible = possible;
    const std::vector<Episode> all = episodes(wire, trace);
    for (const Hold& hold : wire.holds) {
        TrueWiggle open;
        const auto close = [&] {
            if (open.dropouts >= 3) {
                open.sure.from_s = std::max({0.0, hold.from_s, open.sure.from_s - kAround_s});
                open.sure.to_s = std::min(hold.to_s, open.sure.to_s + kAround_s);
                open.possible = open.sure;
                for (const Span& p : possible)
                    if (p.meets(open.sure.from_s, open.sure.to_s)) open.possible = p;
                trace.truth.wiggles.push_back(open);
            }
            open = {};
        };
        for (const Episode& e : all) {
            if (!e.isClear || e.clear.from_s < hold.from_s || e.clear.to_s > hold.to_s + memory_s(trace.meter))
                continue;
            // Near 20 s either answer is right, so only closer ones are sure to be one wiggle.
            if (open.dropouts > 0 && e.clear.from_s - open.sure.to_s > 0.9 * kApart_s) close();
            if (open.dropouts++ == 0) open.sure = e.clear;
            open.sure.to_s = e.clear.to_s;
        }
        close();
    }
}

void tellCalm(const Wire& wire, Trace& trace) {
    const Meter& meter = trace.meter;
    const double grace = grace_s(meter);
    const double edge_s =
        std::max(2.0, 2 * meter.interval_s) + memory_s(meter) - meter.aperture_s + meter.stampSlack_s();
    std::vector<Span> coloured = trace.truth.wigglesPossible;
    for (const Episode& e : episodes(wire, trace))
        coloured.push_back({e.touched.from_s - grace, e.touched.to_s + grace});
    for (const Span& b : trace.truth.blindPossible)
        coloured.push_back({b.from_s - 2 * meter.interval_s, b.to_s + 2 * meter.interval_s});
    if (trace.readings.empty()) return;
    const double last_s = toSeconds(trace.readings.back().time);
    for (const Hold& hold : wire.holds) {
        // A log that falls silent before the end says nothing about the rest.
        const double until_s = std::min(hold.to_s, last_s);
        if (until_s - hold.from_s < 2 * edge_s + 3) continue;
        std::vector<Span> left{{hold.from_s + edge_s, until_s - edge_s}};
        for (const Span& away : coloured) subtract(left, away);
        for (const Span& s : left)
            if (s.length_s() >= std::max(3.0, 4 * meter.interval_s)) trace.truth.calm.push_back(s);
    }
}

} // namespace stillwire::families
