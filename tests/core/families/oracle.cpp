// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/oracle.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::families {
namespace {

template <typename Shows> std::vector<ToldDropout> runsOf(const Trace& trace, Shows shows) {
    std::vector<ToldDropout> runs;
    bool open = false;
    for (std::size_t i = 0; i < trace.readings.size(); ++i) {
        if (!trace.readings[i].hasNumber()) continue;
        const bool shown = shows(trace.readings[i], trace.truth.readings[i]);
        const double t = toSeconds(trace.readings[i].time);
        if (shown && !open) runs.push_back({{t, t}, 0, trace.truth.readings[i].level_V, trace.readings[i].volts_V});
        open = shown;
        if (!shown) continue;
        runs.back().when.to_s = t;
        ++runs.back().readings;
    }
    return runs;
}

// Later spans lie over earlier ones.
std::vector<ToldPhase> tiled(double from_s, double to_s, const std::vector<ToldPhase>& over) {
    std::vector<double> cuts{from_s, to_s};
    for (const ToldPhase& p : over) {
        cuts.push_back(std::clamp(p.when.from_s, from_s, to_s));
        cuts.push_back(std::clamp(p.when.to_s, from_s, to_s));
    }
    std::sort(cuts.begin(), cuts.end());
    std::vector<ToldPhase> tiles;
    int lastOwner = -2;
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        if (cuts[i + 1] <= cuts[i]) continue;
        const double middle_s = 0.5 * (cuts[i] + cuts[i + 1]);
        int owner = -1;
        for (std::size_t p = 0; p < over.size(); ++p)
            if (over[p].when.from_s <= middle_s && middle_s <= over[p].when.to_s) owner = static_cast<int>(p);
        if (owner == lastOwner && !tiles.empty()) {
            tiles.back().when.to_s = cuts[i + 1];
        } else {
            const PhaseKind kind = owner < 0 ? PhaseKind::quiet : over[static_cast<std::size_t>(owner)].kind;
            tiles.push_back({kind, {cuts[i], cuts[i + 1]}, 0});
        }
        lastOwner = owner;
    }
    return tiles;
}

Told withoutDropouts(const Trace& trace) {
    Told told;
    std::vector<ToldPhase> over;
    for (const TrueWiggle& w : trace.truth.wiggles) over.push_back({PhaseKind::wiggle, w.sure, 0});
    for (const TrueMove& m : trace.truth.moves) {
        constexpr double kLeap_s = 0.001;
        const double from_s = m.move.from_s, to_s = std::max(m.move.to_s, m.shown.to_s);
        if (m.scored || !m.partlyBlind)
            over.push_back({PhaseKind::travel, {from_s, std::max(to_s, from_s + kLeap_s)}, 0});
    }
    for (const Span& b : trace.truth.blind) {
        over.push_back({PhaseKind::blind, b, 0});
        told.blind.push_back(b);
    }
    told.phases = tiled(toSeconds(trace.readings.front().time), toSeconds(trace.readings.back().time), over);
    for (const Plateau& p : trace.truth.plateaus) {
        double sum_V = 0, count = 0;
        for (std::size_t i = p.first; i <= p.last; ++i) {
            if (trace.truth.readings[i].touched() || !trace.readings[i].hasNumber()) continue;
            sum_V += trace.readings[i].volts_V;
            count += 1;
        }
        told.plateaus.push_back({p.when, sum_V / count});
    }
    return told;
}

} // namespace

Told tellAll(const Trace& trace) {
    Told told = withoutDropouts(trace);
    told.dropouts = runsOf(trace, [](const Reading&, const TrueReading& r) { return r.touched(); });
    return told;
}

Told tellByThreshold(const Trace& trace) {
    Told told = withoutDropouts(trace);
    told.dropouts = runsOf(trace, [](const Reading& reading, const TrueReading& r) {
        const double noise_V = std::sqrt(r.noise_V * r.noise_V + r.count_V * r.count_V / 12);
        return std::abs(reading.volts_V - r.level_V) > std::max({0.02, 6 * noise_V, 3 * r.count_V});
    });
    return told;
}

} // namespace stillwire::families
