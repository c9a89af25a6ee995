// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/live_session.hpp"

#include "meters/link/clock.hpp"
#include "meters/session/log.hpp"

#include <algorithm>
#include <poll.h>

namespace stillwire {

namespace {

using namespace std::chrono_literals;

constexpr Time kTick = 100ms;      // the procedure, the link watch
constexpr Time kPublish = 20ms;    // snapshots, unless something important came
constexpr Time kRetry = 500ms;     // of a lost port: it is back about 0.4 s after the plug
constexpr Time kSleepNoticed = 2s; // a computer that was away for less lost nothing we could tell
constexpr int kReadsInARow = 64;   // then asks are looked at
constexpr std::size_t kRowsInARow = 4096;

} // namespace

LiveSession::LiveSession(std::unique_ptr<Link> link, std::unique_ptr<Decoder> decoder, ExaminationSetup setup,
                         MeterDescription description, SessionOptions options)
    : link_(std::move(link)), decoder_(std::move(decoder)), rows_(link_->rows()),
      description_(std::move(description)), options_(std::move(options)), evidence_(setup, recorder_),
      watch_(link_->name(), description_), poller_(description_.link) {
    options_.guided = options_.guided && rows_ == nullptr;
    if (options_.guided) procedure_.emplace(setup.sheet, setup.meter, ProcedureOptions{.seed = options_.seed});
}

Status LiveSession::begin(const CaptureHeader& header) {
    if (!options_.capturePath.empty())
        if (Status begun = recorder_.begin(options_.capturePath, header, options_.notesFolder); !begun) return begun;
    realClock_ = link_->descriptor() >= 0;
    zero_ = rows_ != nullptr ? Time(0) : link_->now();
    asleep_ = bootTime() - awakeTime();
    playFrom_ = awakeTime();
    running_.store(true);
    publish(true);
    thread_ = std::jthread([this] { run(); });
    return Done{};
}

Time LiveSession::now() const {
    if (rows_ == nullptr) return link_->now() - zero_;
    if (options_.replaySpeed <= 0 || rows_->atEnd()) return link_->now();
    const Time played = fromSeconds(toSeconds(awakeTime() - playFrom_) * options_.replaySpeed);
    return std::clamp(played, link_->now(), rows_->nextTime());
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
    logInfo("session on " + link_->name());
    watch_.opened(link_->name(), now());
    if (rows_ == nullptr) greet();
    if (procedure_) takeMarks(procedure_->start(now()));
    while (!ended_) {
        publish(false);
        wait();
        takeAsks();
        if (ended_) break;
        noticeSleep(); // before what came after it
        if (rows_ != nullptr)
            takeRows();
        else if (realClock_ && link_->descriptor() < 0)
            tryAgain();
        else
            readLink();
        tick();
    }
    finish();
}

void LiveSession::finish() {
    if (rows_ == nullptr) {
        if (evidence_.stepOpen()) evidence_.take(Mark{now(), "step:end"});
        for (const std::string& command : description_.link.leaveCommands) send(command);
    }
    recorder_.finish();
    watch_.ended();
    publish(true);
    logInfo("session ended on " + link_->name());
    running_.store(false);
}

int LiveSession::waitMilliseconds() const {
    if (rows_ != nullptr && options_.replaySpeed <= 0) return 0;
    Time wait = kTick;
    if (rows_ != nullptr && !rows_->atEnd()) {
        const double due_s = toSeconds(rows_->nextTime()) / options_.replaySpeed;
        wait = std::min(wait, fromSeconds(due_s) - (awakeTime() - playFrom_));
    } else if (!realClock_ && rows_ == nullptr) {
        const Time due = link_->nextDue();
        if (due >= Time(0)) wait = std::min(wait, due);
    }
    if (realClock_ && !lost_ && poller_.active()) wait = std::min(wait, poller_.due(now()) - now());
    if (unpublished_) wait = std::min(wait, kPublish);
    if (wait <= Time(0)) return 0;
    return static_cast<int>((wait.count() + 999) / 1000);
}

void LiveSession::wait() {
    pollfd waiting[2] = {{inbox_.descriptor(), POLLIN, 0}, {realClock_ ? link_->descriptor() : -1, POLLIN, 0}};
    poll(waiting, 2, waitMilliseconds()); // poll passes over a negative descriptor
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

void LiveSession::readLink() {
    if (poller_.shouldAsk(now())) ask();
    // A link with its own clock gives one event at a time, so that the procedure sees each.
    const int rounds = realClock_ ? kReadsInARow : 1;
    for (int round = 0; round < rounds && !ended_; ++round) {
        const LinkEvent event = link_->read(buffer_);
        switch (event.kind) {
        case LinkEvent::Kind::bytes: takeBytes(event.bytes, event.arrived - zero_); break;
        case LinkEvent::Kind::nothing: return;
        case LinkEvent::Kind::lost: lose(event.arrived - zero_); return;
        case LinkEvent::Kind::ended: ended_ = true; return;
        }
    }
}

void LiveSession::takeBytes(std::size_t count, Time arrived) {
    // A meter sends a frame in one go: what comes right after the opening may be the rest of one begun before.
    if (fresh_ && realClock_ && !poller_.active() && arrived - openedAt_ < 50ms) decoder_->beginMidStream();
    fresh_ = false;
    if (lost_) comeBack(); // a simulated cable has no port to open
    watch_.bytesCame(arrived);
    const std::size_t dropped = decoder_->droppedBytes();
    decoded_.clear();
    decoder_->push(std::span(buffer_).first(count), arrived, decoded_);
    if (decoder_->droppedBytes() != dropped) {
        watch_.complained(decoder_->lastComplaint());
        unpublished_ = true;
    }
    if (!decoded_.empty() || decoder_->droppedBytes() != dropped) poller_.answered();
    for (const Reading& reading : decoded_) takeReading(reading);
}

void LiveSession::takeReading(const Reading& reading) {
    const PushResult result = evidence_.take(reading);
    watch_.readingCame(reading);
    if (result.dropoutFlagged || result.jumped) mustJudge_ = urgent_ = true;
    newRows_ = unpublished_ = true;
}

void LiveSession::takeMarks(std::vector<Mark> marks) {
    for (Mark& mark : marks) {
        evidence_.take(std::move(mark));
        mustJudge_ = urgent_ = newRows_ = unpublished_ = true;
    }
}

void LiveSession::takeRows() {
    const Time played = awakeTime() - playFrom_;
    const bool flatOut = options_.replaySpeed <= 0;
    for (std::size_t i = 0; i < kRowsInARow && !rows_->atEnd(); ++i) {
        if (!flatOut && toSeconds(rows_->nextTime()) > toSeconds(played) * options_.replaySpeed) return;
        auto row = rows_->take();
        if (const Reading* reading = std::get_if<Reading>(&row))
            takeReading(*reading);
        else
            takeMarks({std::get<Mark>(row)});
        if (flatOut) mustJudge_ = urgent_ = false; // nobody watches a trace go by at that speed
    }
    ended_ = rows_->atEnd();
}

void LiveSession::lose(Time at) {
    if (lost_) return;
    lost_ = true;
    logWarning("lost " + link_->name());
    watch_.lost(at);
    takeMarks({Mark{at, "gap"}});
    decoder_->reset();
    retryAt_ = awakeTime() + kRetry;
}

void LiveSession::comeBack() {
    lost_ = false;
    openedAt_ = now();
    logInfo("back on " + link_->name());
    watch_.opened(link_->name(), now());
    greet();
    urgent_ = unpublished_ = true;
}

void LiveSession::tryAgain() {
    if (awakeTime() < retryAt_) return;
    retryAt_ = awakeTime() + kRetry;
    if (const Status opened = link_->open(); !opened) {
        watch_.stillLost(opened.error().what);
        return;
    }
    comeBack();
}

void LiveSession::noticeSleep() {
    const Time ahead = bootTime() - awakeTime();
    const Time slept = ahead - asleep_;
    asleep_ = ahead;
    if (!realClock_ || slept < kSleepNoticed) return;
    logWarning("the computer slept");
    watch_.slept(toSeconds(slept), now());
    takeMarks({Mark{now(), "gap"}});
    decoder_->reset();
    decoder_->beginMidStream();
}

void LiveSession::greet() {
    fresh_ = true;
    for (const std::string& command : description_.link.startCommands) send(command);
    poller_.restart(now());
}

void LiveSession::send(const std::string& command) {
    const auto* bytes = reinterpret_cast<const std::uint8_t*>(command.data());
    if (const Status sent = link_->write({bytes, command.size()}); !sent) watch_.complained(sent.error().what);
}

void LiveSession::ask() {
    send(description_.link.pollCommand);
    poller_.asked(now());
}

void LiveSession::tick() {
    const Time at = now();
    if (!newRows_ && at - ticked_ < kTick) return;
    unpublished_ = true; // the time goes on, and silence is a change
    newRows_ = false;
    const bool flatOut = rows_ != nullptr && options_.replaySpeed <= 0;
    const auto findings = evidence_.judge(flatOut ? awakeTime() : at, mustJudge_);
    mustJudge_ = false;
    if (findings->blind.size() > toldRangeBlind_) {
        toldRangeBlind_ = findings->blind.size();
        const BlindSpan& blind = findings->blind.back();
        if (blind.cause == BlindCause::autorange) watch_.blindByRange(toSeconds(blind.to - blind.from));
    }
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
    next->link = rows_ != nullptr && !ended_ ? LinkState::live : watch_.state(at);
    next->linkSays = rows_ != nullptr ? std::string() : watch_.says(at);
    next->capturePath = recorder_.path();
    next->recorderSays = recorder_.says();
    next->pendingBytes = recorder_.pendingBytes();
    next->garbageBytes = decoder_ ? decoder_->droppedBytes() : 0;
    const std::lock_guard lock(snapshotMutex_);
    next->sequence = snapshot_ ? snapshot_->sequence + 1 : 1;
    snapshot_ = std::move(next);
}

} // namespace stillwire
