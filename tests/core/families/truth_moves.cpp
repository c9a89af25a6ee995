// SPDX-License-Identifier: GPL-3.0-or-later
// Movements as a slow meter can show them, and the levels between them.
#include "tests/core/families/truth.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::families {
namespace {

// The readings with a number, by index.
std::vector<std::size_t> numbers(const Trace& trace) {
    std::vector<std::size_t> of;
    for (std::size_t i = 0; i < trace.readings.size(); ++i)
        if (trace.readings[i].hasNumber()) of.push_back(i);
    return of;
}

double away_V(const TrueReading& r) { return std::max({0.02, 6 * r.noise_V, 3 * r.count_V}); }

TrueMove tellMove(const Wire& wire, const Trace& trace, const std::vector<std::size_t>& shown, const Move& move,
                  double until_s) {
    const std::vector<TrueReading>& readings = trace.truth.readings;
    const auto stamp_s = [&](std::size_t i) { return toSeconds(trace.readings[i].time); };
    TrueMove told;
    told.move = move;
    told.begins = {move.from_s, move.from_s};
    told.ends = {move.to_s, move.to_s};
    told.shown = {move.from_s, move.to_s};
    const double before_V = move.from_V + wire.drift_V(move.from_s), after_V = move.to_V + wire.drift_V(move.to_s);
    const auto start = std::partition_point(shown.begin(), shown.end(),
                                            [&](std::size_t i) { return readings[i].at_s <= move.from_s; });
    if (start == shown.begin() || start == shown.end()) {
        told.scored = false; // the capture begins or ends in it
        told.cutOff = start == shown.end();
        return told;
    }
    // The noise of both stays counts: a foot may tremble at one end only.
    auto after = start;
    while (after + 1 != shown.end() && readings[*after].at_s - trace.meter.aperture_s < move.to_s) ++after;
    const double noisiest_V = std::max(away_V(readings[*(start - 1)]), away_V(readings[*after]));
    const double clear_V = std::min(noisiest_V, 0.4 * std::abs(after_V - before_V));
    auto leaves = start;
    while (leaves != shown.end() && std::abs(readings[*leaves].level_V - before_V) <= clear_V) ++leaves;
    auto settles = leaves;
    while (settles != shown.end() && readings[*settles].at_s < until_s &&
           std::abs(readings[*settles].level_V - after_V) > clear_V)
        ++settles;
    if (leaves == shown.end() || settles == shown.end()) {
        told.scored = false;
        told.cutOff = true;
        return told;
    }
    const std::size_t held = *(leaves - 1), settled = *settles, moving = *(settles - 1);
    bool hole = false;
    for (auto i = leaves - 1; i != settles; ++i)
        hole =
            hole || *(i + 1) - *i > 1 || readings[*(i + 1)].at_s - readings[*i].at_s > 1.6 * trace.meter.interval_s;
    told.partlyBlind = hole;
    // One reading on the way, at the very edge of the silence, can as well be told as part of it.
    told.scored = !hole || settles - leaves >= 2;
    told.begins.to_s = std::max(move.from_s, stamp_s(hole ? *leaves : held));
    told.ends = {std::min(move.to_s, stamp_s(moving)), std::max(move.to_s, stamp_s(hole ? settled : moving))};
    // A filter's tail may be told as movement for as long as it can be told from the level at all.
    auto tail = settles;
    const bool filtered = trace.meter.meanOf > 1 || trace.meter.firstOrder > 0;
    while (filtered && tail != shown.end() && readings[*tail].at_s < until_s &&
           std::abs(readings[*tail].level_V - after_V) > std::max(readings[*tail].noise_V, readings[*tail].count_V))
        told.ends.to_s = std::max(told.ends.to_s, stamp_s(*tail++));
    told.shown = {stamp_s(*leaves), std::max(stamp_s(*leaves), stamp_s(moving))};
    return told;
}

} // namespace

void tellMoves(const Wire& wire, Trace& trace) {
    const std::vector<std::size_t> shown = numbers(trace);
    // What the filter eats of a stay cannot be seen as flat.
    const double stay_s = 1.2 * shortestStay_s(trace.meter) + memory_s(trace.meter) - trace.meter.aperture_s;
    for (std::size_t i = 0; i < wire.moves.size(); ++i) {
        const bool another = i + 1 < wire.moves.size();
        const double until_s = another ? wire.moves[i + 1].from_s : wire.now_s();
        TrueMove told = tellMove(wire, trace, shown, wire.moves[i], until_s);
        told.joinsNext = another && until_s - wire.moves[i].to_s < stay_s;
        trace.truth.moves.push_back(told);
    }
}

void tellPlateaus(const Wire& wire, Trace& trace) {
    const std::vector<TrueReading>& readings = trace.truth.readings;
    for (const Hold& hold : wire.holds) {
        // Where a level creeps on, nobody can say where the plateau ends.
        if (std::any_of(wire.unasked.begin(), wire.unasked.end(),
                        [&](const Span& s) { return s.from_s <= hold.to_s && hold.from_s <= s.to_s; }))
            continue;
        Plateau plateau{{}, 0, 0, hold.tremor_V, hold.tremor_s};
        int count = 0;
        const auto start = std::partition_point(readings.begin(), readings.end(), [&](const TrueReading& r) {
            return r.at_s - trace.meter.aperture_s < hold.from_s;
        });
        for (auto r = start; r != readings.end() && r->at_s <= hold.to_s; ++r) {
            const auto i = static_cast<std::size_t>(r - readings.begin());
            // A filter's tail is not yet the level.
            const double off_V = std::abs(r->level_V - hold.level_V - wire.drift_V(r->at_s));
            if (r->touched() || !trace.readings[i].hasNumber()) continue;
            if (hold.tremor_V == 0 && off_V > 0.5 * r->count_V) continue;
            if (count++ == 0) plateau.first = i;
            plateau.last = i;
        }
        if (count < 4) continue;
        plateau.when = {toSeconds(trace.readings[plateau.first].time), toSeconds(trace.readings[plateau.last].time)};
        const double seen_s = readings[plateau.last].at_s - readings[plateau.first].at_s;
        if (seen_s >= 2.2) trace.truth.plateaus.push_back(plateau);
    }
}

} // namespace stillwire::families
