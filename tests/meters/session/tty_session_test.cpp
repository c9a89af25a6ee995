// SPDX-License-Identifier: GPL-3.0-or-later
// The whole way in over a kernel terminal: frames of every kind through libserialport into a session, onto the disk,
// and back by core's reader; a pulled adapter on the way.
#include "core/capture/reader.hpp"
#include "meters/link/clock.hpp"
#include "tests/support/lent_clock.hpp"
#include "tests/support/source_folder.hpp"
#include "tests/support/tty_run.hpp"

#include <chrono>
#include <cmath>
#include <sys/resource.h>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {

namespace {

using namespace std::chrono_literals;

double cpuSeconds() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_utime.tv_sec + usage.ru_stime.tv_sec) +
           1e-6 * static_cast<double>(usage.ru_utime.tv_usec + usage.ru_stime.tv_usec);
}

// A description as shipped, asked a hundred times a second if it is polled.
MeterDescription quickMeter(const std::string& name) {
    const std::string path = test::sourceFile("resources/meters/" + name + ".toml");
    std::string text = fileText(path);
    const std::size_t at = text.find("poll_interval_s = ");
    if (at != std::string::npos) text.replace(at, text.find('\n', at) - at, "poll_interval_s = 0.01");
    auto parsed = parseMeterDescription(text, path);
    EXPECT_TRUE(parsed);
    return parsed.value();
}

// The instrument's next frame: at once, or when it is asked.
void sendFrame(KernelTty& tty, const MeterDescription& meter, const Reading& reading) {
    std::string heard;
    const auto answer = [&](const std::string& question, const char* reply) {
        const std::size_t at = question.empty() ? std::string::npos : heard.find(question);
        if (at == std::string::npos) return;
        heard.erase(0, at + question.size());
        ASSERT_TRUE(tty.send(reply));
    };
    while (heard.find(meter.link.pollCommand) == std::string::npos) {
        const std::string more = tty.receive(30'000);
        ASSERT_FALSE(more.empty()) << "no poll came";
        heard += more;
        answer(meter.link.identifyCommand, "NOBODY,EXAMPLE,0,1.0\n");
        answer(meter.link.errorCommand, "0,\"No error\"\n");
    }
    ASSERT_TRUE(tty.send(encodeFrame(meter.frame, reading, 0.001)));
}

class EveryMeter : public testing::TestWithParam<const char*> {};

} // namespace

TEST_P(EveryMeter, ReadingsReachTheFileAsTheyWereSent) {
    KernelTty tty;
    const MeterDescription meter = quickMeter(GetParam());
    const TtyRun run(meter, GetParam());
    ASSERT_TRUE(run.session);
    EXPECT_EQ(tty.baud(), static_cast<unsigned>(meter.link.baud));
    EXPECT_EQ(tty.bits(), meter.link.bits);
    EXPECT_EQ(tty.parity(), meter.link.parity == Parity::none ? 'N' : meter.link.parity == Parity::odd ? 'O' : 'E');
    EXPECT_EQ(tty.stopBits(), meter.link.stopBits);
    EXPECT_EQ(tty.dtr(), meter.link.dtr);
    EXPECT_EQ(tty.rts(), meter.link.rts);
    std::vector<Reading> sent;
    for (int i = 0; i < 60; ++i) {
        Reading reading = number(static_cast<double>((i * 777) % 5200 - 100) / 1000.0);
        if (i % 20 == 7) {
            reading = Reading{};
            reading.flags = Flag::overload;
        }
        sent.push_back(reading);
        sendFrame(tty, meter, reading);
    }
    EXPECT_TRUE(run.sees(sent.size()));
    EXPECT_EQ(run.now()->link, LinkState::live);
    run.session->mark("note:last");
    run.session->stop();
    const auto snapshot = run.now();
    EXPECT_EQ(snapshot->garbageBytes, 0u);
    const auto capture = loadCapture(run.path);
    ASSERT_TRUE(capture) << capture.error().text();
    const auto& readings = capture.value().readings;
    ASSERT_EQ(readings.size(), sent.size());
    for (std::size_t i = 0; i < sent.size(); ++i) {
        EXPECT_EQ(readings[i].flags, sent[i].flags) << i;
        EXPECT_EQ(readings[i].hasNumber(), sent[i].hasNumber()) << i;
        EXPECT_TRUE(!sent[i].hasNumber() || readings[i].volts_V == sent[i].volts_V) << i;
        EXPECT_TRUE(i == 0 || readings[i].time >= readings[i - 1].time);
        EXPECT_EQ(readings[i].time, snapshot->trace[i].time);
    }
    ASSERT_EQ(capture.value().marks.size(), 1u);
    EXPECT_EQ(capture.value().marks[0].text(), "note:last");
    // The front panel is handed back.
    const std::string heard = tty.receiveAll();
    for (const std::string& command : meter.link.leaveCommands) EXPECT_NE(heard.find(command), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(TtySession, EveryMeter,
                         testing::Values("text-line-logger", "scpi-bench-meter", "scpi-running-meter",
                                         "lcd-segment-meter", "ascii-digit-meter", "polled-text-meter"));

namespace {

// Pulls the adapter in one of the ways it is pulled, and puts it back.
void pullAndPutBack(KernelTty& tty, const TtyRun& run, const std::string& how) {
    (void)KernelTty::callsSinceAsked();
    tty.setAbsent(true);
    if (how == "vanish" || !tty.hangUp()) tty.vanish();
    EXPECT_TRUE(within(30s, [&] { return run.now()->link == LinkState::lost; }));
    EXPECT_NE(run.now()->linkSays.english().find("put the cable back"), std::string::npos);
    const double before_s = cpuSeconds();
    std::this_thread::sleep_for(700ms);
    EXPECT_LT(cpuSeconds() - before_s, 0.35); // a spin would take all of it
    EXPECT_LT(KernelTty::callsSinceAsked(), 100);
    tty.setAbsent(false);
}

} // namespace

class Pulled : public testing::TestWithParam<const char*> {};

TEST_P(Pulled, TheCaptureGoesOnWithAGapMark) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter("lcd-segment-meter");
    const TtyRun run(meter, std::string("pulled_") + GetParam());
    ASSERT_TRUE(run.session);
    for (int i = 0; i < 5; ++i) sendFrame(tty, meter, number(0.812));
    auto half = encodeFrame(meter.frame, number(0.812), 0.001);
    half.resize(7);
    ASSERT_TRUE(tty.send(half)); // cut in the middle of a frame
    EXPECT_TRUE(run.sees(5));
    pullAndPutBack(tty, run, GetParam());
    ASSERT_TRUE(tty.waitOpened(2, 30'000));
    EXPECT_TRUE(run.says("is back"));
    EXPECT_TRUE(tty.dtr()); // settings are made again
    std::this_thread::sleep_for(60ms);
    for (int i = 0; i < 5; ++i) sendFrame(tty, meter, number(0.813));
    EXPECT_TRUE(run.sees(10));
    EXPECT_TRUE(within(30s, [&] { return run.now()->link == LinkState::live; }));
    EXPECT_NE(run.now()->linkSays.english().find("is back"), std::string::npos);
    run.session->stop();
    const auto capture = loadCapture(run.path);
    ASSERT_TRUE(capture) << capture.error().text();
    EXPECT_EQ(capture.value().readings.size(), 10u);
    ASSERT_EQ(capture.value().marks.size(), 1u);
    EXPECT_EQ(capture.value().marks[0].text(), "gap");
    ASSERT_EQ(capture.value().rows.size(), 11u);
    EXPECT_TRUE(capture.value().rows[5].isMark); // between what came before and after
}

INSTANTIATE_TEST_SUITE_P(TtySession, Pulled, testing::Values("hangup", "vanish"));

TEST(TtySession, AComputerThatSleptLeavesAGap) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter("text-line-logger");
    const TtyRun run(meter, "slept");
    ASSERT_TRUE(run.session);
    for (int i = 0; i < 5; ++i) sendFrame(tty, meter, number(0.812));
    EXPECT_TRUE(run.sees(5));
    ASSERT_TRUE(tty.send("0.8") && tty.waitTaken()); // a line that the sleep tears
    lent::sleepFor(1h);
    ASSERT_TRUE(tty.send("99 V DC\r\n")); // the rest of another
    for (int i = 0; i < 5; ++i) sendFrame(tty, meter, number(0.813));
    EXPECT_TRUE(run.sees(10));
    EXPECT_NE(run.now()->linkSays.english().find("the computer slept for"), std::string::npos);
    run.session->stop();
    const auto capture = loadCapture(run.path);
    ASSERT_TRUE(capture) << capture.error().text();
    ASSERT_EQ(capture.value().readings.size(), 10u);
    for (std::size_t i = 0; i < 10; ++i) EXPECT_EQ(capture.value().readings[i].volts_V, i < 5 ? 0.812 : 0.813);
    ASSERT_EQ(capture.value().marks.size(), 1u);
    EXPECT_EQ(capture.value().marks[0].text(), "gap");
    EXPECT_TRUE(capture.value().rows[5].isMark); // before what came after the sleep
    EXPECT_GE(capture.value().readings[5].time - capture.value().readings[4].time, Time(1h));
    std::vector<BlindSpan> blind = run.now()->findings->blind;
    std::erase_if(blind, [](const BlindSpan& span) { return span.to - span.from < 1min; }); // the test's own pauses
    ASSERT_EQ(blind.size(), 1u);
    EXPECT_EQ(blind[0].cause, BlindCause::gap);
}

TEST(TtySession, AMarkIsStampedAtTheKeyAndNeverBeforeTheLastRow) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter("text-line-logger");
    const TtyRun run(meter, "marks");
    ASSERT_TRUE(run.session);
    for (int i = 0; i < 20; ++i) {
        sendFrame(tty, meter, number(0.812));
        run.session->mark("note:" + std::to_string(i));
        std::this_thread::sleep_for(2ms);
    }
    EXPECT_TRUE(run.sees(20));
    run.session->stop();
    const auto capture = loadCapture(run.path); // refuses times that go back
    ASSERT_TRUE(capture) << capture.error().text();
    ASSERT_EQ(capture.value().marks.size(), 20u);
    for (std::size_t i = 0; i < 20; ++i) EXPECT_EQ(capture.value().marks[i].text(), "note:" + std::to_string(i));
}

TEST(TtySession, SaysThatTheFunctionIsWrongAndThatBytesAreNoFrames) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter("text-line-logger");
    const TtyRun run(meter, "wrong");
    ASSERT_TRUE(run.session);
    tty.send("1.234 kOhm\r\n");
    EXPECT_TRUE(run.says("DC volts"));
    for (int i = 0; i < 32; ++i) {
        EXPECT_TRUE(tty.send("\xF0\x9A\x03\r\n") && tty.waitTaken());
        lent::passBy(100ms);
    }
    EXPECT_TRUE(run.says("check 9600 baud")) << run.now()->linkSays.english();
    EXPECT_EQ(run.now()->link, LinkState::silent);
    EXPECT_TRUE(within(30s, [&] { return run.now()->garbageBytes == 96u; }));
    run.session->stop();
}

TEST(TtySession, SkipsATornFirstLine) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter("text-line-logger");
    const std::string path = capturePath("torn");
    lent::setClockSpeed(0); // however long it takes, it takes no time
    auto session = Session::start({makeSerialLink(KernelTty::kPort, meter.link), meter}, headerFor(meter),
                                  {.guided = false, .capturePath = path, .replaySpeed = 1, .seed = 1});
    ASSERT_TRUE(session);
    // The rest of 0.823 V: it was being sent when the port opened.
    ASSERT_TRUE(tty.send("23 V DC\r\n") && tty.waitTaken());
    session.value()->mark("note:taken"); // shown once what was read before it is dealt with
    EXPECT_TRUE(within(30s, [&] { return !session.value()->snapshot()->marks.empty(); }));
    lent::setClockSpeed(1);
    std::this_thread::sleep_for(60ms);
    ASSERT_TRUE(tty.send("0.824 V DC\r\n"));
    EXPECT_TRUE(within(30s, [&] { return session.value()->snapshot()->trace.size() == 1; }));
    EXPECT_EQ(session.value()->snapshot()->trace[0].volts_V, 0.824);
    session.value()->stop();
    std::remove(path.c_str());
}

} // namespace stillwire
