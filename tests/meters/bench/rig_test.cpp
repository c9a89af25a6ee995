// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/rig.hpp"
#include "tests/support/bench_runs.hpp"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace stillwire::bench {
namespace {

BenchSetup still() {
    BenchSetup setup;
    setup.mechanics.tremor_V = 0;
    setup.meter.jitter_s = 0;
    setup.meter.noise_counts = 0;
    setup.meter.accuracyUsed = 0;
    return setup;
}

// The chance that a dropout of depth D and duration t shows as h or more in a meter that averages A of every T:
// m = A h / D; min(1, (A + t - 2m) / T) if m <= min(A, t), else 0. Counted against dropouts at random times.
struct Sight {
    double interval_s, aperture_s, duration_s, threshold_V;
};
class Showing : public testing::TestWithParam<Sight> {};

TEST_P(Showing, HappensAsOftenAsTheClosedFormSays) {
    const Sight sight = GetParam();
    BenchSetup setup = still();
    setup.controller.capacitance_F = 0;
    Intermittent fault;
    fault.place = Place::wiper;
    fault.idle_per_s = 0.2;
    fault.ohmMin = fault.ohmMax = kOpen_ohm;
    fault.durationMin_s = fault.durationMax_s = sight.duration_s;
    setup.faults.push_back(fault);
    const MeterTraits meter{"", sight.interval_s, sight.aperture_s, {{6.0, 0.001, 0.5, 2}}, ""};
    Rig rig(setup, {0.82, 4.10}, 0, meter, 11);
    rig.probe(Wire::signal);
    rig.key(true);
    std::vector<Reading> readings;
    rig.advanceTo(40000, readings);

    const double depth_V = rig.settled_V(Wire::signal);
    const double m = sight.aperture_s * sight.threshold_V / depth_V;
    const double closed = m <= std::min(sight.aperture_s, sight.duration_s)
                              ? std::min(1.0, (sight.aperture_s + sight.duration_s - 2 * m) / sight.interval_s)
                              : 0.0;
    // Two dropouts in one aperture add up; only those with a clear second around them count.
    int seen = 0, all = 0;
    const auto& events = rig.events();
    for (std::size_t i = 1; i + 1 < events.size(); ++i) {
        if (events[i].from_s - events[i - 1].to_s < 1 || events[i + 1].from_s - events[i].to_s < 1) continue;
        ++all;
        seen += std::any_of(events[i].touched.begin(), events[i].touched.end(),
                            [&](const TruthTouch& touch) { return std::abs(touch.depth_V) >= sight.threshold_V; });
    }
    ASSERT_GT(all, 3000);
    const double share = static_cast<double>(seen) / all;
    const double error = std::sqrt(std::max(closed * (1 - closed), 0.0) / all);
    EXPECT_NEAR(share, closed, 3 * error + 1e-12) << all << " dropouts";
}

INSTANTIATE_TEST_SUITE_P(Meters, Showing,
                         testing::Values(Sight{0.33, 0.10, 0.05, 0.06}, Sight{0.33, 0.10, 0.20, 0.30},
                                         Sight{0.33, 0.10, 0.01, 0.02}, Sight{0.50, 0.40, 0.10, 0.05},
                                         Sight{0.20, 0.18, 0.05, 0.10}, Sight{0.33, 0.10, 0.30, 0.10},
                                         Sight{0.33, 0.10, 0.02, 0.50}, Sight{0.33, 0.10, 0.50, 0.30}));

// What the meter showed is the noise-free mean, to half a count, with noise and errors off.
TEST(Rig, ReadingsAreTheTruthItTells) {
    BenchSetup setup = still();
    Intermittent fault;
    fault.idle_per_s = 0.3;
    fault.durationMin_s = 0.02;
    setup.faults.push_back(fault);
    Rig rig(setup, {0.82, 4.10}, 0, test::meterTraits(test::MeterKind::fair), 3);
    rig.probe(Wire::signal);
    rig.key(true);
    std::vector<Reading> readings;
    rig.advanceTo(0.9, readings); // the filter has settled
    const std::size_t skip = readings.size() + 1;
    rig.advanceTo(600, readings);
    const double level_V = rig.settled_V(Wire::signal);
    std::vector<double> depth_V(readings.size() + 2, 0);
    for (const TruthEvent& event : rig.events()) {
        for (const TruthTouch& touch : event.touched) depth_V[touch.reading] = touch.depth_V;
    }
    int touched = 0;
    for (std::size_t i = skip; i < readings.size(); ++i) {
        ASSERT_NEAR(readings[i].volts_V, level_V + depth_V[i], 0.00051) << i;
        touched += depth_V[i] != 0;
    }
    EXPECT_GT(touched, 50);
    for (const TruthEvent& event : rig.events()) EXPECT_LE(std::abs(event.depth_V), level_V + 1e-9);
}

// A reading of a moving pedal is the mean of the way, whatever the pieces it is cut into.
TEST(Rig, AveragesATravelExactly) {
    BenchSetup setup = still();
    setup.controller.bias_ohm = 0;
    setup.controller.capacitance_F = 0;
    setup.meter.input_ohm = 0;
    setup.track.contact_ohm = 0;
    setup.reference.path_ohm = setup.ground.path_ohm = 0;
    setup.ground.otherCurrent_A = 0;
    Rig rig(setup, {1.0, 4.0}, 0, {"", 0.5, 0.3, {{6.0, 0.0001, 0.5, 2}}, ""}, 3);
    rig.probe(Wire::signal);
    rig.key(true);
    std::vector<Reading> readings;
    rig.advanceTo(2, readings);
    rig.drag(1, 10); // 0.3 V/s
    readings.clear();
    rig.advanceTo(11, readings);
    for (const Reading& reading : readings) {
        const double middle_s = toSeconds(reading.time) - 0.012 - 0.15;
        if (middle_s < 2.15 || middle_s > 11) continue;
        EXPECT_NEAR(reading.volts_V, 1.0 + 0.3 * (middle_s - 2), 1e-4);
    }
    EXPECT_GT(readings.size(), 15u);
}

TEST(Rig, BacklashHoldsTheShaftBack) {
    BenchSetup setup = still();
    setup.mechanics.backlash_V = 0.2;
    Rig rig(setup, {1.0, 4.0}, 0, test::meterTraits(test::MeterKind::fair), 3);
    std::vector<Reading> readings;
    rig.key(true);
    rig.drag(0.5, 2);
    rig.advanceTo(3, readings);
    const double up = rig.shaftTravel();
    rig.drag(0.9, 2);
    rig.advanceTo(6, readings);
    rig.drag(0.5, 2);
    rig.advanceTo(9, readings);
    EXPECT_NEAR(rig.trueLevel_V(rig.shaftTravel()) - rig.trueLevel_V(up), 0.2, 0.01); // lost motion, up against down
}

TEST(Rig, PlayShiftsAGoodSensorAndGoesBack) {
    BenchSetup setup = still();
    setup.mechanics.play_V = 0.040;
    Rig rig(setup, {0.82, 4.10}, 0, test::meterTraits(test::MeterKind::fair), 3);
    rig.probe(Wire::signal);
    rig.key(true);
    std::vector<Reading> readings;
    rig.advanceTo(3, readings);
    const double before_V = readings.back().volts_V;
    rig.leanOn(1);
    rig.advanceTo(6, readings);
    EXPECT_NEAR(readings.back().volts_V - before_V, 0.040, 0.002);
    rig.leanOn(0);
    rig.advanceTo(9, readings);
    EXPECT_NEAR(readings.back().volts_V, before_V, 0.0011);
    EXPECT_TRUE(rig.events().empty());
}

TEST(Rig, AStruckDropoutIsOneAndChangesNothingElse) {
    std::vector<Reading> struck, left;
    for (std::vector<Reading>* readings : {&struck, &left}) {
        Rig rig(still(), {0.82, 4.10}, 1, test::meterTraits(test::MeterKind::fair), 3);
        rig.probe(Wire::signal);
        rig.key(true);
        rig.advanceTo(5, *readings);
        if (readings == &struck) rig.strike();
        rig.advanceTo(12, *readings);
        EXPECT_EQ(rig.events().size(), readings == &struck ? 1U : 0U);
    }
    ASSERT_EQ(struck.size(), left.size());
    double deepest_V = 0;
    for (std::size_t i = 0; i < left.size(); ++i) {
        EXPECT_EQ(struck[i].time, left[i].time);
        deepest_V = std::max(deepest_V, left[i].volts_V - struck[i].volts_V);
    }
    EXPECT_GT(deepest_V, 0.2);
    EXPECT_EQ(struck.back().volts_V, left.back().volts_V);
}

TEST(Rig, ColdFadesInTenToFifteenMinutes) {
    Rig rig(still(), {0.82, 4.10}, 0, test::meterTraits(test::MeterKind::fair), 3);
    rig.key(true);
    EXPECT_EQ(rig.cold(), 1);
    std::vector<Reading> readings;
    rig.advanceTo(600, readings);
    EXPECT_LT(rig.cold(), 0.1);
    rig.advanceTo(900, readings);
    EXPECT_LT(rig.cold(), 0.03);
}

} // namespace
} // namespace stillwire::bench
