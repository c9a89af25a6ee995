// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/decoder.hpp"
#include "meters/session/recorder.hpp"
#include "meters/session/session.hpp"
#include "meters/session/unfinished.hpp"
#include "tests/meters/session/script_link.hpp"

#include <csignal>
#include <filesystem>
#include <sys/resource.h>
#include <sys/wait.h>
#include <thread>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;
namespace fs = std::filesystem;

class Unfinished : public testing::Test {
protected:
    Unfinished() : folder_(fs::path(capturePath("unfinished")).replace_extension()) {
        fs::remove_all(folder_);
        fs::create_directory(folder_);
    }
    ~Unfinished() override { fs::remove_all(folder_); }

    std::string path(const std::string& name) const { return (folder_ / name).string(); }
    std::string notes() const { return path("notes"); } // not there yet

    // In a process of its own, which is killed once it has begun.
    template <class Begin> void killedAfter(const Begin& begin) const {
        int ends[2];
        ASSERT_EQ(pipe(ends), 0);
        const pid_t child = fork();
        if (child == 0) {
            begin();
            if (write(ends[1], "x", 1) != 1) _exit(1);
            for (;;) pause();
        }
        close(ends[1]);
        char begun = 0;
        EXPECT_EQ(read(ends[0], &begun, 1), 1);
        close(ends[0]);
        kill(child, SIGKILL);
        waitpid(child, nullptr, 0);
    }

    std::unique_ptr<Session> record(const std::string& capture, int readings) const {
        const MeterDescription meter = shippedMeter("text-line-logger");
        std::vector<ScriptLine> script;
        for (int i = 1; i <= readings; ++i)
            script.push_back(
                {Time(330'000LL * i), LinkEvent::Kind::bytes, encodeFrame(meter.frame, number(0.812), 0.001)});
        auto session = Session::start(
            {std::make_unique<ScriptLink>(script), meter}, headerFor(meter),
            {.guided = false, .capturePath = capture, .notesFolder = notes(), .replaySpeed = 0, .seed = 1});
        EXPECT_TRUE(session) << session.error().text();
        while (session && session.value()->running()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
        return session ? std::move(session.value()) : nullptr;
    }

    fs::path folder_;
};

} // namespace

TEST_F(Unfinished, ACaptureOfAKilledProgramIsOfferedUntilItIsForgotten) {
    killedAfter([this] {
        static const RecordingNote note(notes(), path("a.csv"));
        std::ofstream(path("a.csv")) << "rows";
    });
    killedAfter([this] {
        static RecordingNote note(notes(), path("b.csv"));
        note.movedTo(path("c.csv"));
        std::ofstream(path("c.csv")) << "rows";
    });
    EXPECT_THAT(unfinishedCaptures(notes()), ElementsAre(path("a.csv"), path("c.csv")));
    forgetUnfinished(notes(), path("a.csv"));
    EXPECT_THAT(unfinishedCaptures(notes()), ElementsAre(path("c.csv")));
    fs::remove(path("c.csv")); // by hand
    EXPECT_THAT(unfinishedCaptures(notes()), IsEmpty());
    EXPECT_TRUE(fs::is_empty(notes()));
}

TEST_F(Unfinished, OneThatIsBeingRecordedIsNot) {
    std::ofstream(path("a.csv")) << "rows";
    RecordingNote note(notes(), path("a.csv"));
    EXPECT_THAT(unfinishedCaptures(notes()), IsEmpty());
    note.done();
    EXPECT_TRUE(fs::is_empty(notes()));
}

TEST_F(Unfinished, AnEndedSessionLeavesNothingAndAKilledOneIsFound) {
    record(path("ended.csv"), 20)->stop();
    EXPECT_THAT(unfinishedCaptures(notes()), IsEmpty());
    killedAfter([this] {
        const MeterDescription meter = shippedMeter("text-line-logger");
        static const RecordingNote other(notes(), path("gone.csv")); // its capture was never made
        static Recorder recorder;
        if (!recorder.begin(path("killed.csv"), headerFor(meter), notes())) _exit(1);
    });
    EXPECT_THAT(unfinishedCaptures(notes()), ElementsAre(path("killed.csv")));
}

TEST_F(Unfinished, ADiskThatWasFullToTheEndLeavesItUnfinished) {
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit before{};
    getrlimit(RLIMIT_FSIZE, &before);
    const rlimit tight{8000, before.rlim_max};
    setrlimit(RLIMIT_FSIZE, &tight);
    auto session = record(path("full.csv"), 2000);
    session->stop();
    setrlimit(RLIMIT_FSIZE, &before);
    EXPECT_GT(session->snapshot()->pendingBytes, 0u);
    EXPECT_THAT(unfinishedCaptures(notes()), IsEmpty()); // it can still be saved
    session->saveTo(path("b.csv"));
    session.reset();
    EXPECT_THAT(unfinishedCaptures(notes()), IsEmpty());
    EXPECT_TRUE(fs::is_empty(notes()));
}

} // namespace stillwire
