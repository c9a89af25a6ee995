// SPDX-License-Identifier: GPL-3.0-or-later
// Calm, wiggles and the levels of plateaus.
#include "tests/core/families/score.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::families {
namespace {

void scoreCalm(const Trace& trace, const Told& told, Score& into, Misses misses) {
    for (const Span& calm : trace.truth.calm) {
        const bool quiet = overlap_s(told, PhaseKind::quiet, calm) >= 0.9 * calm.length_s();
        into.calm.add(quiet);
        if (!quiet && misses)
            misses->push_back({"calm", calm.from_s, text("quiet from %.2f to %.2f s", calm.from_s, calm.to_s),
                               phasesAround(told, calm.from_s, calm.to_s)});
    }
}

void scoreWiggles(const Trace& trace, const Told& told, Score& into, Misses misses) {
    const double grace_s = 2 * trace.meter.interval_s + trace.meter.stampSlack_s();
    for (const TrueWiggle& w : trace.truth.wiggles) {
        double blind_s = 0, outside_s = 0;
        for (const Span& b : trace.truth.blindPossible)
            blind_s += std::max(0.0, std::min(b.to_s, w.sure.to_s) - std::max(b.from_s, w.sure.from_s));
        const double length_s = w.sure.length_s() - blind_s - 2 * grace_s;
        for (const ToldPhase& p : told.phases)
            if (p.kind == PhaseKind::wiggle && p.when.meets(w.sure.from_s, w.sure.to_s))
                outside_s = std::max({outside_s, w.possible.from_s - p.when.from_s, p.when.to_s - w.possible.to_s});
        const bool found =
            overlap_s(told, PhaseKind::wiggle, w.sure) >= std::max(0.9 * length_s, 0.01) && outside_s <= grace_s;
        into.wiggles.add(found);
        if (!found && misses)
            misses->push_back({"wiggle", w.sure.from_s,
                               text("wiggle from %.2f to %.2f s (%d dropouts; at most %.2f to %.2f)", w.sure.from_s,
                                    w.sure.to_s, w.dropouts, w.possible.from_s, w.possible.to_s),
                               phasesAround(told, w.sure.from_s - 2, w.sure.to_s + 2)});
    }
    for (const ToldPhase& p : told.phases) {
        if (p.kind != PhaseKind::wiggle) continue;
        bool founded = false;
        for (const Span& possible : trace.truth.wigglesPossible)
            founded = founded || possible.meets(p.when.from_s, p.when.to_s);
        if (founded) continue;
        ++into.falseWiggles;
        if (misses)
            misses->push_back({"false-wiggle", p.when.from_s, "no three dropouts here",
                               phasesAround(told, p.when.from_s, p.when.to_s)});
    }
}

// The readings of a plateau that one told stay covers, and how far its level may be from theirs.
struct Covered {
    double count = 0, level_V = 0, tolerance_V = 0;
};
Covered covered(const Trace& trace, const Plateau& plateau, const ToldPlateau& told) {
    Covered c;
    double noise_V = 0, count_V = 0, lowest_V = 1e9, highest_V = -1e9;
    for (std::size_t i = plateau.first; i <= plateau.last; ++i) {
        const double t = toSeconds(trace.readings[i].time);
        const TrueReading& r = trace.truth.readings[i];
        if (r.touched() || !trace.readings[i].hasNumber() || t < told.when.from_s || t > told.when.to_s) continue;
        c.count += 1;
        c.level_V += r.level_V;
        noise_V = std::max(noise_V, r.noise_V);
        count_V = std::max(count_V, r.count_V);
        lowest_V = std::min(lowest_V, r.level_V);
        highest_V = std::max(highest_V, r.level_V);
    }
    if (c.count == 0) return c;
    c.level_V /= c.count;
    const double filter = trace.meter.firstOrder > 0 ? 2 / trace.meter.firstOrder - 1 : trace.meter.meanOf;
    c.tolerance_V = std::max(count_V, 3 * noise_V * std::sqrt(filter / c.count));
    if (plateau.tremor_V > 0) {
        // A tremor's readings are no independent witnesses.
        const double own = std::max(1.0, plateau.when.length_s() / (2 * plateau.tremor_s));
        c.tolerance_V = std::max(c.tolerance_V, 3 * plateau.tremor_V / std::sqrt(own));
    } else {
        c.tolerance_V += 0.5 * (highest_V - lowest_V); // drift: any level it had is a fair one
    }
    return c;
}

void scorePlateaus(const Trace& trace, const Told& told, Score& into, Misses misses) {
    for (const Plateau& plateau : trace.truth.plateaus) {
        double all = 0, right = 0, worst_V = 0, tolerance_V = 0;
        for (std::size_t i = plateau.first; i <= plateau.last; ++i)
            all += !trace.truth.readings[i].touched() && trace.readings[i].hasNumber();
        std::string levels;
        for (const ToldPlateau& t : told.plateaus) {
            if (!t.when.meets(plateau.when.from_s, plateau.when.to_s)) continue;
            const Covered c = covered(trace, plateau, t);
            if (c.count == 0) continue;
            const double off_V = std::abs(t.level_V - c.level_V);
            if (off_V <= c.tolerance_V) right += c.count;
            if (off_V - c.tolerance_V > worst_V - tolerance_V || levels.empty()) {
                worst_V = off_V;
                tolerance_V = c.tolerance_V;
            }
            if (misses) levels += text(" %.4f V in %.2f..%.2f", t.level_V, t.when.from_s, t.when.to_s);
        }
        const bool found = right >= 0.8 * all;
        into.plateaus.add(found);
        if (!found && misses)
            misses->push_back({"plateau", plateau.when.from_s,
                               text("%.4f V from %.2f to %.2f s", trace.truth.readings[plateau.last].level_V,
                                    plateau.when.from_s, plateau.when.to_s),
                               text("%.0f of %.0f readings under a right level; off by %.4f V (allowed %.4f):", right,
                                    all, worst_V, tolerance_V) +
                                   levels});
    }
}

} // namespace

void scoreStays(const Trace& trace, const Told& told, Score& into, Misses misses) {
    scoreCalm(trace, told, into, misses);
    scoreWiggles(trace, told, into, misses);
    scorePlateaus(trace, told, into, misses);
}

} // namespace stillwire::families
