// SPDX-License-Identifier: GPL-3.0-or-later
// The one make of Session. Members are grouped by the thread that owns them; the two meet in the inbox and the
// snapshot.
#pragma once

#include "meters/session/evidence.hpp"
#include "meters/session/inbox.hpp"
#include "meters/session/input.hpp"
#include "meters/session/recorder.hpp"
#include "meters/session/session.hpp"

#include <atomic>
#include <mutex>
#include <thread>

namespace stillwire {

class LiveSession final : public Session, private Input::Listener {
public:
    // `reference`: a second meter, on the reference wire; null: none.
    LiveSession(std::unique_ptr<Input> signal, std::unique_ptr<Input> reference, ExaminationSetup setup,
                SessionOptions options);
    ~LiveSession() override { stop(); }

    // Errors: the capture file cannot be made.
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
    [[nodiscard]] Time now() const { return signal_->now(); } // since the capture's start
    [[nodiscard]] int waitMilliseconds() const;
    void wait();
    void takeAsks();
    void obey(Command command, Time stamp);
    void inputReading(Input& from, const Reading& reading) override;
    void inputMark(Input& from, Mark mark) override;
    void inputLost(Input& from, Time at) override;
    void inputChanged(bool urgent) override;
    void takeReading(const Reading& reading);
    void takeMarks(std::vector<Mark> marks);
    void noticeSleep();
    void tick();
    void publish(bool always);

    std::unique_ptr<Input> signal_, reference_;
    SessionOptions options_;
    Recorder recorder_;
    Evidence evidence_;
    std::optional<Procedure> procedure_;
    Time ticked_{-1};        // the procedure's last time
    Time asleep_{0};         // how far the boot clock is ahead of the waking one
    bool ended_ = false;     // nothing more comes
    bool over_ = false;      // and all of it is written
    bool newRows_ = false;   // since the last tick
    bool mustJudge_ = false; // at the next tick: a flag, a mark
    bool urgent_ = false;    // publish at once
    Time publishedAt_{0};    // by the waking clock
    bool unpublished_ = true;

    // Set before the thread starts.
    Time zero_{0};
    bool realClock_ = false; // the input's clock is CLOCK_BOOTTIME

    // Any thread.
    Inbox inbox_;
    std::atomic<bool> running_{false};
    mutable std::mutex snapshotMutex_;
    std::shared_ptr<const SessionSnapshot> snapshot_; // guarded by snapshotMutex_
    std::mutex stopMutex_;                            // one caller joins
    std::jthread thread_;                             // last: ends before what it uses
};

} // namespace stillwire
