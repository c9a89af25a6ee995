// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/phase_builder.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
constexpr Time kAround = 1s;
constexpr Time kApart = 20s;
constexpr int kFewest = 3;

// Paints `kind` over [from, to) of a tiling; O(phases touched) when spans come in order.
void paint(std::vector<Phase>& tiles, const std::vector<TimeSpan>& spans, PhaseKind kind) {
    if (spans.empty()) return;
    std::vector<Phase> out;
    out.reserve(tiles.size() + 2 * spans.size());
    std::size_t next = 0;
    for (const Phase& tile : tiles) {
        Time at = tile.from;
        while (next < spans.size() && spans[next].from < tile.to) {
            const TimeSpan& span = spans[next];
            if (span.to > at) {
                const Time from = std::max(span.from, at);
                const Time to = std::min(span.to, tile.to);
                if (from > at) out.push_back({tile.kind, at, from, {}, {}});
                if (to > from) out.push_back({kind, from, to, {}, {}});
                at = std::max(at, to);
            }
            if (span.to > tile.to) break; // goes on in the next tile
            ++next;
        }
        if (at < tile.to) out.push_back({tile.kind, at, tile.to, {}, {}});
    }
    tiles = std::move(out);
}

bool jumpAt(const std::vector<LevelJump>& jumps, Time time) {
    const auto it =
        std::lower_bound(jumps.begin(), jumps.end(), time, [](const LevelJump& jump, Time t) { return jump.at < t; });
    return it != jumps.end() && it->at == time;
}

void merge(std::vector<Phase>& tiles, const std::vector<LevelJump>& jumps) {
    std::vector<Phase> out;
    for (const Phase& tile : tiles) {
        if (!out.empty() && out.back().kind == tile.kind && !jumpAt(jumps, tile.from))
            out.back().to = tile.to;
        else
            out.push_back(tile);
    }
    tiles = std::move(out);
}

void splitAtJumps(std::vector<Phase>& tiles, const std::vector<LevelJump>& jumps) {
    std::vector<Phase> out;
    std::size_t next = 0;
    for (Phase tile : tiles) {
        while (next < jumps.size() && jumps[next].at <= tile.from) ++next;
        while (next < jumps.size() && jumps[next].at < tile.to) {
            out.push_back({tile.kind, tile.from, jumps[next].at, {}, {}});
            tile.from = jumps[next].at;
            ++next;
        }
        out.push_back(tile);
    }
    tiles = std::move(out);
}

// Level and noise of the plateau that fills most of each phase.
void addLevels(std::vector<Phase>& tiles, const std::vector<Plateau>& plateaus) {
    std::size_t first = 0;
    for (Phase& tile : tiles) {
        if (tile.kind == PhaseKind::blind) continue;
        while (first < plateaus.size() && plateaus[first].to < tile.from) ++first;
        Time best{-1};
        for (std::size_t i = first; i < plateaus.size() && plateaus[i].from <= tile.to; ++i) {
            const Time shared = std::min(tile.to, plateaus[i].to) - std::max(tile.from, plateaus[i].from);
            if (shared <= best || (tile.kind == PhaseKind::travel && shared.count() == 0)) continue;
            best = shared;
            tile.level_V = plateaus[i].level_V;
            tile.noise_V = plateaus[i].noise_V;
        }
    }
}

} // namespace

std::vector<Phase> buildPhases(const PhaseEvidence& evidence) {
    std::vector<Phase> tiles;
    if (evidence.to < evidence.from) return tiles;
    tiles.push_back({PhaseKind::quiet, evidence.from, evidence.to, {}, {}});
    paint(tiles, *evidence.travels, PhaseKind::travel);
    // A wiggle with a slow excursion in it is still a wiggle; a movement that was asked for ends it.
    paint(tiles, *evidence.wiggles, PhaseKind::wiggle);
    splitAtJumps(tiles, *evidence.jumps);
    std::vector<TimeSpan> blind;
    for (const BlindSpan& span : *evidence.blind) blind.push_back({span.from, span.to});
    std::sort(blind.begin(), blind.end(), [](const TimeSpan& a, const TimeSpan& b) { return a.from < b.from; });
    paint(tiles, blind, PhaseKind::blind);
    merge(tiles, *evidence.jumps);
    addLevels(tiles, *evidence.plateaus);
    return tiles;
}

std::vector<TimeSpan> markedWiggles(const Timeline& timeline, Time end) {
    std::vector<TimeSpan> spans;
    const std::vector<Pose>& poses = timeline.poses();
    std::size_t pose = 0; // poses come in the order of the step visits
    for (const StepVisit& visit : timeline.stepVisits()) {
        if (!traits(visit.step).wiggles()) continue;
        const bool waits = traits(visit.step).warmth == Warmth::warm; // before it wiggles, or for good
        const int index = static_cast<int>(&visit - timeline.stepVisits().data());
        const Time to = visit.closed ? visit.to : end;
        Time from = to, last = to;
        bool any = false;
        while (pose < poses.size() && poses[pose].stepVisit < index) ++pose;
        for (; pose < poses.size() && poses[pose].stepVisit == index; ++pose) {
            if (!any) from = poses[pose].from;
            any = true;
            last = poses[pose].closed ? poses[pose].to : end;
        }
        if (any)
            spans.push_back({from, waits ? last : to});
        else if (!waits)
            spans.push_back({visit.from, to});
    }
    for (const Pose& loose : poses) { // marked without a step
        if (loose.stepVisit >= 0) continue;
        const Time to = loose.closed ? loose.to : end;
        if (!spans.empty() && spans.back().to >= loose.from)
            spans.back().to = std::max(spans.back().to, to);
        else
            spans.push_back({loose.from, to});
    }
    std::sort(spans.begin(), spans.end(), [](const TimeSpan& a, const TimeSpan& b) { return a.from < b.from; });
    return spans;
}

std::vector<TimeSpan> unmarkedWiggles(const std::vector<Excursion>& dropouts, const std::vector<TimeSpan>& travels) {
    std::vector<TimeSpan> spans;
    const auto movedBetween = [&](Time from, Time to) {
        const auto next = std::lower_bound(travels.begin(), travels.end(), from,
                                           [](const TimeSpan& travel, Time t) { return travel.to <= t; });
        return next != travels.end() && next->from < to;
    };
    std::size_t begin = 0;
    for (std::size_t i = 1; i <= dropouts.size(); ++i) {
        const bool joined = i < dropouts.size() && dropouts[i].from - dropouts[i - 1].to <= kApart &&
                            !movedBetween(dropouts[i - 1].to, dropouts[i].from) &&
                            std::abs(dropouts[i].held_V - dropouts[i - 1].held_V) <=
                                std::max(dropouts[i].threshold_V, dropouts[i - 1].threshold_V);
        if (joined) continue;
        if (i - begin >= kFewest) spans.push_back({dropouts[begin].from - kAround, dropouts[i - 1].to + kAround});
        begin = i;
    }
    return spans;
}

} // namespace stillwire
