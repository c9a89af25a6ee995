// SPDX-License-Identifier: GPL-3.0-or-later
// Where phases begin and end, and what the meter could not see, against a generator that keeps the truth.
#include "tests/support/long_run.hpp"
#include "tests/support/trace_maker.hpp"

#include <cmath>
#include <cstdio>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

const MakerMeter kMeters[] = {
    {0.10, 0.08, 0.001, 0.0006, 0.002, 0.5, 2},
    {0.25, 0.10, 0.001, 0.0010, 0.004, 0.5, 2},
    {0.33, 0.20, 0.010, 0.0025, 0.004, 0.8, 2},
    {0.50, 0.40, 0.001, 0.0020, 0.010, 0.5, 2},
};

struct Span {
    double from_s = 0, to_s = 0;
};

// One reading, and the aperture in which a movement that has just begun hardly shows.
bool near(double seen_s, double true_s, const MakerMeter& meter) {
    return std::abs(seen_s - true_s) <= meter.interval_s + meter.aperture_s + meter.jitter_s;
}

TEST(PhaseEdges, LieWithinOneReadingOfTheMovement) {
    const int runs = scaled(20, 300);
    int edges = 0, good = 0;
    for (const MakerMeter& meter : kMeters)
        for (const bool marked : {true, false})
            for (int seed = 1; seed <= runs; ++seed) {
                TraceMaker trace(meter, static_cast<std::uint64_t>(seed));
                trace.set(0.82);
                if (marked) trace.mark("step:full-press");
                trace.hold(trace.dice().between(8, 14));
                std::vector<Span> moves;
                for (const char* to : {"pressed", "released", "pressed"}) {
                    if (marked) trace.mark(std::string("position:") + to);
                    trace.hold(trace.dice().between(0.4, 1.0));
                    const double from_s = trace.now_s(), over_s = trace.dice().between(0.3, 1.2);
                    trace.move(std::string(to) == "pressed" ? 4.1 : 0.82, over_s);
                    moves.push_back({from_s, from_s + over_s});
                    trace.hold(trace.dice().between(6, 9));
                }
                const Findings f = examine(trace, risingSheet());
                EXPECT_EQ(dropoutCount(f), 0) << meter.interval_s << " s, seed " << seed;
                std::vector<Span> seen;
                for (const Phase& phase : f.phases)
                    if (phase.kind == PhaseKind::travel) seen.push_back({toSeconds(phase.from), toSeconds(phase.to)});
                for (const Span& move : moves) {
                    edges += 2;
                    for (const Span& span : seen) {
                        if (span.to_s < move.from_s || span.from_s > move.to_s + meter.interval_s) continue;
                        good += (near(span.from_s, move.from_s, meter) ? 1 : 0) +
                                (near(span.to_s, move.to_s, meter) ? 1 : 0);
                        break;
                    }
                }
            }
    std::printf("%d of %d edges of movements within one reading\n", good, edges);
    EXPECT_GE(good, 0.99 * edges);
}

TEST(PhaseEdges, BlindSpansAreFoundWithTheirCause) {
    const int runs = scaled(20, 300);
    int all = 0, found = 0, invented = 0;
    for (const MakerMeter& meter : kMeters)
        for (int seed = 1; seed <= runs; ++seed) {
            TraceMaker trace(meter, static_cast<std::uint64_t>(seed));
            trace.set(4.4);
            trace.hold(8);
            struct True {
                Span span;
                BlindCause cause;
            };
            std::vector<True> truth;
            const auto add = [&](BlindCause cause, auto&& make) {
                const double from_s = trace.now_s();
                make(3 * meter.interval_s + trace.dice().between(0.6, 3));
                truth.push_back({{from_s, trace.now_s()}, cause});
                trace.hold(trace.dice().between(3, 6));
            };
            add(BlindCause::gap, [&](double s) { trace.silence(s); });
            add(BlindCause::overload, [&](double s) { trace.flagged(s, Flag::overload); });
            add(BlindCause::hold, [&](double s) { trace.flagged(s, Flag::hold); });
            add(BlindCause::autorange, [&](double s) { trace.flagged(s, Flag::autorange); });
            add(BlindCause::unit, [&](double s) { trace.flagged(s, Flag::unit); });
            const Findings f = examine(trace, fallingSheet());
            EXPECT_EQ(dropoutCount(f), 0);
            all += static_cast<int>(truth.size());
            invented += std::max(0, static_cast<int>(f.blind.size()) - static_cast<int>(truth.size()));
            for (const True& t : truth)
                for (const BlindSpan& span : f.blind)
                    if (span.cause == t.cause && near(toSeconds(span.from), t.span.from_s, meter) &&
                        near(toSeconds(span.to), t.span.to_s, meter)) {
                        ++found;
                        break;
                    }
        }
    std::printf("%d of %d blind spans with their cause and within one reading, %d invented\n", found, all, invented);
    EXPECT_GE(found, 0.99 * all);
    EXPECT_EQ(invented, 0);
}

} // namespace
} // namespace stillwire::test
