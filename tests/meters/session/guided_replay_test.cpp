// SPDX-License-Identifier: GPL-3.0-or-later
// What a live run recorded says the same when it is played again.
#include "meters/bench/simulated_meter.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"

#include <chrono>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {

using namespace std::chrono_literals;
using Clock = std::chrono::steady_clock;

// The bench's meter under the procedure, led to the end by its own hand, replays to the same verdict.
TEST(GuidedReplay, ARunOnTheSimulatedMeterReplaysTheSame) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    const CaptureHeader header = headerFor(meter);
    auto simulated = simulatedMeter(BenchScript{}, *header.sheet, meter, 5, 0, {});
    ASSERT_TRUE(simulated) << simulated.error().text();
    SessionOptions options{.guided = true, .capturePath = capturePath("guided"), .replaySpeed = 0, .seed = 5};
    options.hand = simulated.value().hand;
    auto live = Session::start({std::move(simulated.value().link), meter}, header, options);
    ASSERT_TRUE(live) << live.error().text();
    for (const auto end = Clock::now() + 60s; live.value()->running() && Clock::now() < end;)
        std::this_thread::sleep_for(5ms);
    ASSERT_FALSE(live.value()->running());
    const auto seen = live.value()->snapshot();
    EXPECT_TRUE(seen->prompt.finished);
    EXPECT_GT(seen->findings->readings, 500u);
    auto replay = loadCapture(options.capturePath);
    ASSERT_TRUE(replay) << replay.error().text();
    auto again = Session::replay(std::move(*replay), options.capturePath, {.guided = false, .replaySpeed = 0});
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
