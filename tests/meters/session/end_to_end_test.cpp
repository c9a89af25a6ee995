// SPDX-License-Identifier: GPL-3.0-or-later
// The main job on real input: a simulated meter speaks its frames into a kernel terminal, libserialport reads them,
// the procedure leads a simulated hand, the session records, and the capture is analysed and held against the bench's
// truth. Time passes only while the session waits for the port, and the meter plays then.
#include "core/capture/reader.hpp"
#include "core/examination_capture.hpp"
#include "meters/bench/simulated_meter.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/link/clock.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/kernel_tty.hpp"
#include "tests/support/lent_calls.hpp"
#include "tests/support/lent_clock.hpp"
#include "tests/support/source_folder.hpp"
#include "tests/support/within.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <functional>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace std::chrono_literals;

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

    lent::setClockSpeed(0);
    KernelTty tty;
    ASSERT_TRUE(simulated->link->open());
    const Time started = bootTime();
    SessionOptions options{.guided = true, .capturePath = capturePath("end-to-end"), .seed = 3};
    options.hand = [&](const Prompt& prompt, Time) {
        std::vector<Command> said = simulated->hand(prompt, bootTime() - started);
        // It goes on to the ends, which are compared below.
        if (prompt.question == Question::finish)
            std::replace(said.begin(), said.end(), Command::offerYes, Command::offerNo);
        return said;
    };
    const std::function<void(int)> plays = [&](int limit_ms) {
        std::array<std::uint8_t, 256> buffer{};
        for (int passed_ms = 0; passed_ms < limit_ms; ++passed_ms) {
            lent::passBy(1ms);
            const LinkEvent event = simulated->link->read(buffer);
            if (event.kind != LinkEvent::Kind::bytes) continue;
            EXPECT_TRUE(tty.send(std::span(buffer).first(event.bytes)) && tty.waitArrived());
            return;
        }
    };
    lent::state().waits = &plays;
    auto live = Session::start({makeSerialLink(KernelTty::kPort, meter->link), *meter}, header, options);
    ASSERT_TRUE(live) << live.error().text();
    const bool finished = within(300s, [&] { return !live.value()->running(); }); // two on a free computer
    const auto seen = live.value()->snapshot();
    live.value()->stop();
    lent::state().waits = nullptr;
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
