// SPDX-License-Identifier: GPL-3.0-or-later
// The capture reader against the fastest plain parse of the same two columns we could write: hand-made fixed-point
// digits without checks, flags, marks, order or line numbers. Both in one run, since only their ratio travels between
// machines.
#include "core/capture/reader.hpp"
#include "core/capture/writer.hpp"
#include "tests/core/bench/plain_parse.hpp"

#include <algorithm>
#include <chrono>
#include <cstdio>

#include <benchmark/benchmark.h>

namespace stillwire {
namespace {

struct Summing : RowSink {
    double sum = 0;
    void readings(const Reading* first, std::size_t count) override {
        for (std::size_t i = 0; i < count; ++i) sum += first[i].volts_V;
    }
    void reading(const Reading& r) override { sum += r.volts_V; }
    void mark(const Mark&) override {}
};

const std::string& capture() {
    static const std::string text = benchCapture(2'000'000);
    return text;
}

void report(benchmark::State& state) {
    state.SetItemsProcessed(state.iterations() * 2'000'000);
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(capture().size()));
}

void BM_PlainParse(benchmark::State& state) {
    benchmark::DoNotOptimize(capture().size()); // made before the clock starts
    for (auto _ : state) benchmark::DoNotOptimize(plainParse(capture()));
    report(state);
}
BENCHMARK(BM_PlainParse)->Unit(benchmark::kMillisecond);

void BM_PlainParseFromChars(benchmark::State& state) {
    for (auto _ : state) benchmark::DoNotOptimize(plainParseFromChars(capture()));
    report(state);
}
BENCHMARK(BM_PlainParseFromChars)->Unit(benchmark::kMillisecond);

void BM_ReadCaptureText(benchmark::State& state) {
    for (auto _ : state) {
        Summing sink;
        if (!readCaptureText(capture(), "bench", sink).ok()) state.SkipWithError("refused");
        benchmark::DoNotOptimize(sink.sum);
    }
    report(state);
}
BENCHMARK(BM_ReadCaptureText)->Unit(benchmark::kMillisecond);

// The best of five alternating pairs, as one figure.
void BM_RatioToPlainParse(benchmark::State& state) {
    double best = 1e9;
    for (auto _ : state) {
        for (int pair = 0; pair < 5; ++pair) {
            const auto start = std::chrono::steady_clock::now();
            benchmark::DoNotOptimize(plainParse(capture()));
            const auto middle = std::chrono::steady_clock::now();
            Summing sink;
            if (!readCaptureText(capture(), "bench", sink).ok()) state.SkipWithError("refused");
            benchmark::DoNotOptimize(sink.sum);
            const auto end = std::chrono::steady_clock::now();
            best = std::min(best, std::chrono::duration<double>(end - middle) /
                                      std::chrono::duration<double>(middle - start));
        }
    }
    state.counters["ratio"] = best;
}
BENCHMARK(BM_RatioToPlainParse)->Unit(benchmark::kMillisecond)->Iterations(1);

} // namespace
} // namespace stillwire

BENCHMARK_MAIN();
