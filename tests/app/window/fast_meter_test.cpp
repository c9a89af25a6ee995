// SPDX-License-Identifier: GPL-3.0-or-later
// Ten thousand readings a second into the real window: none is lost and it still answers. Seconds in every run, ten
// minutes with STILLWIRE_LONG set.
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/start/bench_doors.hpp"
#include "core/capture/reader.hpp"
#include "tests/support/long_run.hpp"
#include "tests/support/tty_run.hpp"

#include <atomic>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <thread>

#include <QSettings>
#include <QTest>
#include <QTimer>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace std::chrono_literals;

constexpr int kSignals_ms = 20;

// Processor time of the window's thread, so that a busy computer is no matter.
double threadSeconds() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

TEST(FastMeter, NoneIsLostAndTheWindowStillAnswers) {
    QSettings().clear();
    KernelTty tty;
    BenchWindow window(std::make_unique<BenchDoors>());
    window.show();
    QTest::qWait(20);
    Way way;
    way.kind = Way::Kind::port;
    way.port = KernelTty::kPort;
    way.meter = "text-line-logger";
    way.sheet = "resurfacer-drive-pedal";
    window.open(way);
    ASSERT_EQ(window.page(), &window.bench());
    QTest::qWait(60); // what comes sooner might be torn

    const MeterDescription meter = shippedMeter("text-line-logger");
    const int blocks = test::scaled(2, 600) * 100;
    std::atomic<bool> sent{false}, refused{false};
    std::jthread instrument([&] {
        const auto begin = std::chrono::steady_clock::now();
        for (int block = 0; block < blocks && !refused; ++block) {
            std::vector<std::uint8_t> bytes;
            for (int i = 0; i < 100; ++i) {
                const auto frame = encodeFrame(meter.frame, number((block * 100 + i) % 5000 / 1e3), 0.001);
                bytes.insert(bytes.end(), frame.begin(), frame.end());
            }
            if (!tty.send(bytes)) refused = true;
            std::this_thread::sleep_until(begin + (block + 1) * 10ms);
        }
        sent = true;
    });
    // The window is asked fifty times a second; between two answers it may not work for long.
    double worst_s = 0, before_s = threadSeconds();
    int answers = 0;
    QTimer asks;
    QObject::connect(&asks, &QTimer::timeout, &asks, [&] {
        const double now_s = threadSeconds();
        worst_s = std::max(worst_s, now_s - before_s);
        before_s = now_s;
        ++answers;
    });
    asks.start(kSignals_ms);
    bool turned = true;
    while (!sent) {
        window.press(KeyAction::keys); // to the page of keys, and back
        turned = turned && window.page() != &window.bench();
        QTest::qWait(200);
        window.press(KeyAction::keys);
        turned = turned && window.page() == &window.bench();
        QTest::qWait(300);
    }
    EXPECT_TRUE(turned);
    EXPECT_FALSE(refused);
    const auto all = static_cast<std::size_t>(blocks) * 100;
    EXPECT_TRUE(QTest::qWaitFor([&] { return window.feed().session()->snapshot()->trace.size() >= all; }, 60'000));
    asks.stop();
    std::printf("%zu readings; the window answered %d times, and worked %.1f ms at most in between\n", all, answers,
                1e3 * worst_s);
    EXPECT_LT(worst_s, 0.25);
    const std::string path = window.feed().session()->snapshot()->capturePath;
    EXPECT_EQ(window.feed().session()->snapshot()->garbageBytes, 0U);
    window.leaveBench();
    const auto capture = loadCapture(path);
    ASSERT_TRUE(capture) << capture.error().text();
    EXPECT_EQ(capture.value().readings.size(), all);
}

} // namespace
} // namespace stillwire
