// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/procedure.hpp"

#include "core/procedure/activity.hpp"
#include "core/procedure/lead.hpp"
#include "core/procedure/path.hpp"
#include "core/procedure/texts.hpp"

#include <set>
#include <utility>

namespace stillwire {

namespace {

constexpr double kUndoFor_s = 10; // "back" this soon after a step ended means the step that ended
constexpr double kAskFor_s = 30;  // for an answer
constexpr int kRepeats = 2;       // of one step: what goes on missing is left for the verdict to say

} // namespace

struct Procedure::State {
    Sheet sheet;
    MeterTraits meter;
    ProcedureOptions options;
    Pace pace;
    Path path;
    Prompt prompt;

    enum class Mode { before, lead, step, asking, stopped, over } mode = Mode::before;
    std::unique_ptr<Activity> activity;
    LeadMove lead;
    Wire wire = Wire::none;
    Time keyOn{0}, enteredAt{0}, askedAt{0};
    bool keyIsOn = false, endedByEvidence = false;
    bool shaftFollowed = false, leadsFollowed = false; // by the steps that a first dropout asks for
    bool leadsFailed = false;                          // by the newest lead check but one
    bool armAsked = false;
    std::set<Step> declined; // ended by the person, or left out: not asked for again
    bool finishOffered = false;
    std::size_t readingsAtOpen = 0; // of the step
    Question question = Question::none;
    double outside_V = 0; // of a bad reference or ground
    Findings none;
    std::vector<Mark> marks;

    State(const Sheet& s, const MeterTraits& m, ProcedureOptions o) : sheet(s), meter(m), options(o), pace(o.seed) {}

    [[nodiscard]] Step step() const { return path.step(); }
    Bench bench(Time now, const Findings& findings) { return {sheet, meter, pace, keyOn, now, &findings, &marks}; }
    std::vector<Mark> taken() { return std::exchange(marks, {}); }

    void enter(std::size_t index, const Bench& bench) {
        path.go(index);
        enteredAt = bench.now;
        const Wire wanted = traits(step()).lead;
        if (wanted == Wire::none || wanted == wire || step() == Step::hookUp) return open(bench);
        mode = Mode::lead;
        wire = Wire::none; // it has left the one it was on
        // The lead is being moved: what the meter shows meanwhile belongs to no wire, and to no step.
        bench.mark(StepEndMark{});
        lead.begin(wanted, bench);
    }

    void open(const Bench& bench) {
        mode = Mode::step;
        if (traits(step()).lead != Wire::none) wire = traits(step()).lead;
        bench.mark(StepMark{step()});
        readingsAtOpen = bench.findings->readings;
        activity = makeActivity(path.entries()[path.at()], options);
        activity->begin(bench);
    }

    // The step is over; what comes next may depend on what it found.
    void leave(StepOutcome outcome, const Bench& bench) {
        path.set(outcome);
        const Findings& f = *bench.findings;
        if (step() == Step::hookUp && outcome == StepOutcome::done) {
            keyOn = bench.now;
            keyIsOn = true;
            bench.mark(KeyMark{true});
        }
        if (step() == Step::putBack) return finish(bench);
        if (outcome == StepOutcome::done) addWhatFollows(bench);
        if (askAgain(bench)) return enter(path.next(f), bench);
        if (outcome == StepOutcome::done && (step() == Step::reference || step() == Step::ground)) {
            const auto& level = step() == Step::reference ? f.reference : f.ground;
            if (level && level->conformance == Conformance::outside)
                return ask(step() == Step::reference ? Question::badReference : Question::badGround, bench.now,
                           level->level_V);
        }
        if (step() == Step::adjust && outcome == StepOutcome::skipped) path.dropConfirm();
        // A sensor that is kept, or only wants turning, has its last steps before it.
        const Verdict& verdict = f.verdict;
        const bool over =
            verdict.settled && verdict.decision != Decision::keep && verdict.decision != Decision::adjust;
        if (over && !std::exchange(finishOffered, true)) return ask(Question::finish, bench.now);
        enter(path.next(*bench.findings), bench);
    }

    // What tells a first dropout from its like comes at once, unasked: the connector, the leads, the supply wires.
    void addWhatFollows(const Bench& bench) {
        const auto dropped = [&](Step of) {
            const StepCoverage* c = bench.coverage(of);
            return c != nullptr && c->dropouts + c->jumps > 0;
        };
        if (step() == Step::leadCheck && bench.findings->leadsFailed) {
            shaftFollowed = leadsFollowed = false;
            leadsFailed = true;
            return;
        }
        if (step() == Step::leadCheck && std::exchange(leadsFailed, false)) { // the poses before do not count
            for (const Step again : {Step::wiggleHarness, Step::wiggleShaft}) {
                const StepCoverage* c = bench.coverage(again);
                if (path.wasDone(again) && c != nullptr && c->posesFor95.value_or(0) > 0) path.addNext({again});
            }
        }
        if (step() == Step::wiggleShaft && !shaftFollowed && dropped(Step::wiggleShaft)) {
            shaftFollowed = leadsFollowed = true;
            path.addAfterShaft();
        }
        if (step() == Step::wiggleHarness && !leadsFollowed && dropped(Step::wiggleHarness)) {
            leadsFollowed = true;
            path.addNext({Step::leadCheck});
        }
        if (step() == Step::wiggleShaft && bench.findings->holdTheArm && !std::exchange(armAsked, true))
            path.addNext({.step = Step::wiggleShaft, .armHeld = true});
    }

    // What would tell, and is missing: this step at once, any other once nothing else is left to be asked.
    bool askAgain(const Bench& bench) {
        const Verdict& verdict = bench.findings->verdict;
        if (verdict.decision != Decision::cannotTell) return false;
        const bool all = path.allAsked();
        bool any = false;
        for (auto again = verdict.again.rbegin(); again != verdict.again.rend(); ++again) {
            if ((*again != step() && !all) || declined.count(*again) > 0 || path.repeats(*again) >= kRepeats)
                continue;
            path.addNext({.step = *again,
                          .again = true,
                          .because = verdict.reasons.empty() ? Sentence{} : verdict.reasons.front().says});
            // A lead that may sit wrongly is clipped anew.
            if (traits(*again).lead == wire && traits(*again).wire != Wire::signal) wire = Wire::none;
            any = true;
        }
        return any;
    }

    void ask(Question what, Time now, double found_V = 0) {
        mode = Mode::asking;
        askedAt = now;
        question = what;
        outside_V = found_V;
    }
    void answer(bool end, const Bench& bench) { enter(end ? path.last() : path.next(*bench.findings), bench); }

    void undo(const Bench& bench) {
        std::size_t target = path.at();
        const bool fresh = endedByEvidence && toSeconds(bench.now - enteredAt) < kUndoFor_s;
        if (mode == Mode::step && !fresh) {
            bench.mark(UndoMark{step()});
        } else {
            if (mode != Mode::asking) {
                if (target == 0) return;
                path.set(StepOutcome::waiting);
                --target;
            }
            bench.mark(UndoMark{path.entries()[target].step});
        }
        endedByEvidence = false;
        enter(target, bench);
    }

    void finish(const Bench& bench) {
        bench.mark(StepEndMark{});
        mode = Mode::over;
        activity.reset();
    }

    bool overVoltage(const Bench& bench) {
        if (!bench.findings->overVoltage || mode == Mode::over || mode == Mode::before) return false;
        if (mode != Mode::stopped) {
            bench.mark(StepEndMark{});
            path.set(StepOutcome::waiting);
            activity.reset();
            mode = Mode::stopped;
        }
        return true;
    }

    void show(const Bench& bench);
    void showAsking();
};

void Procedure::State::showAsking() {
    prompt.question = question;
    if (question == Question::finish)
        prompt.instruction = {phrases::kNothingLeft, {}};
    else
        prompt.instruction = {question == Question::badReference ? phrases::kReferenceBad : phrases::kGroundBad,
                              {volts(outside_V)}};
    prompt.choices = {{Command::offerYes, {phrases::kEndHere, {}}}, {Command::offerNo, {phrases::kGoOnAnyway, {}}}};
}

void Procedure::State::show(const Bench& bench) {
    prompt = Prompt{};
    if (mode == Mode::before) return;
    if (mode == Mode::over || mode == Mode::stopped) {
        prompt.finished = mode == Mode::over;
        prompt.stopNow = mode == Mode::stopped;
        if (prompt.stopNow) {
            prompt.title = prompt.instruction = {phrases::kOverVoltage, {}};
            prompt.why = {phrases::kOverVoltageWhy, {}};
            prompt.cautions = {{stepText(Step::putBack).cautions.front(), {}}};
            prompt.drawing = stepName(Step::putBack);
        } else {
            prompt.title = prompt.instruction = {phrases::kFinished, {}};
            prompt.progress = 1;
        }
        return;
    }
    const StepText& text = stepText(step());
    prompt.step = step();
    prompt.number = static_cast<int>(path.at()) + 1;
    prompt.of = static_cast<int>(path.entries().size());
    prompt.title = {text.title, {}};
    prompt.instruction = {text.instruction, {}};
    const PathEntry& entry = path.entries()[path.at()];
    prompt.why = entry.because.empty() ? Sentence{text.why, {}} : entry.because;
    if (entry.armHeld) prompt.instruction = {phrases::kArmHeld, {}};
    prompt.armHeld = entry.armHeld;
    prompt.drawing = stepName(step());
    prompt.wire = traits(step()).lead;
    for (const char* caution : text.cautions) prompt.cautions.push_back({caution, {}});
    for (const std::string& own : sheet.cautions) prompt.cautions.push_back({phrases::kVerbatim, {byName(own)}});
    if (mode == Mode::lead)
        lead.show(prompt);
    else if (mode == Mode::asking)
        showAsking();
    else
        activity->show(prompt, bench);
}

Procedure::Procedure(const Sheet& sheet, const MeterTraits& meter, ProcedureOptions options)
    : state_(std::make_unique<State>(sheet, meter, options)) {}
Procedure::Procedure(Procedure&&) noexcept = default;
Procedure& Procedure::operator=(Procedure&&) noexcept = default;
Procedure::~Procedure() = default;

std::vector<Mark> Procedure::start(Time now) {
    State& s = *state_;
    const Bench bench = s.bench(now, s.none);
    s.keyOn = now;
    s.enter(0, bench);
    s.show(bench);
    return s.taken();
}

std::vector<Mark> Procedure::tick(Time now, const Findings& findings) {
    State& s = *state_;
    const Bench bench = s.bench(now, findings);
    if (!s.overVoltage(bench)) {
        if (s.mode == State::Mode::lead) {
            if (s.options.endStepsByEvidence && s.lead.arrived(bench)) s.open(bench);
        } else if (s.mode == State::Mode::step) {
            s.activity->tick(bench);
            if (s.options.endStepsByEvidence && s.activity->done(bench)) {
                s.endedByEvidence = true;
                s.leave(StepOutcome::done, bench);
            }
        } else if (s.mode == State::Mode::asking) {
            // Unanswered, a bad supply ends the run, and a verdict that stands does not.
            if (s.options.endStepsByEvidence && toSeconds(now - s.askedAt) >= kAskFor_s)
                s.answer(s.question != Question::finish, bench);
        }
    }
    s.show(bench);
    return s.taken();
}

std::vector<Mark> Procedure::command(Command command, Time now, const Findings& findings) {
    State& s = *state_;
    const Bench bench = s.bench(now, findings);
    using Mode = State::Mode;
    if (s.mode == Mode::before || s.mode == Mode::over) return {};
    if (s.overVoltage(bench)) {
        if (command == Command::next || command == Command::stop) {
            bench.mark(KeyMark{false});
            s.mode = Mode::over;
        }
    } else if (command == Command::stop) {
        s.finish(bench);
    } else if (command == Command::back) {
        s.undo(bench);
    } else if (s.mode == Mode::asking) {
        if (command == Command::next || command == Command::offerYes || command == Command::offerNo)
            s.answer(command != Command::offerNo, bench);
    } else if (command == Command::skip) {
        // Left early it is ended, and what was seen counts.
        const bool begun = s.mode == Mode::step && findings.readings > s.readingsAtOpen;
        if (!begun) bench.mark(SkipMark{s.step()});
        s.endedByEvidence = false;
        s.declined.insert(s.step());
        s.leave(begun ? StepOutcome::done : StepOutcome::skipped, bench);
    } else if (s.mode == Mode::lead) {
        if (command == Command::next) s.open(bench);
    } else {
        s.activity->command(command, bench);
        if (s.activity->done(bench)) {
            s.endedByEvidence = false;
            s.leave(StepOutcome::done, bench);
        }
    }
    s.show(bench);
    return s.taken();
}

const Prompt& Procedure::prompt() const { return state_->prompt; }
const std::vector<PathEntry>& Procedure::path() const { return state_->path.entries(); }

} // namespace stillwire
