// SPDX-License-Identifier: GPL-3.0-or-later
// A movement is one travel phase whose edges stand within two intervals of where it begins and ends, the time apart
// in which no meter could show it yet. Where the stay between two is too short to be one, one phase may cover both.
#include "tests/core/families/score.hpp"
#include "tests/core/families/truth.hpp"

#include <algorithm>

namespace stillwire::families {
namespace {

class Edges {
public:
    explicit Edges(const Meter& meter) : grace_s_(2 * meter.interval_s), slack_s_(meter.stampSlack_s()) {}
    // Coarse stamps are early (whole seconds) or late (bunches).
    [[nodiscard]] bool within(double told_s, const Span& window) const {
        constexpr double kRounding_s = 0.005;
        return told_s >= window.from_s - grace_s_ - slack_s_ - kRounding_s &&
               told_s <= window.to_s + grace_s_ + slack_s_ + kRounding_s;
    }
    [[nodiscard]] Span around(const TrueMove& m) const {
        return {m.begins.from_s - grace_s_ - slack_s_, m.ends.to_s + grace_s_ + slack_s_};
    }

private:
    double grace_s_, slack_s_;
};

// Travel phases, alone, and joined with the blind ones they touch: a change of range splits a movement.
struct Told1 {
    Span when;
    bool joined = false;
};
std::vector<Told1> candidates(const Told& told) {
    std::vector<Told1> all;
    const auto moving = [](const ToldPhase& p) { return p.kind == PhaseKind::travel || p.kind == PhaseKind::blind; };
    for (std::size_t i = 0; i < told.phases.size(); ++i) {
        bool travel = false;
        for (std::size_t j = i; j < told.phases.size() && moving(told.phases[j]); ++j) {
            travel = travel || told.phases[j].kind == PhaseKind::travel;
            if (travel) all.push_back({{told.phases[i].when.from_s, told.phases[j].when.to_s}, j > i});
        }
    }
    return all;
}

void scoreFound(const Trace& trace, const Told& told, Score& into, Misses misses) {
    const std::vector<TrueMove>& moves = trace.truth.moves;
    const Edges edges(trace.meter);
    std::vector<char> found(moves.size(), 0);
    for (const Told1& span : candidates(told)) {
        for (std::size_t i = 0; i < moves.size(); ++i) {
            if (!edges.within(span.when.from_s, moves[i].begins)) continue;
            bool blind = false;
            for (std::size_t j = i; j < moves.size(); ++j) {
                blind = blind || moves[j].partlyBlind;
                if (edges.within(span.when.to_s, moves[j].ends) && (!span.joined || blind))
                    std::fill(found.begin() + static_cast<std::ptrdiff_t>(i),
                              found.begin() + static_cast<std::ptrdiff_t>(j) + 1, char{1});
                if (!moves[j].joinsNext) break;
            }
        }
    }
    for (std::size_t i = 0; i < moves.size(); ++i) {
        if (!moves[i].scored) continue;
        into.moves.add(found[i] != 0);
        if (found[i] || !misses) continue;
        const TrueMove& m = moves[i];
        misses->push_back(
            {"move", m.move.from_s,
             text("%.3f to %.3f V in %.2f..%.2f s (edges may be told %.2f..%.2f and %.2f..%.2f, give or "
                  "take two intervals)%s",
                  m.move.from_V, m.move.to_V, m.move.from_s, m.move.to_s, m.begins.from_s, m.begins.to_s,
                  m.ends.from_s, m.ends.to_s, m.joinsNext ? ", may be joined with the next" : ""),
             phasesAround(told, m.move.from_s - 2, m.ends.to_s + 2)});
    }
}

void scoreSweeps(const Trace& trace, const Told& told, Score& into, Misses misses) {
    for (const TrueMove& m : trace.truth.moves) {
        if (!m.move.sweep || !m.scored) continue;
        double blind_s = 0;
        for (const Span& b : trace.truth.blindPossible)
            blind_s += std::max(0.0, std::min(b.to_s, m.shown.to_s) - std::max(b.from_s, m.shown.from_s));
        const double length_s = m.shown.length_s() - blind_s;
        if (length_s <= 0) continue;
        const double covered_s = std::min(length_s, overlap_s(told, PhaseKind::travel, m.shown));
        into.sweeps.add(Share{covered_s, length_s});
        if (covered_s < 0.98 * length_s && misses)
            misses->push_back({"sweep", m.shown.from_s,
                               text("travel from %.2f to %.2f s (%.3f to %.3f V)", m.shown.from_s, m.shown.to_s,
                                    m.move.from_V, m.move.to_V),
                               phasesAround(told, m.shown.from_s, m.shown.to_s)});
    }
}

void scoreFalse(const Trace& trace, const Told& told, Score& into, Misses misses) {
    const Edges edges(trace.meter);
    std::vector<Span> founded = trace.truth.unasked;
    const std::vector<TrueMove>& moves = trace.truth.moves;
    for (std::size_t i = 0; i < moves.size(); ++i) {
        founded.push_back(edges.around(moves[i]));
        if (moves[i].joinsNext) founded.push_back({moves[i].move.from_s, moves[i + 1].move.to_s});
    }
    const auto share_s = [&](Span s) {
        double most_s = -1; // -1: not even touched
        for (const Span& f : founded)
            if (f.from_s <= s.to_s && s.from_s <= f.to_s)
                most_s = std::max(most_s, std::min(f.to_s, s.to_s) - std::max(f.from_s, s.from_s));
        return most_s;
    };
    for (const ToldPhase& p : told.phases) {
        if (p.kind != PhaseKind::travel || share_s(p.when) >= 0.5 * p.when.length_s()) continue;
        // A long one over several movements and the stays between them is wrong too, but is missed above already.
        double inside_s = 0;
        for (const TrueMove& m : moves) inside_s += p.when.meets(m.move.from_s, m.move.to_s + 1e-6) ? 1 : 0;
        if (inside_s > 0) continue;
        ++into.falseTravel;
        if (misses)
            misses->push_back(
                {"false-travel", p.when.from_s, "no movement here", phasesAround(told, p.when.from_s, p.when.to_s)});
    }
    for (const double at_s : told.jumps_s) {
        if (share_s({at_s, at_s}) >= 0) continue;
        ++into.falseJumps;
        if (misses) misses->push_back({"false-jump", at_s, "no movement here", text("a jump at %.2f s", at_s)});
    }
}

} // namespace

void scoreMoves(const Trace& trace, const Told& told, Score& into, Misses misses) {
    scoreFound(trace, told, into, misses);
    scoreSweeps(trace, told, into, misses);
    scoreFalse(trace, told, into, misses);
}

} // namespace stillwire::families
