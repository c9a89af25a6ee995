// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/meter_model.hpp"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace stillwire::bench {
namespace {

MeterTraits traits(std::vector<MeterRange> ranges) { return {"", 0.33, 0.10, std::move(ranges), ""}; }

MeterQuirks quiet() {
    MeterQuirks quirks;
    quirks.accuracyUsed = 0;
    quirks.noise_counts = 0;
    return quirks;
}

TEST(Random, EngineIsTheStandards) {
    // C++ standard, [rand.predef]: the 10000th consecutive invocation of a default-constructed mt19937_64.
    std::mt19937_64 engine;
    engine.discard(9999);
    EXPECT_EQ(engine(), 9981545732273789042ULL);
}

TEST(Random, HasTheMomentsOfItsLaws) {
    Random random(5, 1);
    constexpr int kDraws = 200000;
    double normal = 0, square = 0, wait = 0;
    for (int i = 0; i < kDraws; ++i) {
        const double z = random.normal();
        normal += z;
        square += z * z;
        wait += random.exponential(2.5);
    }
    // Three standard errors.
    EXPECT_NEAR(normal / kDraws, 0, 3 / std::sqrt(kDraws));
    EXPECT_NEAR(square / kDraws, 1, 3 * std::sqrt(2.0 / kDraws));
    EXPECT_NEAR(wait / kDraws, 2.5, 3 * 2.5 / std::sqrt(kDraws));
}

TEST(MeterModel, ShowsTheDecimalOfItsCounts) {
    MeterModel meter(traits({{6.0, 0.001, 0.5, 2}}), quiet(), Random(1, 3));
    EXPECT_EQ(meter.finish(0.8204).volts_V, 0.820);
    EXPECT_EQ(meter.finish(4.1006).volts_V, 4.101);
    EXPECT_EQ(std::signbit(meter.finish(-0.0001).volts_V), false);
}

TEST(MeterModel, LooksDoNotOverlapAndKeepTheRate) {
    MeterQuirks quirks = quiet();
    quirks.jitter_s = 0.02;
    MeterModel meter(traits({{6.0, 0.001, 0.5, 2}}), quirks, Random(1, 3));
    const double first_s = meter.apertureStart_s();
    double last_s = -1;
    for (int i = 0; i < 3000; ++i) {
        ASSERT_GT(meter.apertureStart_s(), last_s);
        EXPECT_NEAR(meter.apertureStart_s(), first_s + i * 0.33, 0.0201);
        EXPECT_NEAR(meter.apertureEnd_s() - meter.apertureStart_s(), 0.10, 2e-6);
        last_s = meter.apertureEnd_s();
        (void)meter.finish(1);
    }
}

TEST(MeterModel, GainAndCountsAreDrawnOnceAndWithinTheLimits) {
    double most = 0;
    for (std::uint64_t seed = 0; seed < 500; ++seed) {
        MeterQuirks quirks = quiet();
        quirks.accuracyUsed = 1;
        MeterModel meter(traits({{6.0, 0.001, 0.5, 2}}), quirks, Random(seed, 3));
        const double shown_V = meter.finish(4.0).volts_V;
        EXPECT_LE(std::abs(shown_V - 4.0), 0.005 * 4.0 + 0.002 + 0.0006);
        EXPECT_EQ(meter.finish(4.0).volts_V, shown_V);
        most = std::max(most, std::abs(shown_V - 4.0));
    }
    EXPECT_GT(most, 0.018);
}

TEST(MeterModel, GoesDarkWhenItChangesRange) {
    MeterModel meter(traits({{4.0, 0.001, 0.5, 2}, {40.0, 0.01, 0.5, 2}}), quiet(), Random(1, 3));
    EXPECT_EQ(meter.finish(3.9).volts_V, 3.9);
    int dark = 0;
    Reading reading = meter.finish(4.1);
    while (!reading.hasNumber()) {
        EXPECT_TRUE(reading.flags.has(Flag::autorange));
        ++dark;
        reading = meter.finish(4.104);
    }
    EXPECT_EQ(dark, 4);                         // the one that tripped it and a second of 0.33 s
    EXPECT_EQ(reading.volts_V, 4.10);           // ten times coarser now
    EXPECT_EQ(meter.finish(3.9).volts_V, 3.90); // "4.000 V up, about 3.8 V down"
    EXPECT_FALSE(meter.finish(3.7).hasNumber());
    ASSERT_EQ(meter.blind().size(), 2u);
    EXPECT_EQ(meter.blind()[0].cause, "autorange");
}

TEST(MeterModel, OverloadsBeyondItsLastRange) {
    MeterModel meter(traits({{6.0, 0.001, 0.5, 2}}), quiet(), Random(1, 3));
    const Reading reading = meter.finish(12.0);
    EXPECT_FALSE(reading.hasNumber());
    EXPECT_TRUE(reading.flags.has(Flag::overload));
    EXPECT_EQ(meter.finish(1.0).volts_V, 1.0);
}

// A whole number of mains turns in the aperture cancels the hum; half a turn more leaves 2/(pi n) of it at most.
TEST(MeterModel, FoldsTheHum) {
    const auto worst_V = [](double aperture_s) {
        MeterQuirks quirks = quiet();
        quirks.ripple_V = 0.5;
        quirks.jitter_s = 0.01;
        MeterModel meter({"", 0.33, aperture_s, {{6.0, 0.00001, 0.5, 2}}, ""}, quirks, Random(1, 3));
        double most = 0;
        for (int i = 0; i < 2000; ++i) most = std::max(most, std::abs(meter.finish(2.0).volts_V - 2.0));
        return most;
    };
    EXPECT_LT(worst_V(0.10), 1e-4);                             // five turns of 50 Hz
    EXPECT_NEAR(worst_V(0.11), 0.5 / (5.5 * 3.14159265), 1e-3); // sin(x)/x at 5.5 half-turn pairs
}

TEST(MeterModel, DisplayFilterLags) {
    MeterQuirks quirks = quiet();
    quirks.filter = 0.5;
    MeterModel meter(traits({{6.0, 0.001, 0.5, 2}}), quirks, Random(1, 3));
    EXPECT_EQ(meter.finish(4.0).volts_V, 4.0);
    EXPECT_EQ(meter.finish(2.0).volts_V, 3.0);
    EXPECT_EQ(meter.finish(2.0).volts_V, 2.5);
}

} // namespace
} // namespace stillwire::bench
