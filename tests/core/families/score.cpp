// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/score.hpp"

#include "tests/core/families/truth.hpp"

#include <algorithm>
#include <cstdarg>
#include <cstdio>

namespace stillwire::families {

void Score::add(const Score& other) {
    traces += other.traces;
    hours += other.hours;
    readings += other.readings;
    examine_s += other.examine_s;
    seen.add(other.seen);
    bunched.add(other.bunched);
    moves.add(other.moves);
    sweeps.add(other.sweeps);
    wiggles.add(other.wiggles);
    calm.add(other.calm);
    plateaus.add(other.plateaus);
    blind.add(other.blind);
    falseFlags += other.falseFlags;
    falseTravel += other.falseTravel;
    falseJumps += other.falseJumps;
    falseWiggles += other.falseWiggles;
    falseBlind += other.falseBlind;
    lawsBroken += other.lawsBroken;
}

double Score::events() const { return seen.of + moves.of + wiggles.of + calm.of + plateaus.of + blind.of; }

std::string text(const char* pattern, ...) {
    char buffer[400];
    va_list values;
    va_start(values, pattern);
    std::vsnprintf(buffer, sizeof buffer, pattern, values);
    va_end(values);
    return buffer;
}

const char* word(PhaseKind kind) {
    switch (kind) {
    case PhaseKind::quiet: return "quiet";
    case PhaseKind::wiggle: return "wiggle";
    case PhaseKind::travel: return "travel";
    case PhaseKind::blind: return "blind";
    }
    return "?";
}

std::string phasesAround(const Told& told, double from_s, double to_s) {
    std::string all;
    int said = 0;
    for (const ToldPhase& p : told.phases) {
        if (p.when.to_s < from_s || p.when.from_s > to_s) continue;
        if (++said > 8) {
            all += " …";
            break;
        }
        all += text("%s%s %.2f..%.2f", all.empty() ? "" : ", ", word(p.kind), p.when.from_s, p.when.to_s);
        if (p.level_V != 0) all += text(" at %.3f V", p.level_V);
    }
    for (const double at_s : told.jumps_s)
        if (at_s >= from_s && at_s <= to_s) all += text("; a jump at %.2f", at_s);
    return all.empty() ? "no phase" : all;
}

double overlap_s(const Told& told, PhaseKind kind, Span with) {
    double sum_s = 0;
    for (const ToldPhase& p : told.phases)
        if (p.kind == kind)
            sum_s += std::max(0.0, std::min(p.when.to_s, with.to_s) - std::max(p.when.from_s, with.from_s));
    return sum_s;
}

void scoreBlind(const Trace& trace, const Told& told, Score& into, Misses misses) {
    for (const Span& truth : trace.truth.blind) {
        double covered_s = 0;
        for (const Span& b : told.blind)
            covered_s += std::max(0.0, std::min(b.to_s, truth.to_s) - std::max(b.from_s, truth.from_s));
        // A row without a number can stand in the middle of the silence, which then begins there.
        const bool found = covered_s >= 0.45 * truth.length_s();
        into.blind.add(found);
        if (!found && misses)
            misses->push_back({"blind", truth.from_s, text("blind %.2f..%.2f", truth.from_s, truth.to_s),
                               phasesAround(told, truth.from_s, truth.to_s)});
    }
    for (const Span& b : told.blind) {
        bool founded = false;
        for (const Span& p : trace.truth.blindPossible)
            founded = founded || (p.from_s <= b.to_s && b.from_s <= p.to_s);
        if (founded) continue;
        ++into.falseBlind;
        if (misses)
            misses->push_back(
                {"false-blind", b.from_s, "readings without a hole", text("blind %.2f..%.2f", b.from_s, b.to_s)});
    }
}

void scoreLaws(const Trace& trace, const Told& told, Score& into, Misses misses) {
    const auto broken = [&](double at_s, std::string expected, std::string said) {
        ++into.lawsBroken;
        if (misses) misses->push_back({"law", at_s, std::move(expected), std::move(said)});
    };
    if (told.phases.empty() || trace.readings.empty()) {
        broken(0, "phases that tile the capture", "no phase at all");
        return;
    }
    const double first_s = toSeconds(trace.readings.front().time), last_s = toSeconds(trace.readings.back().time);
    constexpr double kMicrosecond_s = 1.5e-6;
    if (told.phases.front().when.from_s > first_s + kMicrosecond_s)
        broken(first_s, "the first phase begins with the first reading", phasesAround(told, first_s, first_s + 5));
    if (told.phases.back().when.to_s < last_s - kMicrosecond_s)
        broken(last_s, "the last phase ends with the last reading", phasesAround(told, last_s - 5, last_s));
    for (std::size_t i = 0; i < told.phases.size(); ++i) {
        const Span& p = told.phases[i].when;
        if (p.to_s < p.from_s) broken(p.from_s, "a phase ends after it begins", text("%.6f..%.6f", p.from_s, p.to_s));
        if (i == 0) continue;
        const double before_s = told.phases[i - 1].when.to_s;
        if (p.from_s - before_s > kMicrosecond_s || before_s - p.from_s > kMicrosecond_s)
            broken(p.from_s, "each phase begins where the one before ends",
                   text("one ends at %.6f, the next begins at %.6f", before_s, p.from_s));
    }
}

Score score(const Trace& trace, const Told& told, Misses misses) {
    Score got;
    got.traces = 1;
    got.hours = trace.truth.duration_s / 3600;
    got.readings = static_cast<double>(trace.readings.size());
    scoreDropouts(trace, told, got, misses);
    scoreMoves(trace, told, got, misses);
    scoreStays(trace, told, got, misses);
    scoreBlind(trace, told, got, misses);
    scoreLaws(trace, told, got, misses);
    if (misses)
        std::stable_sort(misses->begin(), misses->end(),
                         [](const Miss& a, const Miss& b) { return a.at_s < b.at_s; });
    return got;
}

} // namespace stillwire::families
