// SPDX-License-Identifier: GPL-3.0-or-later
// The command line under the real Linux driver of a USB serial adapter (the emulator's model of one), which is pulled
// in the middle of a reading, put back, renamed, and replaced by another. Readings are numbered, so that one that is
// lost, doubled or invented shows.
#include "core/capture/reader.hpp"
#include "meters/decode/encode.hpp"
#include "meters/describe/description.hpp"
#include "tests/support/source_folder.hpp"
#include "tests/usb/computer.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <memory>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

MeterDescription meterNamed(const std::string& name) {
    const std::string path = test::sourceFile("resources/meters/" + name + ".toml");
    std::ifstream file(path, std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(file)), {});
    auto parsed = parseMeterDescription(text, path);
    EXPECT_TRUE(parsed) << parsed.error().text();
    return parsed ? std::move(parsed.value()) : MeterDescription{};
}

// The number of a reading is in its millivolts.
constexpr int kMostNumbers = 5000;

class UsbAdapter : public testing::Test {
protected:
    static void SetUpTestSuite() {
        computer = std::make_unique<Computer>(test::sourceFile("build/usb"));
        const auto before = std::chrono::steady_clock::now();
        ASSERT_TRUE(computer->boot());
        std::printf("booted in %.1f s\n",
                    std::chrono::duration<double>(std::chrono::steady_clock::now() - before).count());
    }
    static void TearDownTestSuite() { computer.reset(); }

    void TearDown() override {
        pc().run("kill -9 $pid $holder 2>/dev/null; wait; rm -rf /tmp/* /tmp/.local; holder=; pid=");
        pc().ours.pull();
        pc().other.pull();
        EXPECT_TRUE(pc().until("[ -z \"$(ls /dev | grep ttyUSB)\" ]"));
    }

    static Computer& pc() { return *computer; }

    void plugIn() {
        ASSERT_TRUE(pc().ours.plug());
        ASSERT_TRUE(pc().until("[ -e /dev/ttyUSB0 ]"));
    }

    void record(const std::string& meterName) {
        meter = meterNamed(meterName);
        (void)pc().traced();
        pc().run("stillwire record --port /dev/ttyUSB0 --meter " + meterName +
                 " --sheet resurfacer-drive-pedal --no-guide -o /tmp/c.csv </dev/null >/tmp/said 2>&1 & pid=$!");
        ASSERT_TRUE(pc().until("grep -q ^time_s /tmp/c.csv 2>/dev/null")) << pc().run("cat /tmp/said").out;
        pc().run("sleep 1"); // what comes within 50 ms of the opening might be torn
    }

    void send(int count) {
        for (int i = 0; i < count; ++i) {
            Reading reading;
            reading.volts_V = static_cast<double>(++sent % kMostNumbers) / 1000;
            ASSERT_TRUE(pc().ours.send(encodeFrame(meter.frame, reading, 0.001)));
        }
    }

    // Rows of the capture that are readings.
    bool recorded(int count, int seconds = 30) {
        return pc().until("[ $(grep -c '^[0-9.]*,[0-9]' /tmp/c.csv) -ge " + std::to_string(count) + " ]", seconds);
    }
    testing::AssertionResult said(const std::string& text, int times = 1) {
        if (pc().until("[ $(grep -c '" + text + "' /tmp/said) -ge " + std::to_string(times) + " ]"))
            return testing::AssertionSuccess();
        return testing::AssertionFailure() << "not \"" << text << "\" in:\n" << pc().run("cat /tmp/said").out;
    }

    Capture ended() {
        pc().run("kill -INT $pid; wait $pid");
        const std::string text = pc().run("cat /tmp/c.csv").out;
        std::ofstream("capture.csv", std::ios::binary) << text;
        auto capture = loadCapture("capture.csv");
        EXPECT_TRUE(capture) << capture.error().text();
        return capture ? std::move(capture.value()) : Capture{};
    }

    static std::unique_ptr<Computer> computer;
    MeterDescription meter;
    int sent = 0;
};

std::unique_ptr<Computer> UsbAdapter::computer;

// The rest of the last line after `start`.
std::string lastOf(const std::vector<std::string>& lines, const std::string& start) {
    std::string found;
    for (const std::string& line : lines)
        if (const auto at = line.find(start); at != std::string::npos) found = line.substr(at + start.size());
    return found;
}

// Request 1 of the adapter's vendor requests sets modem lines: bit 0 DTR, bit 1 RTS, and eight bits higher which of
// them it is about (as the header of its Linux driver documents).
bool modemLine(const std::vector<std::string>& lines, int bit) {
    bool up = false;
    const std::string start = "got control 0x4001, value ";
    for (const std::string& line : lines) {
        const auto at = line.find(start);
        if (at == std::string::npos) continue;
        const int value = std::stoi(line.substr(at + start.size()), nullptr, 16);
        if ((value >> (8 + bit) & 1) != 0) up = (value >> bit & 1) != 0;
    }
    return up;
}

// The numbers of the readings between gap marks.
std::vector<std::vector<int>> runsOf(const Capture& capture) {
    std::vector<std::vector<int>> runs(1);
    for (const Capture::Row& row : capture.rows) {
        if (row.isMark && capture.marks[row.index].text() == "gap") runs.emplace_back();
        if (!row.isMark)
            runs.back().push_back(static_cast<int>(std::lround(capture.readings[row.index].volts_V * 1000)));
    }
    return runs;
}

void expectNumbers(const std::vector<int>& run, int first, int atLeast, int atMost) {
    EXPECT_GE(run.size(), static_cast<std::size_t>(atLeast));
    EXPECT_LE(run.size(), static_cast<std::size_t>(atMost));
    for (std::size_t i = 0; i < run.size(); ++i)
        ASSERT_EQ(run[i], first + static_cast<int>(i)) << "at " << i << ": one is lost, doubled or invented";
}

} // namespace

TEST_F(UsbAdapter, PulledInAReadingPutBackAndRenamed) {
    plugIn();
    EXPECT_NE(pc().run("stillwire ports").out.find("/dev/ttyUSB0"), std::string::npos);
    record("text-line-logger");
    send(100);
    ASSERT_TRUE(recorded(100));

    // Out in the middle of the stream and of a line.
    send(40);
    const std::string half = "4.9";
    ASSERT_TRUE(pc().ours.send({reinterpret_cast<const std::uint8_t*>(half.data()), half.size()}));
    pc().ours.pull();
    ASSERT_TRUE(said("is gone: put the cable back"));
    // Two seconds of waiting cost next to nothing: a spin would take nearly two hundred hundredths.
    const std::string used = pc().run("a=$(cat /proc/$pid/stat); sleep 2; b=$(cat /proc/$pid/stat); set -- ${a##*)}; "
                                      "x=$((${12}+${13})); set -- "
                                      "${b##*)}; echo $((${12}+${13}-x))")
                                 .out;
    std::printf("processor time in 200 hundredths of a second without the adapter: %d\n", std::stoi(used));
    EXPECT_LT(std::stoi(used), 50);

    // Back under the same name.
    ASSERT_TRUE(pc().ours.plug());
    ASSERT_TRUE(said("/dev/ttyUSB0 is back"));
    pc().run("sleep 1");
    const int second = sent + 1;
    send(100);
    ASSERT_TRUE(recorded(200));

    // Another process holds the old name: it comes back under a new one.
    pc().run("sleep 9999 </dev/ttyUSB0 & holder=$!");
    ASSERT_TRUE(pc().until("ls -l /proc/$holder/fd/0 | grep -q ttyUSB0")); // or the name would be free again
    pc().ours.pull();
    ASSERT_TRUE(said("is gone", 2));
    ASSERT_TRUE(pc().ours.plug());
    ASSERT_TRUE(said("the adapter is back as /dev/ttyUSB1"));
    pc().run("sleep 1");
    const int third = sent + 1;
    send(100);
    ASSERT_TRUE(recorded(300));

    const auto runs = runsOf(ended());
    ASSERT_EQ(runs.size(), 3u);
    std::printf("recorded %zu of 140, %zu of 100, %zu of 100; the rest of the first never left the adapter\n",
                runs[0].size(), runs[1].size(), runs[2].size());
    expectNumbers(runs[0], 1, 100, 140);
    expectNumbers(runs[1], second, 100, 100);
    expectNumbers(runs[2], third, 100, 100);
}

TEST_F(UsbAdapter, AnotherAdapterUnderItsNameIsNotTakenForIt) {
    plugIn();
    record("text-line-logger");
    send(20);
    ASSERT_TRUE(recorded(20));
    pc().ours.pull();
    ASSERT_TRUE(said("is gone"));
    ASSERT_TRUE(pc().other.plug());
    ASSERT_TRUE(pc().until("[ -e /dev/ttyUSB0 ]"));
    const std::string wrong = "4.999 V DC\r\n";
    for (int i = 0; i < 30; ++i) {
        ASSERT_TRUE(pc().other.send({reinterpret_cast<const std::uint8_t*>(wrong.data()), wrong.size()}));
        pc().run("usleep 100000");
    }
    ASSERT_TRUE(pc().ours.plug());
    ASSERT_TRUE(said("the adapter is back as /dev/ttyUSB1"));
    pc().run("sleep 1");
    send(20);
    ASSERT_TRUE(recorded(40));
    const auto runs = runsOf(ended());
    ASSERT_EQ(runs.size(), 2u);
    expectNumbers(runs[0], 1, 20, 20);
    expectNumbers(runs[1], 21, 20, 20);
}

TEST_F(UsbAdapter, ARecordingThatWasKilledIsToldOfAtTheNextStart) {
    plugIn();
    record("text-line-logger");
    send(20);
    ASSERT_TRUE(recorded(20));
    pc().run("kill -9 $pid; wait $pid; mv /tmp/said /tmp/before; rm -f /tmp/second.csv");
    pc().run(
        "stillwire record --port /dev/ttyUSB0 --meter text-line-logger --sheet resurfacer-drive-pedal --no-guide "
        "-o /tmp/second.csv </dev/null >/tmp/said 2>&1 & pid=$!");
    EXPECT_TRUE(said("A recording was cut short; what arrived is in /tmp/c.csv"));
    const auto runs = runsOf(ended());
    ASSERT_EQ(runs.size(), 1u);
    expectNumbers(runs[0], 1, 20, 20);
}

TEST_F(UsbAdapter, ThirtyThousandLinesAtOnceAllArrive) {
    constexpr int kLines = 30'000;
    plugIn();
    record("text-line-logger");
    const auto before = std::chrono::steady_clock::now();
    send(kLines);
    ASSERT_TRUE(recorded(kLines, 120));
    std::printf("%d lines in %.1f s\n", kLines,
                std::chrono::duration<double>(std::chrono::steady_clock::now() - before).count());
    const Capture capture = ended();
    ASSERT_EQ(capture.readings.size(), static_cast<std::size_t>(kLines));
    for (int i = 0; i < kLines; ++i)
        ASSERT_EQ(std::lround(capture.readings[static_cast<std::size_t>(i)].volts_V * 1000), (i + 1) % kMostNumbers);
}

// What the driver told the adapter: nothing of it can be seen on a pseudo-terminal.
TEST_F(UsbAdapter, SettingsArriveAtTheAdapter) {
    for (const char* const name : {"text-line-logger", "lcd-segment-meter", "ascii-digit-meter"}) {
        SCOPED_TRACE(name);
        plugIn();
        record(name);
        sent = 0;
        send(10);
        EXPECT_TRUE(recorded(10));
        const auto lines = pc().traced();
        EXPECT_EQ(lastOf(lines, "baud rate "), std::to_string(meter.link.baud));
        const char parity = meter.link.parity == Parity::odd ? 'O' : meter.link.parity == Parity::even ? 'E' : 'N';
        EXPECT_EQ(lastOf(lines, "set_data dev 0:1 "), std::string("parity ") + parity + ", data bits " +
                                                          std::to_string(meter.link.bits) + ", stop bits " +
                                                          std::to_string(meter.link.stopBits));
        EXPECT_EQ(lastOf(lines, "flow control "), "0");
        EXPECT_EQ(modemLine(lines, 0), meter.link.dtr);
        EXPECT_EQ(modemLine(lines, 1), meter.link.rts);
        ended();
        pc().run("rm /tmp/c.csv");
        pc().ours.pull();
        ASSERT_TRUE(pc().until("[ ! -e /dev/ttyUSB0 ]"));
    }
}

TEST_F(UsbAdapter, SaysThatItIsBusyOrForbidden) {
    plugIn();
    record("text-line-logger");
    const std::string second = "stillwire record --port /dev/ttyUSB0 --meter text-line-logger --sheet "
                               "resurfacer-drive-pedal --no-guide -o /tmp/second.csv </dev/null 2>&1";
    auto answer = pc().run(second);
    EXPECT_EQ(answer.status, 3);
    EXPECT_NE(answer.out.find("/dev/ttyUSB0: another program holds the port"), std::string::npos) << answer.out;
    EXPECT_NE(answer.out.find("sudo fuser -v /dev/ttyUSB0"), std::string::npos) << answer.out;
    ended();
    answer = pc().run("su nobody -c '" + second + "'");
    EXPECT_EQ(answer.status, 3);
    EXPECT_NE(answer.out.find("/dev/ttyUSB0: you may not open the port"), std::string::npos) << answer.out;
    EXPECT_NE(answer.out.find("usermod -aG dialout"), std::string::npos) << answer.out;
}

} // namespace stillwire
