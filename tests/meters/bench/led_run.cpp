// SPDX-License-Identifier: GPL-3.0-or-later
// Watching a guided run from outside: only what it says counts, and what was true in the end.
#include "tests/meters/bench/led_run.hpp"

#include "tests/meters/bench/guided.hpp"

namespace stillwire::led {
namespace {

std::string whyOf(const Verdict& verdict) {
    std::string out = verdict.reasons.empty() ? "" : verdict.reasons.front().says.english();
    if (!verdict.condition.empty()) out += " [" + verdict.condition.english() + "]";
    return out;
}

std::string stepsOf(const std::vector<Mark>& marks) {
    std::string out;
    for (const Mark& mark : marks) {
        const auto* opened = mark.as<StepMark>();
        if (!opened && !mark.as<SkipMark>() && !mark.as<UndoMark>() && !mark.as<TurnMark>()) continue;
        out += (out.empty() ? "" : " ") + (opened ? std::string(stepName(opened->step)) : mark.text());
    }
    return out;
}

} // namespace

std::string subjectName(const Subject& subject) {
    return "--fault " + (subject.fault ? std::string(faultName(*subject.fault)) : "good") + " --meter " +
           meterName(subject.meter) + " --seed " + std::to_string(subject.seed);
}

LedRun ledRun(const Subject& subject) {
    LedRun out;
    out.subject = subject;
    std::optional<Decision> standing;
    const auto watch = [&](Time now, const Findings& findings) {
        const Decision decision = findings.verdict.decision;
        if (standing && decision != *standing) out.stands_s = toSeconds(now);
        standing = decision;
        if (decision == Decision::replace && !out.replace) out.replace = {toSeconds(now), whyOf(findings.verdict)};
    };
    const test::Guided run =
        test::guide({.fault = subject.fault, .meter = subject.meter, .seed = subject.seed, .judged = watch});
    out.said = run.findings.verdict.decision;
    out.wanted = run.truth.verdict;
    out.why = whyOf(run.findings.verdict);
    out.steps = stepsOf(run.marks);
    out.finished = run.finished;
    return out;
}

} // namespace stillwire::led
