// SPDX-License-Identifier: GPL-3.0-or-later
// How many dropouts are found, and how often one is claimed that was not there, against a generator that keeps the
// truth.
#include "tests/support/long_run.hpp"
#include "tests/support/trace_maker.hpp"

#include <cmath>
#include <cstdio>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

struct Kind {
    const char* name;
    MakerMeter meter;
};

const Kind kKinds[] = {
    {"0.10 s, 1 mV", {0.10, 0.08, 0.001, 0.0006, 0.002, 0.5, 2}},
    {"0.25 s, 1 mV", {0.25, 0.10, 0.001, 0.0010, 0.004, 0.5, 2}},
    {"0.33 s, 1 mV", {0.33, 0.10, 0.001, 0.0005, 0.004, 0.5, 2}},
    {"0.50 s, 1 mV", {0.50, 0.40, 0.001, 0.0020, 0.010, 0.5, 2}},
    {"0.10 s, 10 mV", {0.10, 0.10, 0.010, 0.0020, 0.002, 0.8, 2}},
    {"0.33 s, 10 mV", {0.33, 0.20, 0.010, 0.0025, 0.004, 0.8, 2}},
    {"0.50 s, 10 mV", {0.50, 0.10, 0.010, 0.0010, 0.010, 0.8, 2}},
};

// Dropouts both ways, of every depth and length, each a few seconds from the next.
void scatterDropouts(TraceMaker& trace, int count, double least_V) {
    for (int i = 0; i < count; ++i) {
        const double duration_s = std::exp(trace.dice().between(std::log(0.03), std::log(2.0)));
        const double deepest_V = trace.dice().uniform() < 0.8 ? -4.0 : 0.8;
        const double depth_V = deepest_V * std::exp(trace.dice().between(std::log(least_V / 4), 0));
        trace.dropout(trace.dice().between(1.0, 1.5), duration_s, depth_V);
        trace.hold(1.5 + duration_s + trace.dice().between(1.5, 3.0));
    }
}

struct Count {
    int due = 0, found = 0;
};

Count score(const TraceMaker& trace, const Findings& f, const Kind& kind) {
    Count count;
    const double due_V = std::max({0.02, 6 * f.meter.noise_V, 3 * kind.meter.resolution_V}) + 3 * f.meter.noise_V;
    for (const TrueDropout& d : trace.dropouts()) {
        if (d.shownDepth_V < due_V) continue;
        ++count.due;
        const double late_s = kind.meter.interval_s + kind.meter.aperture_s;
        for (const Excursion& e : f.excursions)
            if (toSeconds(e.from) <= d.to_s + late_s && toSeconds(e.to) >= d.from_s) {
                ++count.found;
                break;
            }
    }
    return count;
}

TEST(Detection, FindsWhatTheMeterShowedUnmarked) {
    const int runs = scaled(10, 200);
    for (const Kind& kind : kKinds) {
        Count sum;
        for (int seed = 1; seed <= runs; ++seed) {
            TraceMaker trace(kind.meter, static_cast<std::uint64_t>(seed));
            trace.set(4.12);
            trace.hold(15);
            scatterDropouts(trace, 60, 0.02);
            const Count count = score(trace, examine(trace, risingSheet()), kind);
            sum.due += count.due;
            sum.found += count.found;
        }
        std::printf("%-14s unmarked: %d of %d dropouts found\n", kind.name, sum.found, sum.due);
        EXPECT_GE(sum.found, 0.995 * sum.due) << kind.name;
        EXPECT_GT(sum.due, 20 * runs) << kind.name;
    }
}

TEST(Detection, FindsWhatTheMeterShowedInMarkedWiggles) {
    const int runs = scaled(10, 200);
    for (const Kind& kind : kKinds) {
        Count sum;
        for (int seed = 1; seed <= runs; ++seed) {
            TraceMaker trace(kind.meter, static_cast<std::uint64_t>(seed));
            trace.set(4.4);
            trace.guidedStart(5.0, 0.0);
            trace.wiggle("wiggle-shaft", "", 30, 2, -std::exp(trace.dice().between(std::log(0.05), std::log(4.0))),
                         trace.dice().between(0.05, 1.2));
            trace.wiggle("wiggle-harness", "section-2/", 30, 3, trace.dice().between(0.1, 0.6),
                         trace.dice().between(0.05, 1.2));
            trace.mark("step:end");
            const Count count = score(trace, examine(trace, fallingSheet()), kind);
            sum.due += count.due;
            sum.found += count.found;
        }
        std::printf("%-14s marked:   %d of %d dropouts found\n", kind.name, sum.found, sum.due);
        EXPECT_GE(sum.found, 0.995 * sum.due) << kind.name;
        EXPECT_GT(sum.due, 5 * runs) << kind.name;
    }
}

// Quiet hours: quantisation, mains ripple folded by the aperture, 0.05 V of drift in ten minutes, heavy-tailed noise.
TEST(Detection, ClaimsNothingInQuietHours) {
    const int hours = scaled(6, 240);
    for (const Kind& kind : kKinds) {
        int flags = 0, jumps = 0;
        std::size_t blind = 0;
        for (int hour = 0; hour < hours; ++hour) {
            TraceMaker trace(kind.meter, static_cast<std::uint64_t>(hour + 1));
            trace.heavyTails(hour % 2 == 1);
            trace.ripple(0.004, 50.0 + 0.01 * hour);
            trace.set(4.3);
            for (int i = 0; i < 6; ++i) {
                trace.drift((i % 2 == 0 ? 0.05 : -0.05) / 600);
                trace.hold(600);
            }
            const Findings f = examine(trace, fallingSheet());
            flags += dropoutCount(f);
            jumps += static_cast<int>(f.jumps.size());
            blind += f.blind.size();
        }
        std::printf("%-14s %d quiet hours: %d false flags, %d jumps, %zu blind\n", kind.name, hours, flags, jumps,
                    blind);
        EXPECT_LE(flags + jumps, 4) << kind.name;
    }
}

} // namespace
} // namespace stillwire::test
