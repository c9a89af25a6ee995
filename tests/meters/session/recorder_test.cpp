// SPDX-License-Identifier: GPL-3.0-or-later
// The recorder by itself, with everything at once: rows, syncs, saves elsewhere, and somebody who waits for the file.
#include "core/capture/reader.hpp"
#include "meters/session/recorder.hpp"

#include <chrono>
#include <filesystem>
#include <thread>
#include <unistd.h>

#include <gtest/gtest.h>

namespace stillwire {

namespace {

namespace fs = std::filesystem;

class RecorderTest : public testing::Test {
protected:
    RecorderTest() : folder_(fs::path(testing::TempDir()) / ("stillwire_recorder_" + std::to_string(getpid()))) {
        fs::remove_all(folder_);
        fs::create_directory(folder_);
    }
    ~RecorderTest() override { fs::remove_all(folder_); }

    std::string path(const std::string& name) const { return (folder_ / name).string(); }

    void expectRows(const std::string& name, int rows) const {
        const auto capture = loadCapture(path(name));
        ASSERT_TRUE(capture) << capture.error().text();
        ASSERT_EQ(capture.value().readings.size(), static_cast<std::size_t>(rows));
        for (int i = 0; i < rows; ++i)
            ASSERT_EQ(capture.value().readings[static_cast<std::size_t>(i)].time, Time(i)) << name;
    }

    fs::path folder_;
};

} // namespace

TEST_F(RecorderTest, EveryRowIsInEachFileThatWasSavedMeanwhile) {
    constexpr int kRows = 30'000; // several blocks of its memory
    Recorder recorder;
    ASSERT_TRUE(recorder.begin(path("0.csv"), {}, path("notes")));
    std::jthread watcher([&recorder](const std::stop_token& stop) {
        while (!stop.stop_requested()) {
            EXPECT_EQ(recorder.says().english(), "");
            EXPECT_FALSE(recorder.path().empty());
            static_cast<void>(recorder.pendingBytes());
            std::this_thread::sleep_for(std::chrono::milliseconds(1));
        }
    });
    int saves = 0;
    for (int i = 0; i < kRows; ++i) {
        recorder.append(Reading{Time(i), 0.812, {}});
        if (i % 100 == 0) recorder.settle();
        if (i % 3000 == 2999) recorder.saveTo(path(std::to_string(++saves) + ".csv"));
    }
    recorder.finish();
    watcher.request_stop();
    watcher.join();
    EXPECT_EQ(recorder.pendingBytes(), 0u);
    EXPECT_NE(recorder.path(), path("0.csv"));
    expectRows(fs::path(recorder.path()).filename().string(), kRows);
    EXPECT_TRUE(fs::is_empty(path("notes")));
    recorder.saveTo(path("afterwards.csv"));
    expectRows("afterwards.csv", kRows);
}

TEST_F(RecorderTest, WhatIsSettledIsInTheFile) {
    Recorder recorder;
    ASSERT_TRUE(recorder.begin(path("a.csv"), {}));
    for (int i = 0; i < 200; ++i) {
        recorder.append(Reading{Time(i), 0.812, {}});
        do recorder.settle(); // again where the disk took longer than a moment
        while (recorder.pendingBytes() > 0);
        if (i % 50 == 0) expectRows("a.csv", i + 1);
    }
    expectRows("a.csv", 200);
    recorder.append(Mark{Time(200), "note:last"});
    recorder.finish();
    const auto capture = loadCapture(path("a.csv"));
    ASSERT_TRUE(capture);
    EXPECT_EQ(capture.value().marks.size(), 1u);
}

} // namespace stillwire
