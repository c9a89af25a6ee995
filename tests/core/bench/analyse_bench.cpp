// SPDX-License-Identifier: GPL-3.0-or-later
// The streaming analyser against the plainest robust filter of a general-purpose library: GSL's moving median and
// moving MAD over 41 readings, on the same data in the same run. Wanted: ten times the readings per second.
#include "tests/support/trace_maker.hpp"

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

void analyse(benchmark::State& state) {
    const test::TraceMaker& trace = quietTrace();
    for (auto _ : state) {
        Examination examination(
            {test::fallingSheet(), trace.traits(), true, ProbeSide::sensorSide, BlackLead::batteryNegative});
        for (const auto& row : trace.rows()) examination.push(std::get<Reading>(row));
        benchmark::DoNotOptimize(examination.findings().excursions.size());
    }
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(trace.rows().size()));
}
BENCHMARK(analyse)->Unit(benchmark::kMillisecond);

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
