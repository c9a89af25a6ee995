// SPDX-License-Identifier: GPL-3.0-or-later
// The bound that is printed, "at most so often per pose", against the rate that is true: a fault of known rate on the
// fault bench, through the whole path. One-sided Clopper-Pearson promises to cover in 95 % of runs or more.
#include "core/judge/visibility.hpp"
#include "tests/meters/bench/verdict_runs.hpp"
#include "tests/support/long_run.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

struct Lasting {
    double from_s, to_s;
};

// Longer than the shortest that cannot hide, deeper than the reference fault, anywhere on the track, at any
// temperature: every pose has the same chance.
BenchScript faultOfRate(double perSecond, Lasting lasting) {
    BenchScript script = benchScript(std::nullopt);
    BenchFault& fault = script.faults.emplace_back();
    fault.place = bench::Place::wiper;
    using Fault = bench::Intermittent;
    fault.tuned = {{&Fault::shaft_per_s, perSecond},
                   {&Fault::ohmMin, 1e6},
                   {&Fault::ohmMax, 1e7},
                   {&Fault::durationMin_s, lasting.from_s},
                   {&Fault::durationMax_s, lasting.to_s}};
    script.plan.steps = {Step::hookUp, Step::reference, Step::ground, Step::coldStart, Step::wiggleShaft};
    return script;
}

// Poses of the shaft in which an event began, by the truth.
int posesWithEvent(const Simulation& run, int& poses) {
    int with = 0;
    const auto& marks = run.capture.marks;
    for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
        if (!marks[i].as<PoseMark>()) continue;
        ++poses;
        const double from_s = toSeconds(marks[i].time), to_s = toSeconds(marks[i + 1].time);
        with += std::any_of(run.truth.events.begin(), run.truth.events.end(),
                            [&](const TruthEvent& e) { return e.from_s >= from_s && e.from_s < to_s; });
    }
    return with;
}

class Bound : public testing::TestWithParam<MeterKind> {};

void expectCovered(MeterKind meter, const std::vector<double>& rates, Lasting lasting) {
    const int runs = scaled(100, 1000);
    for (const double perSecond : rates) {
        BenchScript script = faultOfRate(perSecond, lasting);
        script.setup.meter = meterQuirks(meter);
        int poses = 0, with = 0, unseen = 0;
        std::vector<double> bounds;
        for (int seed = 1; seed <= runs; ++seed) {
            const Simulation run = benchRun(script, pedalSheet(), static_cast<std::uint64_t>(seed), meter);
            with += posesWithEvent(run, poses);
            const Findings f = judged(run);
            const auto shaft = std::find_if(f.steps.begin(), f.steps.end(),
                                            [](const StepCoverage& s) { return s.step == Step::wiggleShaft; });
            ASSERT_NE(shaft, f.steps.end());
            ASSERT_TRUE(shaft->rateUpper95);
            ASSERT_LE(shaft->shortestVisible_s.value_or(9), lasting.from_s);
            bounds.push_back(*shaft->rateUpper95);
            unseen += shaft->dropouts == 0;
        }
        const double rate = static_cast<double>(with) / poses;
        const auto covered = std::count_if(bounds.begin(), bounds.end(), [&](double bound) { return bound >= rate; });
        std::printf("%-8s true rate per pose %.4f: covered in %zd of %d runs (%.1f %%), never seen in %d\n",
                    meterName(meter), rate, covered, runs, 100.0 * static_cast<double>(covered) / runs, unseen);
        // A count of a thousand runs is good to a standard error of 7; a short run is allowed three.
        const double luck = (longRun() ? 1 : 3) * std::sqrt(0.95 * 0.05 * runs);
        EXPECT_GE(static_cast<double>(covered), 0.95 * runs - luck);
    }
}

TEST_P(Bound, CoversTheTrueRate) { expectCovered(GetParam(), {0.005, 0.02, 0.06, 0.11, 0.2}, {0.45, 0.60}); }

// As long as the printed length and a little longer; it holds for these, too.
TEST_P(Bound, CoversTheRateOfWhatJustCannotHide) {
    const MeterTraits meter = meterTraits(GetParam());
    const double resolution_V = meter.rangeFor(0.82).resolution_V;
    const double threshold_V = poseThreshold_V(std::max(0.03, 6 * resolution_V), pedalSheet().play_V, resolution_V);
    const double shortest_s = *shortestVisible_s({meter.interval_s, meter.aperture_s, threshold_V}, 0.5);
    std::vector<double> rates{0.11};
    if (longRun()) rates = {0.02, 0.06, 0.11, 0.2, 0.3};
    expectCovered(GetParam(), rates, {1.02 * shortest_s, 1.25 * shortest_s});
}

INSTANTIATE_TEST_SUITE_P(Meters, Bound, testing::ValuesIn(kMeterKinds),
                         [](const auto& kind) { return std::string(meterName(kind.param)); });

} // namespace
} // namespace stillwire::test
