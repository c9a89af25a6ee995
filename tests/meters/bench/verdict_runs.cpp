// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/meters/bench/verdict_runs.hpp"

#include "core/examination_capture.hpp"
#include "tests/meters/bench/event_differences.hpp"

#include <cstdio>
#include <cstdlib>

namespace stillwire::test {
namespace {

// Poses lost to a meter that changed its range, or releases over before its display had settled.
bool couldNotSee(const Findings& f) {
    int blind = 0;
    for (const StepCoverage& step : f.steps) blind += step.blindPoses;
    int settled = 0;
    for (const Visit& visit : f.positions.front().visits) settled += visit.step == Step::release ? 1 : 0;
    return blind >= 5 || settled < 3;
}

std::string whatItSaid(const Findings& f, const Signable& wanted, const Simulation& run) {
    std::string text = decisionName(f.verdict.decision);
    text += ", wanted " + std::string(decisionName(wanted.right)) + ": ";
    return text + f.verdict.reasons.front().says.english() + differences(f, run);
}

void add(VerdictTally& tally, const Signable& wanted, const Simulation& run, const std::string& label) {
    const Findings f = judged(run);
    const Decision said = f.verdict.decision;
    ++tally.all;
    if (said == Decision::keep && showed(run) && wanted.accepted.count(said) == 0) ++tally.keptInSight;
    if (wanted.accepted.count(said) > 0) {
        ++tally.right;
        tally.strict += said == wanted.right;
        tally.unseen += said == Decision::keep && run.truth.verdict != Decision::keep;
        if (run.truth.causes.size() > 1 && showed(run) && said != Decision::cannotTell) {
            ++tally.rankable;
            tally.ranked += f.verdict.causes.size() > 1;
        }
        return;
    }
    if (wanted.inTheDark.count(said) > 0) {
        ++tally.right;
        ++tally.dark;
        return;
    }
    if (said == Decision::cannotTell && couldNotSee(f)) {
        ++tally.right;
        ++tally.couldNot;
        return;
    }
    ++tally.wrong[decisionName(said)];
    const std::string wrong = label + ": " + whatItSaid(f, wanted, run);
    if (tally.firstWrong.empty()) tally.firstWrong = wrong;
    if (std::getenv("STILLWIRE_MISSES")) std::printf("  miss %s\n", wrong.c_str());
}

} // namespace

Findings judged(const Simulation& simulation) {
    const Capture& capture = simulation.capture;
    Examination examination(*examinationSetup(capture.header, {}, capture.readings, "simulation"));
    pushRows(capture, examination);
    return examination.findings();
}

void VerdictTally::add(const VerdictTally& other) {
    all += other.all;
    right += other.right;
    strict += other.strict;
    unseen += other.unseen;
    dark += other.dark;
    couldNot += other.couldNot;
    keptInSight += other.keptInSight;
    ranked += other.ranked;
    rankable += other.rankable;
    for (const auto& [decision, count] : other.wrong) wrong[decision] += count;
    if (firstWrong.empty()) firstWrong = other.firstWrong;
}

VerdictTally tallyVerdicts(const BenchScript& script, const Sheet& sheet, int seeds) {
    VerdictTally tally;
    for (int seed = 1; seed <= seeds; ++seed) {
        const MeterKind meter = kMeterKinds[seed % 5];
        BenchScript one = script;
        one.setup.meter = meterQuirks(meter);
        const Simulation run = benchRun(one, sheet, static_cast<std::uint64_t>(seed), meter);
        add(tally, signable(run, one, sheet), run, std::string(meterName(meter)) + " " + std::to_string(seed));
    }
    return tally;
}

void print(const std::string& name, const VerdictTally& tally) {
    std::printf("%-46s %5d of %5d right", name.c_str(), tally.right, tally.all);
    if (tally.strict < tally.right) std::printf(", %d by the row order", tally.strict);
    if (tally.unseen > 0) std::printf(", %d never showed", tally.unseen);
    if (tally.dark > 0) std::printf(", %d by what the meter left dark", tally.dark);
    if (tally.couldNot > 0) std::printf(", %d could not see", tally.couldNot);
    if (tally.rankable > 0) std::printf("; %d of %d list both causes", tally.ranked, tally.rankable);
    for (const auto& [decision, count] : tally.wrong) std::printf("; wrong: %s %d", decision.c_str(), count);
    std::printf("%s%s\n", tally.firstWrong.empty() ? "" : "  e.g. ", tally.firstWrong.c_str());
    std::fflush(stdout);
}

} // namespace stillwire::test
