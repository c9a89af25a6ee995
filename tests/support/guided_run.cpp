// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/guided_run.hpp"

namespace stillwire::test {

TraceMaker guided(const GuidedRun& run, std::uint64_t seed, MakerMeter meter) {
    TraceMaker trace(meter, seed);
    trace.set(run.cold_V.value_or(run.rest_V));
    trace.guidedStart(run.reference_V, run.ground_V);
    if (run.cold_V) {
        trace.set(run.rest_V);
        trace.hold(5);
    }
    trace.wiggle("wiggle-shaft", "", run.poses, run.shaftEvery, run.depth_V, run.duration_s, run.play_V);
    trace.wiggle("wiggle-harness", "section-1/", run.poses, run.harnessEvery, run.depth_V, run.duration_s);
    trace.mark("step:full-press");
    trace.hold(1);
    trace.press("pressed", run.pressed_V, 5);
    trace.press("released", run.rest_V);
    trace.mark("step:release");
    for (const double back_V : run.returns_V.empty() ? std::vector<double>(3, run.rest_V) : run.returns_V) {
        trace.press("pressed", run.pressed_V);
        trace.press("released", back_V);
    }
    if (!run.arm.empty()) {
        trace.mark("step:lift");
        trace.hold(1);
        trace.mark("arm:" + run.arm);
        trace.hold(1);
    }
    trace.mark("step:end");
    return trace;
}

std::string whatItSaid(const Findings& f) {
    std::string text = decisionName(f.verdict.decision);
    for (const auto& reason : f.verdict.reasons) text += "\n  " + reason.says.english();
    for (const Excursion& e : f.excursions)
        text += "\n  excursion " + plain(toSeconds(e.from), 2) + " " + volts(e.held_V, 3) + " to " +
                volts(e.extreme_V, 3) + (e.kind == ExcursionKind::play ? " play" : "") + " " +
                std::string(e.step ? stepName(*e.step) : "none");
    return text;
}

} // namespace stillwire::test
