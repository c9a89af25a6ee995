// SPDX-License-Identifier: GPL-3.0-or-later
// What is certain to be seen is seen: the formula against chance, and the faults of whole runs against their
// readings.
#include "tests/hands/make_run.hpp"
#include "tests/hands/visible.hpp"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace stillwire::hands {
namespace {

// Share of random moments at which a fall shows, by overlap of its time with the apertures.
double shownShare(double interval_s, double aperture_s, double h_V, double depth_V, double lasts_s, Dice& dice) {
    int shown = 0;
    constexpr int kTries = 4000;
    for (int i = 0; i < kTries; ++i) {
        const double from_s = dice.between(0, interval_s);
        bool any = false;
        for (int k = 0; k * interval_s < from_s + lasts_s + interval_s && !any; ++k) {
            const double begin_s = k * interval_s;
            const double overlap_s = std::min(from_s + lasts_s, begin_s + aperture_s) - std::max(from_s, begin_s);
            any = overlap_s > 0 && depth_V * overlap_s / aperture_s >= h_V;
        }
        shown += any;
    }
    return static_cast<double>(shown) / kTries;
}

TEST(HandsVisible, TheChanceIsTheShareOfMoments) {
    Dice dice("visible", 1);
    for (int run = 0; run < 40; ++run) {
        const double interval_s = dice.between(0.1, 0.5), aperture_s = interval_s * dice.between(0.03, 1);
        const double h_V = 0.02, depth_V = dice.between(0.05, 3), lasts_s = dice.between(0.01, 0.6);
        // Shorter than an aperture that holds it, it shows whole or not at all: the formula is about the rest.
        EXPECT_NEAR(chanceToShow(interval_s, aperture_s, h_V, depth_V, lasts_s),
                    shownShare(interval_s, aperture_s, h_V, depth_V, lasts_s, dice), 0.03)
            << interval_s << " " << aperture_s << " " << depth_V << " " << lasts_s;
    }
}

TEST(HandsVisible, TheShortestSureOneCannotHide) {
    Dice dice("sure", 1);
    for (int run = 0; run < 40; ++run) {
        const double interval_s = dice.between(0.1, 0.5), aperture_s = interval_s * dice.between(0.03, 1);
        const double h_V = 0.02, depth_V = dice.between(0.05, 3);
        const double sure_s = shortestSure_s(interval_s, aperture_s, h_V, depth_V);
        EXPECT_EQ(shownShare(interval_s, aperture_s, h_V, depth_V, sure_s + 1e-9, dice), 1);
        EXPECT_NEAR(chanceToShow(interval_s, aperture_s, h_V, depth_V, sure_s), 1, 1e-9);
    }
}

// Each time the fault of a run shows, a reading is away from the level by more than the threshold.
TEST(HandsVisible, EveryFaultThatComesAndGoesShows) {
    for (const Fault fault : {Fault::shaft, Fault::harness, Fault::connector}) {
        for (std::uint64_t seed = 1; seed <= 25; ++seed) {
            Request request;
            request.fault = fault;
            request.seed = seed;
            const std::optional<LedRun> run = makeRun(request);
            ASSERT_TRUE(run);
            EXPECT_GE(run->faultTimes.size(), 2U);
            const Meter& meter = run->subject.meter;
            const double x = run->subject.levels_V[run->subject.machine.rest()] / run->scene.nominal_V;
            const double held_V = run->scene.ground_V + x * (run->scene.reference_V - run->scene.ground_V);
            const Range& range = meter.rangeFor(held_V);
            const double shown_V = range.gain * held_V + range.offset_V;
            const double h_V = threshold_V(meter.noise_V(range), range.resolution_V);
            for (const Span& span : run->faultTimes)
                EXPECT_TRUE(std::any_of(run->readings.begin(), run->readings.end(),
                                        [&](const Reading& r) {
                                            const double at_s = toSeconds(r.time);
                                            return at_s > span.from_s && at_s < span.to_s + meter.aperture_s + 0.05 &&
                                                   r.hasNumber() && std::abs(r.volts_V - shown_V) > h_V;
                                        }))
                    << nameOf(request) << " at " << span.from_s << " s";
        }
    }
}

} // namespace
} // namespace stillwire::hands
