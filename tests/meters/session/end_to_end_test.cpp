// SPDX-License-Identifier: GPL-3.0-or-later
// The main job on real input: a simulated meter speaks its frames into a kernel terminal, libserialport reads them,
// the procedure leads a simulated hand, the session records, and the capture is analysed and held against the bench's
// truth.
#include "core/capture/reader.hpp"
#include "core/examination_capture.hpp"
#include "meters/bench/simulated_meter.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/link/clock.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/kernel_tty.hpp"
#include "tests/support/lent_clock.hpp"
#include "tests/support/source_folder.hpp"

#include <array>
#include <atomic>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <mutex>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace std::chrono_literals;

constexpr int kSpeed = 16;        // eleven minutes in well under one
constexpr double kLevel_V = 0.04; // a worn contact and an unsteady foot lie between the level and the meter

std::string scriptText(const std::string& name) {
    return fileText(test::sourceFile("resources/bench/" + name + ".toml"));
}

TEST(EndToEnd, AWornSensorIsFoundThroughAKernelTerminal) {
    const std::string meterPath = test::sourceFile("resources/meters/text-line-logger.toml");
    auto meter = parseMeterDescription(fileText(meterPath), meterPath);
    ASSERT_TRUE(meter) << meter.error().text();
    auto script = parseBenchScript(scriptText("worn-cold"), "worn-cold");
    ASSERT_TRUE(script) << script.error().text();
    const CaptureHeader header = headerFor(*meter);
    auto simulated = simulatedMeter(*script, *header.sheet, *meter, 13, 1, bootTime);
    ASSERT_TRUE(simulated) << simulated.error().text();

    lent::setClockSpeed(kSpeed);
    KernelTty tty;
    std::mutex bench; // one thread at a time
    ASSERT_TRUE(simulated->link->open());
    const Time started = bootTime();
    SessionOptions options{.guided = true, .capturePath = capturePath("end-to-end"), .seed = 3};
    options.hand = [&](const Prompt& prompt, Time) {
        const std::lock_guard lock(bench);
        return simulated->hand(prompt, bootTime() - started);
    };
    auto live = Session::start(makeSerialLink(KernelTty::kPort, meter->link), makeDecoder(*meter), header, options);
    ASSERT_TRUE(live) << live.error().text();
    std::atomic<bool> over{false};
    std::thread instrument([&] {
        std::array<std::uint8_t, 256> buffer{};
        while (!over) {
            LinkEvent event;
            {
                const std::lock_guard lock(bench);
                event = simulated->link->read(buffer);
            }
            if (event.kind == LinkEvent::Kind::bytes)
                tty.send(std::span(buffer).first(event.bytes));
            else
                std::this_thread::sleep_for(1ms);
        }
    });
    for (const auto end = std::chrono::steady_clock::now() + 120s;
         live.value()->running() && std::chrono::steady_clock::now() < end;)
        std::this_thread::sleep_for(10ms);
    const bool finished = !live.value()->running();
    over = true;
    instrument.join();
    const auto seen = live.value()->snapshot();
    live.value()->stop();
    lent::setClockSpeed(1);
    ASSERT_TRUE(finished) << "at step " << (seen->prompt.step ? stepName(*seen->prompt.step) : "none");

    auto capture = loadCapture(options.capturePath);
    ASSERT_TRUE(capture) << capture.error().text();
    Examination examination({*header.sheet, meter->traits, true, header.probe, header.black});
    pushRows(*capture, examination);
    const Findings found = examination.findings();
    const Truth truth = simulated->truth();
    std::printf("%zu readings, %zu dropouts shown, %zu contact events, verdict %s, truth %s\n", found.readings,
                found.excursions.size(), truth.events.size(), decisionName(found.verdict.decision),
                decisionName(truth.verdict));
    EXPECT_EQ(found.verdict.decision, truth.verdict);
    EXPECT_EQ(found.readings, seen->findings->readings);
    EXPECT_EQ(found.verdict.decision, seen->findings->verdict.decision);
    ASSERT_EQ(found.positions.size(), truth.level_V.size());
    for (std::size_t i = 0; i < truth.level_V.size(); ++i) {
        ASSERT_TRUE(found.positions[i].level_V);
        EXPECT_NEAR(*found.positions[i].level_V, truth.level_V[i], kLevel_V) << found.positions[i].name;
    }
    ASSERT_TRUE(found.reference && found.ground);
    EXPECT_NEAR(found.reference->level_V, truth.reference_V, 0.005 * truth.reference_V + 0.004);
    EXPECT_NEAR(found.ground->level_V, truth.ground_V, 0.004);
    std::remove(options.capturePath.c_str());
}

} // namespace
} // namespace stillwire
