// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/support/fake_session.hpp"

#include "core/procedure/activity.hpp"
#include "core/procedure/texts.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <thread>

namespace stillwire::test {
namespace {

constexpr double kInterval_s = 0.33, kEnd_s = 75, kBlindFrom_s = 25.3, kBlindTo_s = 27.4;

struct Dip {
    double at_s;
    int readings;
    double low_V;
};
constexpr Dip kDips[] = {{33.0, 2, 2.70}, {41.9, 1, 2.70}, {49.2, 2, 2.21}, {55.6, 2, 2.70},
                         {61.5, 1, 2.90}, {67.1, 1, 1.98}, {74.6, 2, 1.98}};

Sentence sentence(const char* pattern, std::vector<Argument> arguments = {}) {
    return {pattern, std::move(arguments)};
}

void drawTrace(SessionSnapshot& snapshot, Findings& f) {
    Trace trace;
    unsigned noise = 7;
    for (int i = 0; i * kInterval_s <= kEnd_s; ++i) {
        const double t = i * kInterval_s;
        if (t > kBlindFrom_s && t < kBlindTo_s) continue;
        noise = noise * 1664525U + 1013904223U;
        double v = 4.118 + 0.006 * (static_cast<double>(noise >> 16U) / 65536.0 - 0.5);
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
    f.meter = {kInterval_s, 0.1, 0.001, 4.118, 0.002, 0.02};
    f.state = WireState::dropped;
    f.blind = {{fromSeconds(kBlindFrom_s), fromSeconds(kBlindTo_s), BlindCause::autorange}};
    f.phases = {{PhaseKind::quiet, Time{0}, fromSeconds(kBlindFrom_s), 4.118, 0.002},
                {PhaseKind::blind, fromSeconds(kBlindFrom_s), fromSeconds(kBlindTo_s), {}, {}},
                {PhaseKind::quiet, fromSeconds(kBlindTo_s), fromSeconds(30), 4.118, 0.002},
                {PhaseKind::wiggle, fromSeconds(30), fromSeconds(kEnd_s), 4.118, 0.002}};
    f.machine.points.push_back({Time{0}, 1.0});
    int pose = 3;
    for (const Dip& dip : kDips) {
        Excursion e;
        e.from = fromSeconds(dip.at_s);
        e.to = fromSeconds(dip.at_s + (dip.readings - 1) * kInterval_s);
        e.held_V = 4.118;
        e.extreme_V = dip.low_V;
        e.readings = dip.readings;
        e.step = Step::wiggleShaft;
        e.pose = pose % 2 == 0 ? "right" : "left";
        e.poseIndex = pose += 2;
        f.excursions.push_back(e);
        f.machine.points.push_back({e.from, (dip.low_V - 1.1) / 2.5});
        f.machine.points.push_back({e.to + fromSeconds(kInterval_s), 1.0});
    }
    f.excursions.back().open = true;
    f.machine.stopsPossible = 7;
    WireLevel reference, ground;
    reference.level_V = 4.98;
    ground.level_V = 0.02;
    reference.conformance = ground.conformance = Conformance::inside;
    f.reference = reference;
    f.ground = ground;
    StepCoverage shaft;
    shaft.poses = 23;
    shaft.dropouts = 7;
    shaft.posesFor95 = 11;
    shaft.shortestVisible_s = 0.4;
    f.steps = {shaft};
    f.wiggle = shaft;
    f.verdict.decision = Decision::replace;
    f.verdict.reasons = {
        sentence("The signal dropped out in %1 of %2 of the shaft, the pedal still: %3 went to %4 or further.",
                 {"7", Sentence{"%1 poses", {"23"}}, "4.12 V", "1.98 V"})};
    f.verdict.next = {
        sentence("Hold the connector still and repeat the wiggle; then watch the reference and the ground wire under "
                 "the same wiggle.")};
    f.verdict.notTested = {sentence("The sweep was not done.")};
}

void sayStep(Prompt& p, Step step) {
    const StepText& text = stepText(step);
    p.step = step;
    p.title = sentence(text.title);
    p.cautions.clear();
    for (const char* caution : text.cautions) p.cautions.push_back(sentence(caution));
    p.instruction = sentence(text.instruction);
    p.detail = {};
    p.why = sentence(text.why);
    p.drawing = stepName(step);
}

// The path as it stands in this step; an offered step stands behind the wiggle that called for it.
void walkTo(SessionSnapshot& s, Step now) {
    std::vector<Step> steps{Step::hookUp,        Step::reference, Step::ground,  Step::coldStart, Step::wiggleShaft,
                            Step::wiggleHarness, Step::fullPress, Step::sweep,   Step::release,   Step::lift,
                            Step::warmRepeat,    Step::adjust,    Step::confirm, Step::putBack};
    auto at = std::find(steps.begin(), steps.end(), now);
    if (at == steps.end()) at = steps.insert(std::find(steps.begin(), steps.end(), Step::wiggleHarness), now);
    s.path.clear();
    for (auto step = steps.begin(); step != steps.end(); ++step)
        s.path.push_back({*step, step < at    ? StepOutcome::done
                                 : step == at ? StepOutcome::current
                                              : StepOutcome::waiting});
    s.prompt.number = static_cast<int>(at - steps.begin()) + 1;
    s.prompt.of = static_cast<int>(steps.size());
}

// What the meter shows on the wire that the step reads.
void readWire(SessionSnapshot& s, Wire wire) {
    s.prompt.wire = wire;
    if (wire != Wire::reference && wire != Wire::ground) return;
    auto findings = std::make_shared<Findings>(*s.findings);
    findings->meter.held_V = s.lastVolts_V = wire == Wire::reference ? 4.98 : 0.02;
    s.findings = findings;
}

void fillPrompt(SessionSnapshot& s) {
    Prompt& p = s.prompt;
    sayStep(p, Step::wiggleShaft);
    walkTo(s, Step::wiggleShaft);
    p.wanted = sentence("%1 more poses", {"11"});
    p.progress = 0.68;
    p.pose = sentence("hold left");
    p.poseFor_s = 1.4;
    p.poseSince = fromSeconds(kEnd_s - 0.6);
    p.position = "deep";
    p.wire = Wire::signal;
    s.marks = {
        {Time{0}, "step:cold-start"}, {fromSeconds(30), "step:wiggle-shaft"}, {fromSeconds(74.4), "pose:left"}};
}

} // namespace

Result<Opened> FakeDoors::open(const Way& way) {
    opened.push_back(way);
    if (way.path.endsWith(QStringLiteral("broken.csv")))
        return Error{Error::Kind::badInput,
                     "broken.csv",
                     12,
                     {"times go back from %1 s to %2 s", {"3.2", "1.1"}},
                     "remove the row or split the file there"};
    Opened made;
    made.session = std::make_unique<FakeSession>(way.kind == Way::Kind::capture ? replayMoment() : wiggleMoment());
    made.sheet = leverSheet();
    made.name = sayName("Depth lever, fretting connector");
    return made;
}

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
    if (state == WireState::steady || state == WireState::moving) snapshot->lastVolts_V = 4.118;
    if (state == WireState::jumped) {
        findings->jumps = {{fromSeconds(70), 4.118, 3.62, Step::wiggleShaft, -1}};
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

std::shared_ptr<SessionSnapshot> hookUpMoment() {
    auto snapshot = moment(WireState::silent);
    snapshot->trace = TraceSnapshot{};
    snapshot->now = fromSeconds(3);
    snapshot->marks.clear();
    auto findings = std::make_shared<Findings>();
    findings->verdict.decision = Decision::cannotTell;
    findings->verdict.reasons = {sentence("The reference was not measured.")};
    snapshot->findings = findings;
    Procedure procedure(*leverSheet(), MeterTraits{}, {});
    procedure.start(Time{0});
    snapshot->prompt = procedure.prompt();
    snapshot->path = procedure.path();
    return snapshot;
}

std::shared_ptr<SessionSnapshot> adjustMoment() {
    auto snapshot = moment(WireState::steady);
    auto findings = std::make_shared<Findings>(*snapshot->findings);
    findings->reference.reset(); // levels as shown: the figures below are easy to follow
    findings->ground.reset();
    auto visit = [](double volts_V, Step step) { return Visit{{}, {}, volts_V, volts_V, 0.004, 6, false, step}; };
    PositionLevel raised, lowered;
    raised.name = "lifted";
    raised.window_V = {0.60, 1.00};
    raised.visits = {visit(0.95, Step::fullPress)};
    lowered.name = "deep";
    lowered.window_V = {3.90, 4.40};
    lowered.visits = {visit(4.37, Step::release), visit(4.27, Step::adjust)};
    findings->positions = {raised, lowered};
    findings->adjustment.wanted = findings->adjustment.feasible = true;
    findings->adjustment.share = {{"lifted", 0.5}, {"deep", 1.0}};
    findings->adjustment.voltsPerTurn_V = -0.05;
    findings->adjustment.turns = 2;
    snapshot->lastVolts_V = findings->meter.held_V = 4.27;
    Prompt& p = snapshot->prompt;
    sayStep(p, Step::adjust);
    walkTo(*snapshot, Step::adjust);
    p.instruction = sentence(phrases::kTurnTo, {"4.150 V"});
    p.pose = {};
    p.poseFor_s.reset();
    p.wanted = sentence(phrases::kOffBy, {"0.120 V"});
    p.aim_V = 4.15;
    p.aimWithin_V = 0.04;
    snapshot->findings = findings;
    return snapshot;
}

std::shared_ptr<SessionSnapshot> stepMoment(Step step, bool movingLead) {
    auto snapshot = step == Step::adjust ? adjustMoment() : moment(WireState::steady);
    Prompt& p = snapshot->prompt;
    sayStep(p, step);
    walkTo(*snapshot, step);
    readWire(*snapshot, wireOf(step));
    // The cautions of a sheet stand behind the step's own.
    p.cautions.push_back({phrases::kVerbatim, {byName("Drum down on blocks before a hand goes near it.")}});
    p.cautions.push_back(
        {phrases::kVerbatim, {byName("Release the lift's pressure; it can fall with the engine off.")}});
    const bool poses = step == Step::wiggleShaft || step == Step::wiggleHarness || step == Step::warmRepeat ||
                       step == Step::wiggleReference || step == Step::wiggleGround;
    if (!poses) {
        p.pose = p.wanted = {};
        p.poseFor_s.reset();
    }
    if (step == Step::reference || step == Step::ground) p.wanted = sentence(phrases::kMoreReadings);
    if (step == Step::wiggleHarness) {
        p.detail = sentence(phrases::kSectionsAre);
        p.pose = sentence(phrases::kSectionLeft, {"3"});
    }
    if (step == Step::coldStart) p.wanted = phrases::kSeconds(28);
    if (step == Step::fullPress || step == Step::confirm) {
        p.instruction = sentence(phrases::kLetGoTo, {byName("lifted")});
        p.wanted = phrases::kPlaces(2);
    }
    if (step == Step::sweep) p.detail = sentence(phrases::kSweepSlower);
    if (step == Step::release) p.wanted = phrases::kReleases(9);
    if (step == Step::warmRepeat) p.detail = sentence(phrases::kWarmWait, {"10"});
    if (step == Step::adjust) p.instruction = sentence(phrases::kTurnTo, {"4.150 V"});
    if (step == Step::putBack) p.instruction = sentence(phrases::kAfterKeyOff);
    if (step == Step::lift)
        p.choices = {{Command::liftOnStop, {phrases::kOnStop, {}}}, {Command::liftOffStop, {phrases::kOffStop, {}}}};
    if (movingLead) {
        p.instruction = sentence(p.wire == Wire::reference ? phrases::kMoveLeadReference
                                 : p.wire == Wire::ground  ? phrases::kMoveLeadGround
                                                           : phrases::kMoveLeadSignal);
        p.detail = sentence(phrases::kSayWhenThere);
        p.wanted = p.pose = {};
        p.movingLead = true;
    }
    return snapshot;
}

std::shared_ptr<SessionSnapshot> questionMoment(Question question) {
    auto snapshot = stepMoment(question == Question::badReference ? Step::reference
                               : question == Question::badGround  ? Step::ground
                                                                  : Step::wiggleShaft);
    Prompt& p = snapshot->prompt;
    p.offer = question == Question::badReference ? sentence(phrases::kReferenceBad, {"4.412 V"})
              : question == Question::badGround  ? sentence(phrases::kGroundBad, {"0.312 V"})
                                                 : sentence(phrases::kOfferSupplyWires);
    p.instruction = p.offer;
    p.detail = p.wanted = {};
    const bool supply = question == Question::supplyWires;
    p.choices = {{Command::offerYes, sentence(supply ? phrases::kYesLook : phrases::kEndHere)},
                 {Command::offerNo, sentence(supply ? phrases::kNoGoOn : phrases::kGoOnAnyway)}};
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

std::vector<PortFinding> FakeDoors::findMeters(const std::function<void(const FindProgress&)>& told,
                                               const std::stop_token& stop) {
    told({.port = "/dev/ttyUSB0", .link = {}, .asking = false, .step = 1, .of = 4, .bytes = 0});
    while (endless && !stop.stop_requested()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    return found;
}

} // namespace stillwire::test
