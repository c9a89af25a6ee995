// SPDX-License-Identifier: GPL-3.0-or-later
// The one make of Session. Members are grouped by the thread that owns them; the two meet in the inbox and the
// snapshot.
#pragma once

#include "meters/decode/decoder.hpp"
#include "meters/link/link.hpp"
#include "meters/link/replay.hpp"
#include "meters/session/evidence.hpp"
#include "meters/session/inbox.hpp"
#include "meters/session/link_watch.hpp"
#include "meters/session/poller.hpp"
#include "meters/session/recorder.hpp"
#include "meters/session/session.hpp"

#include <array>
#include <atomic>
#include <mutex>
#include <thread>

namespace stillwire {

class LiveSession final : public Session {
public:
    LiveSession(std::unique_ptr<Link> link, std::unique_ptr<Decoder> decoder, ExaminationSetup setup,
                MeterDescription description, SessionOptions options);
    ~LiveSession() override { stop(); }

    // The link must be open. Errors: the capture file cannot be made.
    [[nodiscard]] Status begin(const CaptureHeader& header);

    std::shared_ptr<const SessionSnapshot> snapshot() const override;
    void command(Command command) override { put(command); }
    void mark(std::string text) override { put(AskMark{std::move(text)}); }
    void saveTo(std::string path) override;
    bool running() const override { return running_.load(); }
    void stop() override;

private:
    void put(std::variant<Command, AskMark, AskSave, AskStop> what);
    void saveAfterwards();

    // The session's thread.
    void run();
    void finish();
    [[nodiscard]] Time now() const; // since the capture's start
    [[nodiscard]] int waitMilliseconds() const;
    void wait();
    void takeAsks();
    void obey(Command command, Time stamp);
    void readLink();
    void takeBytes(std::size_t count, Time arrived);
    void takeRows();
    void takeReading(const Reading& reading);
    void takeMarks(std::vector<Mark> marks);
    void lose(Time at);
    void comeBack();
    void tryAgain();
    void noticeSleep();
    void greet(); // start-up commands, first poll
    void ask();
    void tick();
    void publish(bool always);
    void send(const std::string& command);

    std::unique_ptr<Link> link_;
    std::unique_ptr<Decoder> decoder_;
    ReplayRows* rows_; // null: a link with bytes
    MeterDescription description_;
    SessionOptions options_;
    Recorder recorder_;
    Evidence evidence_;
    std::optional<Procedure> procedure_;
    LinkWatch watch_;
    Poller poller_;
    std::vector<Reading> decoded_;
    std::array<std::uint8_t, 4096> buffer_{};
    Time openedAt_{0};  // to tell a torn first frame; at the start that is 0
    bool fresh_ = true; // no bytes since it opened
    Time ticked_{-1};   // the procedure's last time
    Time retryAt_{0};   // of a lost port, by the waking clock
    Time playFrom_{0};  // of a replay, by the waking clock
    Time asleep_{0};    // how far the boot clock is ahead of the waking one
    std::size_t toldRangeBlind_ = 0;
    bool ended_ = false, lost_ = false;
    bool newRows_ = false;   // since the last tick
    bool mustJudge_ = false; // at the next tick: a flag, a mark
    bool urgent_ = false;    // publish at once
    Time publishedAt_{0};    // by the waking clock
    bool unpublished_ = true;

    // Set before the thread starts.
    Time zero_{0};
    bool realClock_ = false; // the link's clock is CLOCK_BOOTTIME

    // Any thread.
    Inbox inbox_;
    std::atomic<bool> running_{false};
    mutable std::mutex snapshotMutex_;
    std::shared_ptr<const SessionSnapshot> snapshot_; // guarded by snapshotMutex_
    std::mutex stopMutex_;                            // one caller joins
    std::jthread thread_;                             // last: ends before what it uses
};

} // namespace stillwire
