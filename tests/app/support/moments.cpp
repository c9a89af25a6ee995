// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/support/moments.hpp"

#include <cmath>

namespace stillwire::test {
namespace {

constexpr double kInterval_s = 0.33, kEnd_s = 75, kBlindFrom_s = 25.3, kBlindTo_s = 27.4;

struct Dip {
    double at_s;
    int readings;
    double low_V;
};
constexpr Dip kDips[] = {{34.3, 1, 3.05}, {40.6, 2, 2.48}, {48.2, 1, 2.48},
                         {57.7, 2, 1.93}, {66.4, 1, 2.77}, {74.6, 2, 1.36}};

void drawTrace(SessionSnapshot& snapshot, Findings& f) {
    Trace trace;
    unsigned noise = 7;
    for (int i = 0; i * kInterval_s <= kEnd_s; ++i) {
        const double t = i * kInterval_s;
        if (t > kBlindFrom_s && t < kBlindTo_s) continue;
        noise = noise * 1664525U + 1013904223U;
        double v = 4.236 + 0.006 * (static_cast<double>(noise >> 16U) / 65536.0 - 0.5);
        for (const Dip& dip : kDips)
            if (t >= dip.at_s && t < dip.at_s + dip.readings * kInterval_s) v = dip.low_V;
        trace.append({fromSeconds(t), v});
        snapshot.lastVolts_V = v;
        ++f.readings;
    }
    snapshot.trace = trace.snapshot();
    snapshot.now = f.duration = fromSeconds(kEnd_s);
}

void fillFindings(Findings& f) {
    f.meter = {kInterval_s, 0.1, 0.001, 4.236, 0.002, 0.02};
    f.state = WireState::dropped;
    f.blind = {{fromSeconds(kBlindFrom_s), fromSeconds(kBlindTo_s), BlindCause::autorange}};
    f.phases = {{PhaseKind::quiet, Time{0}, fromSeconds(kBlindFrom_s), 4.236, 0.002},
                {PhaseKind::blind, fromSeconds(kBlindFrom_s), fromSeconds(kBlindTo_s), {}, {}},
                {PhaseKind::quiet, fromSeconds(kBlindTo_s), fromSeconds(30), 4.236, 0.002},
                {PhaseKind::wiggle, fromSeconds(30), fromSeconds(kEnd_s), 4.236, 0.002}};
    f.machine.points.push_back({Time{0}, 1.0});
    int pose = 3;
    for (const Dip& dip : kDips) {
        Excursion e;
        e.from = fromSeconds(dip.at_s);
        e.to = fromSeconds(dip.at_s + (dip.readings - 1) * kInterval_s);
        e.held_V = 4.236;
        e.extreme_V = dip.low_V;
        e.readings = dip.readings;
        e.step = Step::wiggleShaft;
        e.pose = PosePlace::at(pose % 2 == 0 ? Side::right : Side::left);
        e.poseIndex = pose += 2;
        f.excursions.push_back(e);
        f.machine.points.push_back({e.from, (dip.low_V - 1.1) / 2.5});
        f.machine.points.push_back({e.to + fromSeconds(kInterval_s), 1.0});
    }
    f.excursions.back().open = true;
    f.machine.stopsPossible = 6;
    WireLevel reference, ground;
    reference.level_V = 4.98;
    ground.level_V = 0.02;
    reference.conformance = ground.conformance = Conformance::inside;
    f.reference = reference;
    f.ground = ground;
    StepCoverage shaft;
    shaft.poses = 20;
    shaft.dropouts = 6;
    shaft.posesFor95 = 9;
    shaft.shortestVisible_s = 0.4;
    f.steps = {shaft};
    f.wiggle = shaft;
    f.verdict.decision = Decision::replace;
    f.verdict.reasons = {
        {ReasonKind::cause,
         {"The signal dropped out in %1 of %2 of the shaft, and came back: %3 went to %4 or further.",
          {"6", Sentence{"%1 poses", {"20"}}, "4.24 V", "1.36 V"}}}};
    f.verdict.next = {
        {NextKind::splitsCauses,
         "Hold the connector still and repeat the wiggle; then watch the reference and the ground wire under "
         "the same wiggle."}};
    f.verdict.notTested = {{NotTestedKind::step, "The sweep was not done."}};
}

void fillPrompt(SessionSnapshot& s) {
    Prompt& p = s.prompt;
    sayStep(p, Step::wiggleShaft);
    walkTo(s, Step::wiggleShaft);
    p.wanted = sentence("%1 more poses", {"9"});
    p.progress = 0.69;
    p.pose = sentence("hold left");
    p.asked = AskedPose{.place = PosePlace::at(Side::left), .for_s = 1.4, .since = fromSeconds(kEnd_s - 0.6)};
    p.position = "deep";
    p.wire = Wire::signal;
    s.marks = {
        {Time{0}, "step:cold-start"}, {fromSeconds(30), "step:wiggle-shaft"}, {fromSeconds(74.4), "pose:left"}};
}

} // namespace

std::shared_ptr<const Sheet> leverSheet() {
    Sheet sheet;
    sheet.name = "Depth lever";
    sheet.positions = {{"lifted", {0.60, 1.00}, 0.80, false}, {"deep", {3.90, 4.40}, 4.15, true}};
    sheet.driftAllowance_V = 0.05;
    sheet.drive = Drive{1.1, 3.6, 0.05};
    return std::make_shared<Sheet>(sheet);
}

std::shared_ptr<SessionSnapshot> wiggleMoment() {
    auto snapshot = std::make_shared<SessionSnapshot>();
    auto findings = std::make_shared<Findings>();
    snapshot->sequence = 1;
    snapshot->guided = true;
    snapshot->link = LinkState::live;
    drawTrace(*snapshot, *findings);
    fillFindings(*findings);
    fillPrompt(*snapshot);
    snapshot->findings = findings;
    return snapshot;
}

std::shared_ptr<SessionSnapshot> moment(WireState state) {
    auto snapshot = wiggleMoment();
    auto findings = std::make_shared<Findings>(*snapshot->findings);
    findings->state = state;
    findings->excursions.pop_back();
    if (state == WireState::steady || state == WireState::moving) snapshot->lastVolts_V = 4.236;
    if (state == WireState::jumped) {
        findings->jumps = {{fromSeconds(70), 4.236, 3.62, Step::wiggleShaft, -1}};
        snapshot->lastVolts_V = 3.62;
    }
    if (state == WireState::blind || state == WireState::silent) snapshot->lastVolts_V = std::nan("");
    if (state == WireState::overVoltage) {
        findings->overVoltage = true;
        snapshot->prompt.stopNow = true;
        snapshot->prompt.title = snapshot->prompt.instruction = sentence(phrases::kOverVoltage);
        snapshot->prompt.why = sentence(phrases::kOverVoltageWhy);
        snapshot->prompt.cautions = {sentence(stepText(Step::putBack).cautions.front())};
        snapshot->lastVolts_V = 11.84;
    }
    snapshot->findings = findings;
    return snapshot;
}

std::shared_ptr<SessionSnapshot> finishedMoment() {
    auto snapshot = moment(WireState::steady);
    snapshot->prompt = Prompt{};
    snapshot->prompt.title = snapshot->prompt.instruction = sentence(phrases::kFinished);
    snapshot->prompt.finished = true;
    for (PathEntry& entry : snapshot->path) entry.outcome = StepOutcome::done;
    for (const Step skipped : {Step::lift, Step::adjust, Step::confirm})
        for (PathEntry& entry : snapshot->path)
            if (entry.step == skipped) entry.outcome = StepOutcome::skipped;
    snapshot->capturePath = "/tmp/a-run.csv";
    return snapshot;
}

std::shared_ptr<SessionSnapshot> replayMoment() {
    auto snapshot = wiggleMoment();
    snapshot->guided = false;
    snapshot->prompt = Prompt{};
    snapshot->path.clear();
    snapshot->link = LinkState::ended;
    return snapshot;
}

} // namespace stillwire::test
