// SPDX-License-Identifier: GPL-3.0-or-later
// Many readings, and for long: none lost, memory as meters/README.md states it, and whoever watches is never kept
// waiting. Seconds in every run; ten minutes and a day with STILLWIRE_LONG set.
#include "core/capture/reader.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/kernel_tty.hpp"
#include "tests/support/long_run.hpp"

#include <atomic>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <malloc.h>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {

namespace {

using namespace std::chrono_literals;
using Clock = std::chrono::steady_clock;

constexpr double kBytesPerReading = 40; // 18 on the trace, up to 20 as text
constexpr double kBytesBesides = 4e6;

// Bytes that are allocated; 0 under a sanitizer, which keeps its own books.
double heapBytes() {
    const auto heap = mallinfo2();
    return static_cast<double>(heap.uordblks + heap.hblkhd);
}

void expectHeap(double before, double after, double readings) {
    std::printf("%.1f MB for %.0f readings: %.1f bytes each\n", (after - before) / 1e6, readings,
                (after - before) / readings);
    if (before > 0) {
        EXPECT_LT(after - before, readings * kBytesPerReading + kBytesBesides);
    }
}

double threadSeconds() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

// The number of a reading is in its millivolts.
double voltsOf(std::size_t index) { return static_cast<double>(index % 5000) / 1000; }

// Reads a capture without keeping it.
struct InOrder : RowSink {
    std::size_t readings = 0, wrong = 0;
    void reading(const Reading& reading) override {
        if (reading.volts_V != voltsOf(readings)) ++wrong;
        ++readings;
    }
    void mark(const Mark&) override { ++wrong; }
};

void expectInOrder(const std::string& path, std::size_t readings) {
    InOrder sink;
    const auto read = readCapture(path, sink);
    ASSERT_TRUE(read) << read.error().text();
    EXPECT_EQ(sink.readings, readings);
    EXPECT_EQ(sink.wrong, 0u);
}

// Looks as a window does: fifty times a second a snapshot and the extremes of all of it, a pixel each.
struct Watcher {
    explicit Watcher(const Session& session) : thread([this, &session] { watch(session); }) {}
    void watch(const Session& session) {
        while (!over) {
            const double cpuBefore_s = threadSeconds();
            const auto before = Clock::now();
            const auto snapshot = session.snapshot();
            worstWait_s = std::max(worstWait_s, std::chrono::duration<double>(Clock::now() - before).count());
            const auto slices = snapshot->trace.extremes(Time(0), snapshot->now + Time(1), 1200);
            worstWork_s = std::max(worstWork_s, threadSeconds() - cpuBefore_s);
            ++looks;
            std::this_thread::sleep_for(20ms);
        }
    }
    double worstWait_s = 0, worstWork_s = 0;
    int looks = 0;
    std::atomic<bool> over{false};
    std::thread thread;
};

} // namespace

TEST(Endurance, TenThousandReadingsASecond) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter("text-line-logger");
    const std::string path = capturePath("fast");
    auto started = Session::start({makeSerialLink(KernelTty::kPort, meter.link), meter}, headerFor(meter),
                                  {.guided = false, .capturePath = path, .replaySpeed = 1, .seed = 1});
    ASSERT_TRUE(started) << started.error().text();
    Session& session = **started;
    std::this_thread::sleep_for(60ms); // what comes sooner might be torn
    const double before = heapBytes();
    Watcher watcher(session);
    const auto begin = Clock::now();
    std::size_t sent = 0;
    for (int block = 0; block < test::scaled(2, 600) * 100; ++block) {
        std::vector<std::uint8_t> bytes;
        for (int i = 0; i < 100; ++i) {
            const auto frame = encodeFrame(meter.frame, number(voltsOf(sent++)), 0.001);
            bytes.insert(bytes.end(), frame.begin(), frame.end());
        }
        ASSERT_TRUE(tty.send(bytes));
        std::this_thread::sleep_until(begin + (block + 1) * 10ms);
    }
    for (int i = 0; i < 60'000 && session.snapshot()->trace.size() < sent; ++i) std::this_thread::sleep_for(1ms);
    const double took_s = std::chrono::duration<double>(Clock::now() - begin).count();
    const double after = heapBytes();
    watcher.over = true;
    watcher.thread.join();
    session.stop();
    std::printf("%zu readings in %.1f s; %d looks, the longest waited %.2f ms for its snapshot and worked %.2f ms\n",
                sent, took_s, watcher.looks, 1e3 * watcher.worstWait_s, 1e3 * watcher.worstWork_s);
    EXPECT_LT(watcher.worstWork_s, 0.010); // half of its time; processor time, so that a busy machine is no matter
    EXPECT_EQ(session.snapshot()->garbageBytes, 0u);
    EXPECT_EQ(session.snapshot()->recorderSays.english(), "");
    expectHeap(before, after, static_cast<double>(sent));
    expectInOrder(path, sent);
    std::remove(path.c_str());
}

namespace {

// A meter at three readings a second with a clock of its own, which needs no room for what it will send.
class EndlessLink final : public Link {
public:
    EndlessLink(MeterDescription meter, std::size_t readings) : meter_(std::move(meter)), readings_(readings) {}
    Status open() override { return Done{}; }
    int descriptor() const override { return -1; }
    LinkEvent read(std::span<std::uint8_t> buffer) override {
        if (sent_ == readings_) return {.kind = LinkEvent::Kind::ended, .bytes = 0, .arrived = now()};
        ++sent_;
        const auto frame = encodeFrame(meter_.frame, number(volts_V(sent_)), 0.001);
        std::copy(frame.begin(), frame.end(), buffer.begin());
        return {LinkEvent::Kind::bytes, frame.size(), now()};
    }
    Status write(std::span<const std::uint8_t>) override { return Done{}; }
    Time now() const override { return Time(333'333) * static_cast<std::int64_t>(sent_); }
    Time nextDue() const override { return Time(0); }
    std::string name() const override { return "endless meter"; }

    // A pedal at rest with a millivolt of noise; every ten minutes a dropout, every hour another level.
    static double volts_V(std::size_t index) {
        if (index % 1800 == 900) return 0.1;
        return 0.812 + 0.001 * static_cast<double>(index * 7 % 3) + 0.01 * static_cast<double>(index / 10'800 % 5);
    }

private:
    MeterDescription meter_;
    std::size_t readings_, sent_ = 0;
};

} // namespace

TEST(Endurance, ADayLeavesMemoryFlat) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    const std::size_t hours = static_cast<std::size_t>(test::scaled(2, 24)), readings = hours * 10'800;
    const std::string path = capturePath("day");
    const double before = heapBytes();
    auto started = Session::start({std::make_unique<EndlessLink>(meter, readings), meter}, headerFor(meter),
                                  {.guided = false, .capturePath = path, .replaySpeed = 0, .seed = 1});
    ASSERT_TRUE(started) << started.error().text();
    Session& session = **started;
    const auto begin = Clock::now();
    while (session.running()) std::this_thread::sleep_for(1ms);
    const double after = heapBytes();
    session.stop();
    std::printf("%zu hours in %.1f s\n", hours, std::chrono::duration<double>(Clock::now() - begin).count());
    EXPECT_EQ(session.snapshot()->findings->readings, readings);
    EXPECT_GE(session.snapshot()->findings->excursions.size(), hours * 6 - 1);
    expectHeap(before, after, static_cast<double>(readings));
    const auto capture = loadCapture(path);
    ASSERT_TRUE(capture) << capture.error().text();
    ASSERT_EQ(capture.value().readings.size(), readings);
    for (std::size_t i = 0; i < readings; ++i)
        ASSERT_NEAR(capture.value().readings[i].volts_V, EndlessLink::volts_V(i + 1), 1e-9) << i;
    std::remove(path.c_str());
}

} // namespace stillwire
