// SPDX-License-Identifier: GPL-3.0-or-later
// What really comes out of the sound device: by hand, through a sound server of its own; see with_a_sink.
#include "app/window/sound/hum.hpp"
#include "app/window/sound/speaker.hpp"
#include "tests/app/support/hearing.hpp"

#include <csignal>
#include <cstring>

#include <QFile>
#include <QProcess>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Heard : public ::testing::Test {
protected:
    void SetUp() override {
        speaker.load();
        ASSERT_TRUE(QTest::qWaitFor([this] { return speaker.available(); }, 20'000)) << "no device: use with_a_sink";
        ASSERT_NO_FATAL_FAILURE(record());
        speaker.run(true);
        QTest::qWait(500);
        (void)recorder.readAll();
    }
    void record() {
        recorder.start("parec", {"-d", "out.monitor", "--raw", "--format=float32le", "--rate=48000", "--channels=1",
                                 "--latency-msec=10"});
        ASSERT_TRUE(recorder.waitForStarted());
        ASSERT_TRUE(QTest::qWaitFor([this] { return recorder.bytesAvailable() > 0; }, 10'000));
    }
    // It is back after five seconds.
    void killServer() {
        QFile process(qEnvironmentVariable("PULSE_RUNTIME_PATH") + "/server");
        ASSERT_TRUE(process.open(QIODevice::ReadOnly));
        ASSERT_EQ(::kill(process.readAll().trimmed().toInt(), SIGKILL), 0);
        recorder.waitForFinished();
        ASSERT_TRUE(QTest::qWaitFor(
            [] {
                return QProcess::execute("sh", {"-c", "pactl info >/dev/null 2>&1"}) == 0;
            },
            20'000));
        ASSERT_NO_FATAL_FAILURE(record());
    }
    void TearDown() override {
        recorder.kill();
        recorder.waitForFinished();
    }
    std::vector<float> listen(int ms) {
        QTest::qWait(ms);
        const QByteArray bytes = recorder.readAll();
        std::vector<float> samples(static_cast<std::size_t>(bytes.size()) / sizeof(float));
        std::memcpy(samples.data(), bytes.data(), samples.size() * sizeof(float));
        return samples;
    }
    Speaker speaker;
    QProcess recorder;
};

TEST_F(Heard, EveryTickAndEveryDropout) {
    const Tone struck[] = {Tone::tick, Tone::tick, Tone::down, Tone::tick, Tone::up,   Tone::tick,
                           Tone::down, Tone::up,   Tone::tick, Tone::tick, Tone::down, Tone::tick};
    for (const Tone tone : struck) {
        speaker.play(tone);
        const auto heard = listen(600);
        const auto found = test::sounds(heard);
        ASSERT_EQ(found.size(), 1U) << "of one tone";
        const auto [from_s, to_s] = found.front();
        printf("%s: %.0f ms after it was struck, %.0f ms long, peak %.2f\n",
               tone == Tone::tick ? "tick" : (tone == Tone::down ? "down" : "up"), 1000 * from_s,
               1000 * (to_s - from_s), test::peak(heard));
        EXPECT_LT(test::peak(heard), 0.55);
        EXPECT_LT(test::steepest(heard), 0.15); // 0.089 is the slope of the steepest tone
        if (tone == Tone::tick) {
            EXPECT_LT(to_s - from_s, 0.05);
            EXPECT_GT(test::strength(heard, 1130, from_s, to_s), 0.1);
        } else {
            const double first_Hz = tone == Tone::down ? 905 : 615, last_Hz = tone == Tone::down ? 405 : 1365;
            EXPECT_GT(test::strength(heard, first_Hz, from_s, from_s + 0.055), 0.3);
            EXPECT_GT(test::strength(heard, last_Hz, to_s - 0.09, to_s - 0.01), 0.3);
        }
    }
}

TEST_F(Heard, TheVoltageAndNothingOnceItIsMuted) {
    speaker.hum(true);
    for (const double volts_V : {0.82, 2.5, 4.1}) {
        speaker.follow(humFrequency_Hz(volts_V, 5.0));
        (void)listen(400);
        const auto heard = listen(500);
        const double right = test::strength(heard, humFrequency_Hz(volts_V, 5.0), 0, 0.4);
        printf("%.2f V: %.0f Hz at %.3f\n", volts_V, humFrequency_Hz(volts_V, 5.0), right);
        EXPECT_NEAR(right, 0.1, 0.02);
        EXPECT_LT(test::strength(heard, humFrequency_Hz(volts_V + 0.2, 5.0), 0, 0.4), 0.03);
    }
    speaker.run(false);
    const auto after = listen(1500);
    const auto found = test::sounds(after);
    const double silent_s = found.empty() ? 0 : found.back().second;
    printf("silent %.0f ms after it was muted\n", 1000 * silent_s);
    EXPECT_LT(silent_s, 0.5);
    speaker.run(true);
    EXPECT_GT(test::peak(listen(1000)), 0.05); // and back
}

TEST_F(Heard, AServerThatComesBackIsPlayedOnAgain) {
    for (const bool running : {true, false}) { // when it goes
        speaker.run(running);
        QTest::qWait(1000);
        ASSERT_NO_FATAL_FAILURE(killServer());
        speaker.run(true);
        double after_s = 0;
        bool heard = false;
        for (; after_s < 15 && !heard; after_s += 1) {
            speaker.play(Tone::down);
            heard = test::peak(listen(1000)) > 0.4;
        }
        printf("heard %.0f s after it was back\n", after_s);
        ASSERT_TRUE(heard) << (running ? "while it played" : "while it rested");
    }
}

} // namespace
} // namespace stillwire
