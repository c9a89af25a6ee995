// SPDX-License-Identifier: GPL-3.0-or-later
// The streaming analyser against the plainest robust filter of a general-purpose library: GSL's moving median and
// moving MAD over 41 readings, on the same data in the same run. Wanted: ten times the readings per second.
#include "tests/support/trace_maker.hpp"

#include <algorithm>
#include <vector>

#include <benchmark/benchmark.h>
#include <gsl/gsl_movstat.h>
#include <gsl/gsl_vector.h>

namespace {

using namespace stillwire;

const test::TraceMaker& quietTrace() {
    static const test::TraceMaker trace = [] {
        test::TraceMaker maker({0.1, 0.08, 0.001, 0.0008, 0.002, 0.5, 2}, 7);
        maker.set(4.3);
        for (int i = 0; i < 2000; ++i) {
            maker.dropout(10, 0.5, -1.5);
            maker.hold(50);
        }
        return maker;
    }();
    return trace;
}

std::vector<Reading> readingsOf(const test::TraceMaker& trace) {
    std::vector<Reading> readings;
    for (const auto& row : trace.rows()) readings.push_back(std::get<Reading>(row));
    return readings;
}

// `batch`: how many readings come at once; 256 is what the capture reader hands on, 1 what a live meter does.
void analyse(benchmark::State& state) {
    const test::TraceMaker& trace = quietTrace();
    const std::vector<Reading> readings = readingsOf(trace);
    const auto batch = static_cast<std::size_t>(state.range(0));
    for (auto _ : state) {
        Examination examination(
            {test::fallingSheet(), trace.traits(), true, ProbeSide::sensorSide, BlackLead::batteryNegative});
        for (std::size_t i = 0; i < readings.size(); i += batch)
            examination.push(&readings[i], std::min(batch, readings.size() - i));
        benchmark::DoNotOptimize(examination.findings().excursions.size());
    }
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(readings.size()));
}
BENCHMARK(analyse)->Arg(256)->Arg(1)->Unit(benchmark::kMillisecond);

void gslMovingMedianAndMad(benchmark::State& state) {
    const test::TraceMaker& trace = quietTrace();
    const std::size_t n = trace.rows().size();
    gsl_vector* x = gsl_vector_alloc(n);
    gsl_vector* median = gsl_vector_alloc(n);
    gsl_vector* mad = gsl_vector_alloc(n);
    for (std::size_t i = 0; i < n; ++i) gsl_vector_set(x, i, std::get<Reading>(trace.rows()[i]).volts_V);
    gsl_movstat_workspace* work = gsl_movstat_alloc(41);
    for (auto _ : state) {
        gsl_movstat_median(GSL_MOVSTAT_END_TRUNCATE, x, median, work);
        gsl_movstat_mad(GSL_MOVSTAT_END_TRUNCATE, x, median, mad, work);
        benchmark::DoNotOptimize(gsl_vector_get(mad, n - 1));
    }
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(n));
    gsl_movstat_free(work);
    gsl_vector_free(mad);
    gsl_vector_free(median);
    gsl_vector_free(x);
}
BENCHMARK(gslMovingMedianAndMad)->Unit(benchmark::kMillisecond);

} // namespace

BENCHMARK_MAIN();
