// SPDX-License-Identifier: GPL-3.0-or-later
// Whatever the computer or the disk does: what was shown is in the file.
#include "core/capture/reader.hpp"
#include "meters/bench/simulated_meter.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/link/replay.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/kernel_tty.hpp"
#include "tests/support/lent_calls.hpp"

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <random>
#include <sys/wait.h>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {

namespace {

using namespace std::chrono_literals;
using Clock = std::chrono::steady_clock;

std::unique_ptr<Session> overTty(const MeterDescription& meter, const std::string& path) {
    auto session = Session::start(makeSerialLink(KernelTty::kPort, meter.link), makeDecoder(meter), headerFor(meter),
                                  {.guided = false, .capturePath = path, .replaySpeed = 1, .seed = 1});
    EXPECT_TRUE(session) << session.error().text();
    std::this_thread::sleep_for(60ms); // what comes sooner might be torn
    return session ? std::move(session.value()) : nullptr;
}

bool waitFor(const Session& session, std::size_t readings, std::chrono::milliseconds limit) {
    const auto end = Clock::now() + limit;
    while (session.snapshot()->trace.size() < readings) {
        if (Clock::now() > end) return false;
        std::this_thread::sleep_for(1ms);
    }
    return true;
}

// The process that will be killed: records, and reports through the pipe how many readings it has shown.
[[noreturn]] void recordUntilKilled(const std::string& path, int report) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter("lcd-segment-meter");
    const auto session = overTty(meter, path);
    const auto frame = encodeFrame(meter.frame, number(0.812), 0.001);
    for (;;) {
        tty.send(frame);
        std::this_thread::sleep_for(2ms);
        const std::size_t shown = session->snapshot()->trace.size();
        if (write(report, &shown, sizeof shown) < 0) _exit(1);
    }
}

} // namespace

// Stronger than "older than one second": every reading that was shown. 200 instants with STILLWIRE_LONG set.
TEST(NothingLost, AKilledProgramLeavesEveryReadingItShowed) {
    std::mt19937 random(11);
    const int rounds = std::getenv("STILLWIRE_LONG") != nullptr ? 200 : 15;
    std::size_t mostShown = 0;
    for (int round = 0; round < rounds; ++round) {
        const std::string path = capturePath("killed");
        int ends[2];
        ASSERT_EQ(pipe(ends), 0);
        const pid_t child = fork();
        if (child == 0) recordUntilKilled(path, ends[1]);
        close(ends[1]);
        std::this_thread::sleep_for(
            std::chrono::microseconds(std::uniform_int_distribution<>(80'000, 250'000)(random)));
        kill(child, SIGKILL);
        waitpid(child, nullptr, 0);
        std::size_t shown = 0;
        for (std::size_t more = 0; read(ends[0], &more, sizeof more) == sizeof more;) shown = more;
        close(ends[0]);
        if (shown == 0) continue; // killed before the first: nothing is claimed
        const auto capture = loadCapture(path);
        ASSERT_TRUE(capture) << capture.error().text();
        EXPECT_GE(capture.value().readings.size(), shown) << "round " << round;
        mostShown = std::max(mostShown, shown);
        std::remove(path.c_str());
    }
    EXPECT_GT(mostShown, 10u);
}

// Two seconds of it here; the rate is what matters.
TEST(NothingLost, KeepsUpWithTenThousandReadingsASecond) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter("text-line-logger");
    const std::string path = capturePath("fast");
    const auto session = overTty(meter, path);
    ASSERT_TRUE(session);
    const auto begin = Clock::now();
    std::size_t sent = 0;
    for (int block = 0; block < 200; ++block) {
        std::vector<std::uint8_t> bytes;
        for (int i = 0; i < 100; ++i, ++sent) {
            const auto frame = encodeFrame(meter.frame, number(static_cast<double>(sent % 5000) / 1000), 0.001);
            bytes.insert(bytes.end(), frame.begin(), frame.end());
        }
        ASSERT_TRUE(tty.send(bytes));
        std::this_thread::sleep_until(begin + (block + 1) * 10ms);
    }
    EXPECT_TRUE(waitFor(*session, sent, 20s));
    session->stop();
    EXPECT_EQ(session->snapshot()->garbageBytes, 0u);
    const auto capture = loadCapture(path);
    ASSERT_TRUE(capture) << capture.error().text();
    ASSERT_EQ(capture.value().readings.size(), sent);
    for (std::size_t i = 0; i < sent; ++i)
        ASSERT_EQ(capture.value().readings[i].volts_V, static_cast<double>(i % 5000) / 1000);
    std::remove(path.c_str());
}

// The bench's meter under the procedure, led to the end by its own hand, replays to the same verdict.
TEST(NothingLost, AGuidedRunOnTheSimulatedMeterReplaysTheSame) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    const CaptureHeader header = headerFor(meter);
    auto simulated = simulatedMeter(BenchScript{}, *header.sheet, meter, 5, 0, {});
    ASSERT_TRUE(simulated) << simulated.error().text();
    SessionOptions options{.guided = true, .capturePath = capturePath("guided"), .replaySpeed = 0, .seed = 5};
    options.hand = simulated.value().hand;
    auto live = Session::start(std::move(simulated.value().link), makeDecoder(meter), header, options);
    ASSERT_TRUE(live) << live.error().text();
    for (const auto end = Clock::now() + 60s; live.value()->running() && Clock::now() < end;)
        std::this_thread::sleep_for(5ms);
    ASSERT_FALSE(live.value()->running());
    const auto seen = live.value()->snapshot();
    EXPECT_TRUE(seen->prompt.finished);
    EXPECT_GT(seen->findings->readings, 500u);
    auto replay = openReplay(options.capturePath);
    ASSERT_TRUE(replay) << replay.error().text();
    auto again =
        Session::start(std::move(replay->link), nullptr, replay->header, {.guided = false, .replaySpeed = 0});
    ASSERT_TRUE(again);
    while (again.value()->running()) std::this_thread::sleep_for(1ms);
    const auto replayed = again.value()->snapshot();
    EXPECT_EQ(replayed->findings->readings, seen->findings->readings);
    EXPECT_STREQ(decisionName(replayed->findings->verdict.decision), decisionName(seen->findings->verdict.decision));
    ASSERT_EQ(replayed->findings->positions.size(), seen->findings->positions.size());
    for (std::size_t i = 0; i < seen->findings->positions.size(); ++i)
        EXPECT_EQ(replayed->findings->positions[i].level_V,
                  seen->findings->positions[i].level_V); // to the last digit
    RecordProperty("verdict", decisionName(seen->findings->verdict.decision));
    std::remove(options.capturePath.c_str());
}

} // namespace stillwire
