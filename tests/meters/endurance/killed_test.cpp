// SPDX-License-Identifier: GPL-3.0-or-later
// A program that is killed leaves what it showed.
#include "core/capture/reader.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/kernel_tty.hpp"
#include "tests/support/long_run.hpp"

#include <chrono>
#include <csignal>
#include <cstdio>
#include <random>
#include <sys/wait.h>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {

namespace {

using namespace std::chrono_literals;

std::unique_ptr<Session> overTty(const MeterDescription& meter, const std::string& path) {
    auto session = Session::start({makeSerialLink(KernelTty::kPort, meter.link), meter}, headerFor(meter),
                                  {.guided = false, .capturePath = path, .replaySpeed = 1, .seed = 1});
    EXPECT_TRUE(session) << session.error().text();
    std::this_thread::sleep_for(60ms); // what comes sooner might be torn
    return session ? std::move(session.value()) : nullptr;
}

// The process that will be killed: records, saves elsewhere after a while, and reports through the pipe how many
// readings it has shown.
[[noreturn]] void recordUntilKilled(const std::string& path, const std::string& other, int saveAfter, int report) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter("lcd-segment-meter");
    const auto session = overTty(meter, path);
    const auto frame = encodeFrame(meter.frame, number(0.812), 0.001);
    for (int sent = 1;; ++sent) {
        tty.send(frame);
        std::this_thread::sleep_for(2ms);
        if (sent == saveAfter) session->saveTo(other);
        const std::size_t shown = session->snapshot()->trace.size();
        if (write(report, &shown, sizeof shown) < 0) _exit(1);
    }
}

// How many readings are in it; a file whose header is not whole has none, and is not left alone.
std::size_t readingsIn(const std::string& path) {
    if (access(path.c_str(), F_OK) != 0) return 0;
    const auto capture = loadCapture(path);
    return capture ? capture.value().readings.size() : 0;
}

} // namespace

// Stronger than "older than one second": every reading that was shown is in a file that opens. With STILLWIRE_LONG
// set 200 instants, up to the second sync.
TEST(NothingLost, AKilledProgramLeavesEveryReadingItShowed) {
    std::mt19937 random(11);
    const int rounds = test::scaled(15, 200), latest_ms = test::scaled(250, 2500);
    std::size_t mostShown = 0, allShown = 0, kills = 0, inOther = 0;
    for (int round = 0; round < rounds; ++round) {
        const std::string path = capturePath("killed"), other = capturePath("killed-elsewhere");
        int ends[2];
        ASSERT_EQ(pipe(ends), 0);
        const int instant_us = std::uniform_int_distribution<>(80'000, latest_ms * 1000)(random);
        // In half of the rounds, in the middle or shortly before the end.
        const int saveAfter = round % 2 == 0 ? 0 : std::max(1, (instant_us - 80'000) / 6000);
        const pid_t child = fork();
        if (child == 0) recordUntilKilled(path, other, saveAfter, ends[1]);
        close(ends[1]);
        std::this_thread::sleep_for(std::chrono::microseconds(instant_us));
        kill(child, SIGKILL);
        waitpid(child, nullptr, 0);
        std::size_t shown = 0;
        for (std::size_t more = 0; read(ends[0], &more, sizeof more) == sizeof more;) shown = more;
        close(ends[0]);
        if (shown > 0) { // killed before the first: nothing is claimed
            const auto capture = loadCapture(path);
            ASSERT_TRUE(capture) << capture.error().text();
            const std::size_t there = readingsIn(other);
            EXPECT_GE(std::max(capture.value().readings.size(), there), shown) << "round " << round;
            inOther += there > 0 ? 1 : 0;
            ++kills;
        }
        mostShown = std::max(mostShown, shown);
        allShown += shown;
        std::remove(path.c_str());
        std::remove(other.c_str());
    }
    std::printf("%zu kills, %zu readings shown, all in their files; %zu of the files had been saved elsewhere\n",
                kills, allShown, inOther);
    EXPECT_GT(mostShown, 10u);
    EXPECT_GT(kills, static_cast<std::size_t>(rounds) / 2);
}

} // namespace stillwire
