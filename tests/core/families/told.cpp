// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/told.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace stillwire::families {
namespace {

// Where findings list plateaus, these; until they do, the level of each stay that is quiet or wiggled at.
template <typename F> std::vector<ToldPlateau> plateausOf(const F& findings) {
    std::vector<ToldPlateau> plateaus;
    if constexpr (requires { findings.plateaus; }) {
        for (const auto& p : findings.plateaus) plateaus.push_back({{toSeconds(p.from), toSeconds(p.to)}, p.level_V});
    } else {
        bool travelled = true;
        for (const auto& p : findings.phases) {
            travelled = travelled || p.kind == PhaseKind::travel;
            if ((p.kind != PhaseKind::quiet && p.kind != PhaseKind::wiggle) || !p.level_V) continue;
            const Span when{toSeconds(p.from), toSeconds(p.to)};
            // One stay, told in parts because somebody wiggled at it or the meter was blind.
            const bool goesOn = !travelled && plateaus.back().level_V == *p.level_V;
            travelled = false;
            if (goesOn)
                plateaus.back().when.to_s = when.to_s;
            else
                plateaus.push_back({when, *p.level_V});
        }
    }
    return plateaus;
}

template <typename Value> Value orEnd(Result<Value> result) {
    if (result) return *std::move(result);
    std::fprintf(stderr, "the maker wrote a sheet or a meter that nobody can read\n");
    std::abort();
}

} // namespace

Told toldBy(const Findings& findings) {
    Told told;
    for (const Phase& p : findings.phases)
        told.phases.push_back({p.kind, {toSeconds(p.from), toSeconds(p.to)}, p.level_V.value_or(0)});
    for (const Excursion& e : findings.excursions)
        if (e.kind == ExcursionKind::dropout)
            told.dropouts.push_back({{toSeconds(e.from), toSeconds(e.to)}, e.readings, e.held_V, e.extreme_V});
    for (const LevelJump& j : findings.jumps) told.jumps_s.push_back(toSeconds(j.at));
    for (const BlindSpan& b : findings.blind) told.blind.push_back({toSeconds(b.from), toSeconds(b.to)});
    told.plateaus = plateausOf(findings);
    return told;
}

ExaminationSetup setupFor(const Trace& trace) {
    ExaminationSetup setup;
    setup.sheet = orEnd(parseSheet(trace.sheetToml, "made sheet"));
    setup.meter = orEnd(parseMeterTraits(trace.meterToml, "made meter"));
    return setup;
}

Findings examineInBatches(const Trace& trace, const ExaminationSetup& setup, std::size_t most) {
    Examination examination(setup);
    std::size_t at = 0;
    const auto pushTo = [&](std::size_t end) {
        while (at < end) {
            const std::size_t count = std::min(most, end - at);
            examination.push(&trace.readings[at], count);
            at += count;
        }
    };
    for (const auto& [before, mark] : trace.marks) {
        pushTo(before);
        examination.push(mark);
    }
    pushTo(trace.readings.size());
    return examination.findings();
}

Findings examineOneByOne(const Trace& trace, const ExaminationSetup& setup, std::size_t askEvery) {
    Examination examination(setup);
    std::size_t mark = 0;
    for (std::size_t i = 0; i <= trace.readings.size(); ++i) {
        for (; mark < trace.marks.size() && trace.marks[mark].first == i; ++mark)
            examination.push(trace.marks[mark].second);
        if (i == trace.readings.size()) break;
        examination.push(trace.readings[i]);
        // Whoever looks on changes nothing.
        if (askEvery > 0 && i % askEvery == 0) (void)examination.findings();
    }
    return examination.findings();
}

} // namespace stillwire::families
