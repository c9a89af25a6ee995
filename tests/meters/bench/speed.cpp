// SPDX-License-Identifier: GPL-3.0-or-later
// How long guided runs take: made, sent as frames, decoded, judged. Prints a table; fails over the limit of processor
// time, which a busy machine does not stretch as it does the wall's. Usage: bench_speed [runs, 1000 if absent]
#include "core/examination.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/decode/encode.hpp"
#include "tests/support/bench_runs.hpp"

#include <cstdio>
#include <cstdlib>
#include <ctime>

namespace {

using namespace stillwire;

double spent_s(std::clock_t since) { return static_cast<double>(std::clock() - since) / CLOCKS_PER_SEC; }

// About six minutes at 3 readings/s.
BenchScript sixMinutes(int run) {
    const int kind = run % (bench::kFaultKinds + 1);
    BenchScript script = kind == bench::kFaultKinds ? test::benchScript(std::nullopt)
                                                    : test::benchScript(static_cast<bench::FaultKind>(kind));
    script.plan.steps.push_back(Step::warmRepeat);
    script.plan.coldStart_s = 60;
    script.plan.releases = 8;
    return script;
}

} // namespace

int main(int argc, char** argv) {
    const int runs = argc > 1 ? std::atoi(argv[1]) : 1000;
    const double limit_s = 30.0 * runs / 1000.0;
    const Sheet sheet = test::pedalSheet();
    MeterDescription meter;
    meter.traits = test::meterTraits(test::MeterKind::fair);
    const auto decoder = makeDecoder(meter);
    double made_s = 0, sent_s = 0, judged_s = 0, simulated_s = 0;
    std::size_t readings = 0, events = 0, agree = 0;
    for (int run = 0; run < runs; ++run) {
        std::clock_t since = std::clock();
        const Simulation simulation =
            test::benchRun(sixMinutes(run), sheet, static_cast<std::uint64_t>(run), test::MeterKind::fair);
        made_s += spent_s(since);

        since = std::clock();
        std::vector<Reading> decoded;
        for (const Reading& reading : simulation.capture.readings) {
            const auto frame = encodeFrame(meter.frame, reading, 0.001);
            decoder->push(frame, reading.time, decoded);
        }
        sent_s += spent_s(since);

        since = std::clock();
        ExaminationSetup setup;
        setup.sheet = sheet;
        setup.meter = meter.traits;
        setup.probe = simulation.capture.header.probe;
        Examination examination(setup);
        std::size_t next = 0;
        for (const Capture::Row& row : simulation.capture.rows) {
            if (row.isMark) {
                examination.push(simulation.capture.marks[row.index]);
            } else if (next < decoded.size()) {
                examination.push(decoded[next++]);
            }
        }
        agree += examination.findings().verdict.decision == simulation.truth.verdict;
        judged_s += spent_s(since);

        readings += decoded.size();
        events += simulation.truth.events.size();
        simulated_s += toSeconds(simulation.capture.readings.back().time);
    }
    const double all_s = made_s + sent_s + judged_s;
    std::printf("%d guided runs, %.0f s simulated each, %zu readings, %zu contact events\n", runs, simulated_s / runs,
                readings, events);
    std::printf("%-28s %10s %14s\n", "", "seconds", "us per reading");
    const auto row = [&](const char* what, double s) {
        std::printf("%-28s %10.3f %14.2f\n", what, s, 1e6 * s / static_cast<double>(readings));
    };
    row("made (physics and meter)", made_s);
    row("sent and decoded (frames)", sent_s);
    row("examined and judged", judged_s);
    row("all", all_s);
    std::printf("limit %.1f s of processor time; verdict as the truth's in %zu of %d\n", limit_s, agree, runs);
    return all_s <= limit_s ? 0 : 1;
}
