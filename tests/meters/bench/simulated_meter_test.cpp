// SPDX-License-Identifier: GPL-3.0-or-later
// The bench on a link: frames through a decoder, and the whole guided run by a live procedure with the simulated
// hand.
#include "core/capture/writer.hpp"
#include "core/examination.hpp"
#include "meters/bench/simulated_meter.hpp"
#include "meters/decode/decoder.hpp"
#include "tests/support/bench_runs.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using bench::FaultKind;

MeterDescription description(FrameKind kind) {
    MeterDescription out;
    out.traits = test::meterTraits(test::MeterKind::fair);
    out.frame.kind = kind;
    return out;
}

struct Guided {
    std::vector<Reading> readings;
    std::vector<Mark> marks;
    Findings findings;
    Truth truth;
    bool finished = false;
    std::optional<double> aim_V; // the last that a prompt gave, and how near was near enough
    double aimWithin_V = 0;
    double shown_V = 0; // when it was given last
};

// The same prompt with every word for people left out.
Prompt withoutWords(Prompt prompt) {
    prompt.title = prompt.instruction = prompt.detail = prompt.why = prompt.wanted = prompt.pose = {};
    prompt.cautions.clear();
    for (Choice& choice : prompt.choices) choice.says = {};
    return prompt;
}

enum class Words { kept, leftOut };

// What a session does, without its thread: bytes, decoder, examination, procedure, hand.
Guided guide(std::optional<FaultKind> fault, const Sheet& sheet, std::uint64_t seed, Words words = Words::kept) {
    const MeterDescription meter = description(FrameKind::text);
    BenchScript script = test::benchScript(fault);
    script.habits.warmPatience_s = 30;
    Result<SimulatedMeter> made = simulatedMeter(script, sheet, meter, seed, 0, nullptr);
    SimulatedMeter& simulated = made.value();
    const auto decoder = makeDecoder(meter);
    ExaminationSetup setup;
    setup.sheet = sheet;
    setup.meter = meter.traits;
    setup.sections = usualSections();
    Examination examination(setup);
    Procedure procedure(sheet, meter.traits, {.seed = seed});

    Guided out;
    const auto take = [&](const std::vector<Mark>& marks) {
        for (const Mark& mark : marks) {
            examination.push(mark);
            out.marks.push_back(mark);
        }
    };
    (void)simulated.link->open();
    take(procedure.start(simulated.link->now()));
    std::array<std::uint8_t, 256> buffer{};
    while (!procedure.prompt().finished && toSeconds(simulated.link->now()) < 1800) {
        const LinkEvent event = simulated.link->read(buffer);
        std::vector<Reading> readings;
        decoder->push(std::span(buffer).first(event.bytes), event.arrived, readings);
        for (const Reading& reading : readings) {
            examination.push(reading);
            out.readings.push_back(reading);
        }
        const Time now = simulated.link->now();
        out.findings = examination.findings();
        take(procedure.tick(now, out.findings));
        if (procedure.prompt().aim_V) {
            out.aim_V = procedure.prompt().aim_V;
            out.aimWithin_V = procedure.prompt().aimWithin_V;
            out.shown_V = out.readings.back().volts_V;
        }
        const Prompt& prompt = procedure.prompt();
        for (const Command command : simulated.hand(words == Words::kept ? prompt : withoutWords(prompt), now)) {
            take(procedure.command(command, now, examination.findings()));
        }
    }
    out.finished = procedure.prompt().finished;
    out.findings = examination.findings();
    out.truth = simulated.truth();
    return out;
}

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
        const Guided run = guide(std::nullopt, sheet, 4);
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

TEST(SimulatedMeter, HandReadsNoWords) {
    for (const FaultKind fault : {FaultKind::dirtySpot, FaultKind::harnessShortToGround, FaultKind::referenceSag}) {
        const Guided with = guide(fault, test::pedalSheet(), 4);
        const Guided without = guide(fault, test::pedalSheet(), 4, Words::leftOut);
        EXPECT_EQ(rowsOf(with), rowsOf(without));
    }
}

TEST(SimulatedMeter, HandTurnsASensorToItsAim) {
    const Guided run = guide(FaultKind::mountRotated, test::pedalSheet(), 4);
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
    EXPECT_EQ(guide(FaultKind::dirtySpot, test::pedalSheet(), 4).findings.verdict.decision, Decision::replace);
    EXPECT_EQ(guide(FaultKind::harnessShortToGround, test::pedalSheet(), 4).findings.verdict.decision,
              Decision::checkWiring);
    EXPECT_EQ(guide(FaultKind::referenceSag, test::pedalSheet(), 4).findings.verdict.decision, Decision::checkSupply);
}

} // namespace
} // namespace stillwire
