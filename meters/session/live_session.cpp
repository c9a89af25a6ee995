// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/live_session.hpp"

#include "meters/link/clock.hpp"
#include "meters/session/link_watch.hpp"
#include "meters/session/log.hpp"

#include <algorithm>
#include <poll.h>

namespace stillwire {

namespace {

using namespace std::chrono_literals;

constexpr Time kTick = 100ms;      // the procedure, the link watch
constexpr Time kPublish = 20ms;    // snapshots, unless something important came
constexpr Time kSleepNoticed = 2s; // a computer that was away for less lost nothing we could tell

} // namespace

LiveSession::LiveSession(std::unique_ptr<Input> signal, std::unique_ptr<Input> reference, ExaminationSetup setup,
                         SessionOptions options)
    : signal_(std::move(signal)), reference_(std::move(reference)), options_(std::move(options)),
      evidence_(setup, recorder_) {
    if (options_.guided && signal_->live())
        procedure_.emplace(setup.sheet, setup.meter,
                           ProcedureOptions{.seed = options_.seed, .sections = setup.sections});
}

Status LiveSession::begin(const CaptureHeader& header) {
    if (signal_->live()) evidence_.learnAs(header);
    if (!options_.capturePath.empty())
        if (Status begun = recorder_.begin(options_.capturePath, header, options_.notesFolder); !begun) return begun;
    realClock_ = signal_->realClock();
    zero_ = signal_->clock();
    signal_->begin(zero_);
    if (reference_) reference_->begin(zero_);
    asleep_ = bootTime() - awakeTime();
    running_.store(true);
    publish(true);
    thread_ = std::jthread([this] { run(); });
    return Done{};
}

std::shared_ptr<const SessionSnapshot> LiveSession::snapshot() const {
    const std::lock_guard lock(snapshotMutex_);
    return snapshot_;
}

void LiveSession::put(std::variant<Command, AskMark, AskSave, AskStop> what) {
    Ask ask{std::move(what), std::nullopt};
    if (realClock_) ask.stamp = bootTime() - zero_;
    inbox_.put(std::move(ask));
}

void LiveSession::saveTo(std::string path) {
    const std::lock_guard lock(stopMutex_);
    put(AskSave{std::move(path)});
    if (running()) return;
    if (thread_.joinable()) thread_.join();
    saveAfterwards();
}

// What was asked of a thread that had ended: a disk may have been full to the end.
void LiveSession::saveAfterwards() {
    for (const Ask& ask : inbox_.takeAll())
        if (const AskSave* save = std::get_if<AskSave>(&ask.what)) {
            recorder_.saveTo(save->path);
            publish(true);
        }
}

void LiveSession::stop() {
    const std::lock_guard lock(stopMutex_);
    if (!thread_.joinable()) return;
    put(AskStop{});
    thread_.join();
    saveAfterwards();
}

void LiveSession::run() {
    logInfo("session on " + signal_->name());
    signal_->greet();
    if (reference_) reference_->greet();
    if (procedure_) takeMarks(procedure_->start(now()));
    while (!ended_) {
        publish(false);
        wait();
        takeAsks();
        if (ended_) break;
        noticeSleep(); // before what came after it
        ended_ = !signal_->serve(*this);
        if (!signal_->watched()) mustJudge_ = urgent_ = false;
        if (reference_) reference_->serve(*this);
        tick();
    }
    finish();
}

void LiveSession::finish() {
    if (signal_->live() && evidence_.stepOpen()) evidence_.take(Mark{now(), StepEndMark{}});
    signal_->leave();
    if (reference_) reference_->leave();
    recorder_.finish();
    over_ = true;
    publish(true);
    logInfo("session ended on " + signal_->name());
    running_.store(false);
}

int LiveSession::waitMilliseconds() const {
    Time wait = signal_->wait(kTick);
    if (reference_) wait = reference_->wait(wait);
    if (unpublished_) wait = std::min(wait, kPublish);
    if (wait <= Time(0)) return 0;
    return static_cast<int>((wait.count() + 999) / 1000);
}

void LiveSession::wait() {
    pollfd waiting[3] = {{inbox_.descriptor(), POLLIN, 0},
                         {signal_->descriptor(), POLLIN, 0},
                         {reference_ ? reference_->descriptor() : -1, POLLIN, 0}};
    poll(waiting, 3, waitMilliseconds()); // poll passes over a negative descriptor
}

void LiveSession::takeAsks() {
    for (Ask& ask : inbox_.takeAll()) {
        urgent_ = true;
        const Time stamp = ask.stamp.value_or(now());
        if (const Command* command = std::get_if<Command>(&ask.what))
            obey(*command, stamp);
        else if (AskMark* mark = std::get_if<AskMark>(&ask.what))
            takeMarks({Mark{stamp, std::move(mark->text)}});
        else if (const AskSave* save = std::get_if<AskSave>(&ask.what))
            recorder_.saveTo(save->path);
        else
            ended_ = true;
    }
}

void LiveSession::obey(Command command, Time stamp) {
    if (!procedure_) return;
    ticked_ = std::max(ticked_, stamp); // the procedure's time never goes back
    takeMarks(procedure_->command(command, ticked_, *evidence_.judge(ticked_)));
    urgent_ = true;
}

void LiveSession::inputReading(Input& from, const Reading& reading) {
    Reading taken = reading;
    if (&from == reference_.get()) taken.flags |= Flag::ref;
    takeReading(taken);
}

void LiveSession::inputMark(Input&, Mark mark) { takeMarks({std::move(mark)}); }

void LiveSession::inputLost(Input& from, Time at) {
    // A gap is the signal's. Without the second meter the capture goes on with less.
    if (&from == reference_.get())
        takeMarks({Mark{at, NoteMark{"the meter on the reference is gone"}}});
    else
        takeMarks({Mark{at, GapMark{}}});
}

void LiveSession::inputChanged(bool urgent) {
    unpublished_ = true;
    urgent_ = urgent_ || urgent;
}

void LiveSession::takeReading(const Reading& reading) {
    const PushResult result = evidence_.take(reading);
    if (result.dropoutFlagged || result.jumped) mustJudge_ = urgent_ = true;
    newRows_ = unpublished_ = true;
}

void LiveSession::takeMarks(std::vector<Mark> marks) {
    for (Mark& mark : marks) {
        evidence_.take(std::move(mark));
        mustJudge_ = urgent_ = newRows_ = unpublished_ = true;
    }
}

void LiveSession::noticeSleep() {
    const Time ahead = bootTime() - awakeTime();
    const Time slept = ahead - asleep_;
    asleep_ = ahead;
    if (!realClock_ || slept < kSleepNoticed) return;
    logWarning("the computer slept");
    takeMarks({Mark{now(), GapMark{}}});
    signal_->slept(toSeconds(slept));
    if (reference_) reference_->slept(toSeconds(slept));
}

void LiveSession::tick() {
    const Time at = now();
    if (!newRows_ && at - ticked_ < kTick) return;
    unpublished_ = true; // the time goes on, and silence is a change
    newRows_ = false;
    const auto findings = evidence_.judge(signal_->watched() ? at : awakeTime(), mustJudge_);
    mustJudge_ = false;
    signal_->blindWas(findings->blind, at);
    if (reference_) reference_->blindWas(findings->referenceBlind, at);
    ticked_ = std::max(ticked_, at);
    if (!procedure_) return;
    takeMarks(procedure_->tick(ticked_, *findings));
    if (!options_.hand) return;
    for (const Command command : options_.hand(procedure_->prompt(), ticked_)) obey(command, ticked_);
    ended_ = ended_ || procedure_->prompt().finished;
}

void LiveSession::publish(bool always) {
    if (!always && !unpublished_) return;
    const Time clock = awakeTime();
    if (!always && !urgent_ && clock - publishedAt_ < kPublish) return;
    publishedAt_ = clock;
    recorder_.settle(); // what is shown is in the file
    unpublished_ = urgent_ = false;
    const Time at = std::max(now(), evidence_.lastRow());
    auto next = std::make_shared<SessionSnapshot>();
    next->now = at;
    next->trace = evidence_.trace().snapshot();
    next->findings = always ? evidence_.judge(at, true) : evidence_.findings();
    next->marks = evidence_.marks();
    if (procedure_) {
        next->prompt = procedure_->prompt();
        next->path = procedure_->path();
    }
    next->guided = procedure_.has_value();
    next->lastVolts_V = evidence_.lastReading().volts_V;
    next->lastFlags = evidence_.lastReading().flags;
    next->link = over_ ? LinkState::ended : signal_->state(at);
    if (!over_) next->linkSays = signal_->says(at);
    if (reference_) next->linkSays = saidOfBoth(next->linkSays, reference_->says(at));
    next->capturePath = recorder_.path();
    next->recorderSays = recorder_.says();
    next->pendingBytes = recorder_.pendingBytes();
    next->garbageBytes = signal_->garbageBytes() + (reference_ ? reference_->garbageBytes() : 0);
    const std::lock_guard lock(snapshotMutex_);
    next->sequence = snapshot_ ? snapshot_->sequence + 1 : 1;
    snapshot_ = std::move(next);
}

} // namespace stillwire
