// SPDX-License-Identifier: GPL-3.0-or-later
// What a disk can do to a recording, over a kernel terminal whose meter does not wait.
#include "core/capture/reader.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/kernel_tty.hpp"
#include "tests/support/lent_calls.hpp"

#include <chrono>
#include <csignal>
#include <filesystem>
#include <sys/inotify.h>
#include <sys/resource.h>
#include <thread>
#include <unistd.h>

#include <gtest/gtest.h>

namespace stillwire {

namespace {

using namespace std::chrono_literals;
namespace fs = std::filesystem;

constexpr int kNoEnd_ms = 600'000; // of a disk that is busy: until the test lets it go on

class Disk : public testing::Test {
protected:
    Disk() : meter_(shippedMeter("text-line-logger")), folder_(fs::path(capturePath("disk")).replace_extension()) {
        fs::remove_all(folder_);
        fs::create_directory(folder_);
    }
    ~Disk() override {
        lent::state().syncDelay_ms = 0;
        lent::state().writeDelay_ms = 0;
        session_.reset();
        fs::remove_all(folder_);
    }

    std::string path(const std::string& name) const { return (folder_ / name).string(); }

    void begin(const std::string& name) {
        auto session = Session::start({makeSerialLink(KernelTty::kPort, meter_.link), meter_}, headerFor(meter_),
                                      {.guided = false, .capturePath = path(name), .replaySpeed = 1, .seed = 1});
        ASSERT_TRUE(session) << session.error().text();
        session_ = std::move(session.value());
        std::this_thread::sleep_for(60ms); // what comes sooner might be torn
    }

    void send(int count) {
        for (int i = 0; i < count; ++i)
            ASSERT_TRUE(tty_.send(encodeFrame(meter_.frame, number(++sent_ / 1e3), 1e-3)));
    }

    std::shared_ptr<const SessionSnapshot> now() const { return session_->snapshot(); }

    template <class Condition> bool comes(const Condition& holds) const {
        for (int i = 0; i < 20'000 && !holds(); ++i) std::this_thread::sleep_for(1ms);
        return holds();
    }
    bool shows(int readings) const {
        return comes([&] { return now()->trace.size() >= static_cast<std::size_t>(readings); });
    }
    bool says(const std::string& text) const {
        return comes([&] { return now()->recorderSays.english().find(text) != std::string::npos; });
    }

    // Every reading that was sent, in order, and nothing else.
    void expectWhole(const std::string& name) const {
        const auto capture = loadCapture(path(name));
        ASSERT_TRUE(capture) << capture.error().text();
        ASSERT_TRUE(capture.value().header.sheet);
        ASSERT_EQ(capture.value().readings.size(), static_cast<std::size_t>(sent_));
        for (int i = 0; i < sent_; ++i)
            ASSERT_EQ(capture.value().readings[static_cast<std::size_t>(i)].volts_V, (i + 1) / 1e3);
    }

    KernelTty tty_;
    MeterDescription meter_;
    fs::path folder_;
    std::unique_ptr<Session> session_;
    int sent_ = 0;
};

// A file that may not grow answers as a full disk does: the write fails.
class Full {
public:
    explicit Full(const std::string& path) {
        std::signal(SIGXFSZ, SIG_IGN);
        getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit tight{fs::file_size(path) + 5, before_.rlim_max};
        setrlimit(RLIMIT_FSIZE, &tight);
    }
    ~Full() { setrlimit(RLIMIT_FSIZE, &before_); }
    Full(const Full&) = delete;
    Full& operator=(const Full&) = delete;

private:
    rlimit before_{};
};

// Sees every file that goes from a folder, however briefly it was there.
class Removals {
public:
    explicit Removals(const fs::path& folder) : descriptor_(inotify_init1(IN_NONBLOCK | IN_CLOEXEC)) {
        inotify_add_watch(descriptor_, folder.c_str(), IN_DELETE);
    }
    ~Removals() { close(descriptor_); }
    Removals(const Removals&) = delete;
    Removals& operator=(const Removals&) = delete;
    [[nodiscard]] bool any() {
        alignas(inotify_event) char events[4096];
        return seen_ = seen_ || read(descriptor_, events, sizeof events) > 0;
    }

private:
    int descriptor_;
    bool seen_ = false;
};

} // namespace

TEST_F(Disk, ASyncWithoutEndHoldsUpNobody) {
    lent::state().slowSyncs = 0;
    lent::state().syncDelay_ms = kNoEnd_ms;
    begin("a.csv");
    send(1);
    ASSERT_TRUE(comes([] { return lent::state().slowSyncs == 1; }));
    for (int i = 0; i < 200; ++i) {
        send(1);
        std::this_thread::sleep_for(2ms);
    }
    EXPECT_TRUE(shows(sent_));
    expectWhole("a.csv"); // while it still syncs
    EXPECT_EQ(lent::state().slowSyncs, 1);
}

// A file system may keep a write waiting until its sync is through.
TEST_F(Disk, AWriteWithoutEndHoldsUpNobody) {
    begin("a.csv");
    lent::state().slowWritesOver = 0;
    lent::state().writeDelay_ms = kNoEnd_ms;
    send(1);
    EXPECT_TRUE(shows(1));
    for (int i = 0; i < 200; ++i) {
        send(1);
        std::this_thread::sleep_for(2ms);
    }
    EXPECT_TRUE(shows(sent_));
    EXPECT_GT(now()->pendingBytes, 0u);
    EXPECT_TRUE(says("the disk has been busy for"));
    EXPECT_EQ(lent::state().slowWritesOver, 0); // all that within the first of them
    lent::state().writeDelay_ms = 0;
    EXPECT_TRUE(comes([this] { return now()->pendingBytes == 0 && now()->recorderSays.empty(); }));
    expectWhole("a.csv");
}

TEST_F(Disk, AFullOneIsSaidAndTakesTheRestWhenItHasRoomAgain) {
    begin("a.csv");
    send(20);
    ASSERT_TRUE(shows(20));
    {
        const Full full(path("a.csv"));
        send(20);
        EXPECT_TRUE(says("may not grow any further; go on in another folder"));
        EXPECT_TRUE(shows(40));
        EXPECT_GT(now()->pendingBytes, 0u);
        const auto capture = loadCapture(path("a.csv")); // what is there opens
        ASSERT_TRUE(capture) << capture.error().text();
        EXPECT_EQ(capture.value().readings.size(), 20u);
    }
    EXPECT_TRUE(comes([this] { return now()->pendingBytes == 0; }));
    EXPECT_TRUE(comes([this] { return now()->recorderSays.empty(); }));
    send(20);
    EXPECT_TRUE(shows(60));
    expectWhole("a.csv");
}

TEST_F(Disk, AFullOneIsLeftForAnotherFile) {
    begin("a.csv");
    send(20);
    ASSERT_TRUE(shows(20));
    auto full = std::make_unique<Full>(path("a.csv"));
    send(20);
    ASSERT_TRUE(says("go on in another folder"));
    Removals removals(folder_);
    session_->saveTo(path("b.csv"));
    EXPECT_TRUE(comes([&] { return removals.any(); })); // b.csv is as long: refused too, and the capture goes on
    full.reset();
    EXPECT_TRUE(says("b.csv: ")); // as soon as there is nothing to say of a.csv
    session_->saveTo(path("b.csv"));
    EXPECT_TRUE(comes([this] { return now()->capturePath == path("b.csv"); }));
    send(20);
    EXPECT_TRUE(shows(60));
    session_->stop();
    EXPECT_EQ(now()->recorderSays.english(), "");
    expectWhole("b.csv");
}

TEST_F(Disk, AFolderThatIsGoneIsSaidAndTheCaptureSavedElsewhere) {
    fs::create_directory(folder_ / "stick");
    begin("stick/a.csv");
    send(20);
    ASSERT_TRUE(shows(20));
    fs::remove_all(folder_ / "stick");
    EXPECT_TRUE(says("stick/a.csv: the file or its folder is gone; save the capture in another folder"));
    send(20);
    EXPECT_TRUE(shows(40));
    session_->saveTo(path("stick/b.csv")); // nowhere
    EXPECT_TRUE(says("there is no such file or folder"));
    session_->saveTo(path("b.csv"));
    EXPECT_TRUE(comes([this] { return now()->capturePath == path("b.csv"); }));
    send(20);
    EXPECT_TRUE(shows(60));
    EXPECT_TRUE(comes([this] { return now()->recorderSays.empty(); }));
    session_->stop();
    EXPECT_EQ(now()->recorderSays.english(), "");
    expectWhole("b.csv");
}

// Nothing that was in the old file is needed for the new one.
TEST_F(Disk, WhatADiskForgotIsSavedFromMemory) {
    begin("a.csv");
    send(20);
    ASSERT_TRUE(shows(20));
    fs::resize_file(path("a.csv"), 0);
    session_->saveTo(path("b.csv"));
    EXPECT_TRUE(comes([this] { return now()->capturePath == path("b.csv"); }));
    expectWhole("b.csv");
}

TEST_F(Disk, AFullOneAtTheEndIsSavedElsewhereAfterwards) {
    begin("a.csv");
    send(20);
    ASSERT_TRUE(shows(20));
    {
        const Full full(path("a.csv"));
        send(20);
        ASSERT_TRUE(shows(40));
        session_->stop();
    }
    EXPECT_NE(now()->recorderSays.english(), "");
    session_->saveTo(path("b.csv"));
    EXPECT_EQ(now()->capturePath, path("b.csv"));
    EXPECT_EQ(now()->recorderSays.english(), "");
    expectWhole("b.csv");
}

TEST_F(Disk, ASlowSaveElsewhereHoldsUpNobody) {
    begin("a.csv");
    send(20);
    ASSERT_TRUE(shows(20));
    lent::state().slowSyncs = 0;
    lent::state().syncDelay_ms = kNoEnd_ms;
    session_->saveTo(path("b.csv"));
    for (int i = 0; i < 200; ++i) {
        send(1);
        std::this_thread::sleep_for(2ms);
    }
    EXPECT_TRUE(shows(sent_));
    EXPECT_EQ(now()->capturePath, path("a.csv")); // until the other is on its disk
    expectWhole("a.csv");
    lent::state().syncDelay_ms = 0;
    EXPECT_TRUE(comes([this] { return now()->capturePath == path("b.csv"); }));
    send(20);
    EXPECT_TRUE(shows(sent_));
    EXPECT_TRUE(comes([this] { return now()->pendingBytes == 0; }));
    expectWhole("b.csv");
}

} // namespace stillwire
