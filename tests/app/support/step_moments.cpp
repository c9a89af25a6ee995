// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/activity.hpp"
#include "tests/app/support/moments.hpp"

#include <algorithm>

namespace stillwire::test {
namespace {

// What the meter shows on the wire that the step reads.
void readWire(SessionSnapshot& s, Wire wire) {
    s.prompt.wire = wire;
    if (wire != Wire::reference && wire != Wire::ground) return;
    auto findings = std::make_shared<Findings>(*s.findings);
    findings->meter.held_V = s.lastVolts_V = wire == Wire::reference ? 4.98 : 0.02;
    s.findings = findings;
}

} // namespace

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

std::shared_ptr<SessionSnapshot> hookUpMoment() {
    auto snapshot = moment(WireState::silent);
    snapshot->trace = TraceSnapshot{};
    snapshot->now = fromSeconds(3);
    snapshot->marks.clear();
    auto findings = std::make_shared<Findings>();
    findings->verdict.decision = Decision::cannotTell;
    findings->verdict.reasons = {{ReasonKind::missing, "The reference was not measured."}};
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
    auto visit = [](double volts_V, Step step) {
        return Visit{{}, {}, volts_V, volts_V, 0.004, 6, false, step, std::nullopt};
    };
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
    p.asked.reset();
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
    readWire(*snapshot, traits(step).lead);
    // The cautions of a sheet stand behind the step's own.
    p.cautions.push_back({phrases::kVerbatim, {byName("Drum down on blocks before a hand goes near it.")}});
    p.cautions.push_back(
        {phrases::kVerbatim, {byName("Release the lift's pressure; it can fall with the engine off.")}});
    if (!traits(step).wiggles()) {
        p.pose = p.wanted = {};
        p.asked.reset();
    }
    if (step == Step::reference || step == Step::ground) p.wanted = sentence(phrases::kMoreReadings);
    if (step == Step::wiggleHarness) {
        p.detail = sentence(phrases::kSectionsAre);
        p.pose = sentence(phrases::kSectionLeft, {"3"});
        p.asked->place = PosePlace::at(Side::left, 3);
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
    auto snapshot = stepMoment(question == Question::badReference ? Step::reference : Step::ground);
    Prompt& p = snapshot->prompt;
    p.question = question;
    p.instruction = question == Question::badReference ? sentence(phrases::kReferenceBad, {"4.412 V"})
                                                       : sentence(phrases::kGroundBad, {"0.312 V"});
    p.detail = p.wanted = {};
    p.choices = {{Command::offerYes, sentence(phrases::kEndHere)},
                 {Command::offerNo, sentence(phrases::kGoOnAnyway)}};
    return snapshot;
}

} // namespace stillwire::test
