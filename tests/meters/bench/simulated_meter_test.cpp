// SPDX-License-Identifier: GPL-3.0-or-later
// The bench on a link: frames through a decoder, and the whole guided run by a live procedure with the simulated
// hand.
#include "core/capture/writer.hpp"
#include "meters/bench/simulated_meter.hpp"
#include "meters/decode/decoder.hpp"
#include "tests/meters/bench/guided.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using bench::FaultKind;
using test::guide;
using test::Guided;

MeterDescription description(FrameKind kind) { return test::describedMeter(test::MeterKind::fair, kind); }

Decision saidOf(FaultKind fault) { return guide({.fault = fault, .seed = 4}).findings.verdict.decision; }

bool saw(const Guided& run, const std::string& mark) {
    return std::any_of(run.marks.begin(), run.marks.end(), [&](const Mark& m) { return m.text() == mark; });
}

std::string rowsOf(const Guided& run) {
    std::string rows;
    for (const Mark& mark : run.marks) rows += formatRow(mark);
    for (const Reading& reading : run.readings) rows += formatRow(reading);
    return rows;
}

// The first readings need no procedure: the same rig, hand off, must say the same through bytes as without them.
TEST(SimulatedMeter, EveryKindOfFrameCarriesTheSameReadings) {
    std::vector<Reading> first;
    for (const FrameKind kind : {FrameKind::text, FrameKind::scpi, FrameKind::segments, FrameKind::polled}) {
        const MeterDescription meter = description(kind);
        Result<SimulatedMeter> made =
            simulatedMeter(test::benchScript(FaultKind::dirtySpot), test::pedalSheet(), meter, 5, 0, nullptr);
        ASSERT_TRUE(made.ok());
        const auto decoder = makeDecoder(meter);
        std::vector<Reading> readings;
        std::array<std::uint8_t, 5> buffer{}; // frames come in pieces
        for (int i = 0; i < 3000; ++i) {
            const LinkEvent event = made->link->read(buffer);
            decoder->push(std::span(buffer).first(event.bytes), event.arrived, readings);
        }
        ASSERT_GT(readings.size(), 100u) << frameKindName(kind);
        EXPECT_EQ(decoder->droppedBytes(), 0u);
        if (first.empty()) first = readings;
        for (std::size_t i = 0; i < std::min(first.size(), readings.size()); ++i) {
            ASSERT_EQ(readings[i].volts_V, first[i].volts_V) << frameKindName(kind) << " " << i;
            ASSERT_EQ(readings[i].time, first[i].time);
        }
    }
}

TEST(SimulatedMeter, KeepsPaceWithAClock) {
    Time clock{5000000};
    Result<SimulatedMeter> made = simulatedMeter(test::benchScript(std::nullopt), test::pedalSheet(),
                                                 description(FrameKind::text), 5, 10, [&] { return clock; });
    ASSERT_TRUE(made->link->open().ok());
    std::array<std::uint8_t, 64> buffer{};
    int frames = 0;
    for (int i = 0; i < 1000; ++i) {
        clock += Time(1000);
        frames += made->link->read(buffer).kind == LinkEvent::Kind::bytes;
        EXPECT_LE(toSeconds(made->link->now()), 10.0 * 0.001 * (i + 1) + 1e-6);
    }
    EXPECT_NEAR(frames, 10 / 0.33, 2); // a second of the clock, ten of the bench
    EXPECT_LE(made->link->nextDue(), Time(33000));
}

TEST(SimulatedMeter, HandFinishesTheProcedureOnEverySheet) {
    for (const Sheet& sheet : {test::pedalSheet(), test::depthSheet(), test::twoWaySheet()}) {
        const Guided run = guide({.sheet = sheet, .seed = 4});
        EXPECT_TRUE(run.finished) << sheet.name;
        for (const char* mark : {"key:on", "step:reference", "step:ground", "step:cold-start", "step:wiggle-shaft",
                                 "step:wiggle-harness", "step:full-press", "step:sweep", "step:release", "step:lift",
                                 "arm:on-stop", "step:put-back", "key:off"}) {
            EXPECT_TRUE(saw(run, mark)) << sheet.name << " " << mark;
        }
        EXPECT_TRUE(run.truth.events.empty());
        EXPECT_FALSE(saw(run, "skip:sweep")) << sheet.name;
        EXPECT_EQ(run.findings.verdict.decision, Decision::keep) << sheet.name;
    }
}

// Its display glides from wire to wire for seconds: what was read before stands.
TEST(SimulatedMeter, ASlowDisplayKeepsWhatItReadOfTheReference) {
    for (const std::uint64_t seed : {2U, 11U, 16U}) {
        const Guided run = guide({.meter = test::MeterKind::slow, .seed = seed});
        ASSERT_TRUE(run.findings.reference) << seed;
        EXPECT_NEAR(run.findings.reference->level_V, run.truth.reference_V, 0.05) << seed;
    }
}

TEST(SimulatedMeter, HandReadsNoWords) {
    for (const FaultKind fault : {FaultKind::dirtySpot, FaultKind::harnessShortToGround, FaultKind::referenceSag}) {
        const Guided with = guide({.fault = fault, .seed = 4});
        const Guided without = guide({.fault = fault, .seed = 4, .words = test::Words::leftOut});
        EXPECT_EQ(rowsOf(with), rowsOf(without));
    }
}

TEST(SimulatedMeter, HandTurnsASensorToItsAim) {
    const Guided run = guide({.fault = FaultKind::mountRotated, .seed = 4});
    EXPECT_TRUE(run.finished);
    EXPECT_TRUE(saw(run, "step:adjust"));
    EXPECT_TRUE(saw(run, "turn:-1"));
    EXPECT_FALSE(saw(run, "skip:adjust"));
    ASSERT_TRUE(run.aim_V);
    EXPECT_NEAR(run.shown_V, *run.aim_V, run.aimWithin_V + 0.001);
    EXPECT_LT(run.truth.visits.back().level_V, test::pedalSheet().positions[0].window.max_V); // it stood above it
    EXPECT_GT(run.truth.level_V[0], test::pedalSheet().positions[0].window.max_V);
}

TEST(SimulatedMeter, FaultsComeThroughTheRealPath) {
    EXPECT_EQ(saidOf(FaultKind::dirtySpot), Decision::replace);
    EXPECT_EQ(saidOf(FaultKind::harnessShortToGround), Decision::checkWiring);
    EXPECT_EQ(saidOf(FaultKind::referenceSag), Decision::checkSupply);
}

} // namespace
} // namespace stillwire
