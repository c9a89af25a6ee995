// SPDX-License-Identifier: GPL-3.0-or-later
// Movements and what happens in and about them.
#include "tests/support/trace_maker.hpp"

#include <cmath>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

const MakerMeter kMeters[] = {
    {0.10, 0.08, 0.001, 0.0006, 0.002, 0.5, 2},
    {0.33, 0.10, 0.001, 0.0005, 0.004, 0.5, 2},
    {0.50, 0.20, 0.010, 0.0020, 0.004, 0.8, 2},
};

bool told(const Findings& f, const TrueDropout& d, const MakerMeter& meter) {
    for (const Excursion& e : f.excursions)
        if (e.kind == ExcursionKind::dropout && toSeconds(e.from) <= d.to_s + meter.interval_s + meter.aperture_s &&
            toSeconds(e.to) >= d.from_s)
            return true;
    return false;
}

TEST(Movement, ADropoutSoonAfterItIsTold) {
    for (const MakerMeter& meter : kMeters)
        for (const double after_s : {2.2, 2.5, 3.0, 4.0})
            for (const bool marked : {true, false})
                for (std::uint64_t seed = 1; seed <= 5; ++seed) {
                    TraceMaker trace(meter, seed);
                    trace.set(0.82);
                    if (marked) trace.mark("step:full-press");
                    trace.hold(15);
                    if (marked) trace.mark("position:pressed");
                    trace.hold(0.4);
                    trace.move(4.1, 0.4);
                    const double dropoutAfter_s = after_s - 0.8;
                    trace.dropout(dropoutAfter_s, 4 * meter.interval_s, -0.5);
                    trace.hold(20);
                    const Findings f = examine(trace, risingSheet());
                    EXPECT_TRUE(told(f, trace.dropouts()[0], meter))
                        << meter.interval_s << " s, " << after_s << " s after the mark, seed " << seed
                        << (marked ? " marked" : " unmarked");
                    EXPECT_TRUE(!marked || f.jumps.empty());
                }
}

TEST(Movement, PausesJustOutsideTheRestBeforeItAndAfterItMakeNoDropout) {
    for (const MakerMeter& meter : kMeters)
        for (std::uint64_t seed = 1; seed <= 5; ++seed) {
            TraceMaker trace(meter, seed);
            trace.set(0.82);
            trace.hold(10);
            trace.move(4.1, 12);
            trace.hold(5);
            trace.move(0.99, 12);
            trace.hold(6);
            trace.move(0.82, 0.4);
            trace.hold(6);
            trace.move(0.99, 1);
            trace.hold(3);
            trace.move(4.1, 12);
            trace.hold(5);
            const Findings f = examine(trace, risingSheet());
            EXPECT_EQ(dropoutCount(f), 0) << meter.interval_s << " s, seed " << seed;
        }
}

TEST(Movement, ASlowSweepThatNobodyMarkedIsTravelAndItsDropoutsAreTold) {
    for (const MakerMeter& meter : kMeters) {
        int found = 0, runs = 0;
        for (std::uint64_t seed = 1; seed <= 10; ++seed) {
            TraceMaker trace(meter, seed);
            trace.set(0.82);
            trace.hold(15);
            const bool faulty = seed % 2 == 0;
            if (faulty) trace.dropout(trace.dice().between(8, 14), 0.9, -0.8);
            trace.move(4.1, 22);
            trace.hold(15);
            const Findings f = examine(trace, risingSheet());
            EXPECT_TRUE(f.jumps.empty());
            Time travel{0};
            for (const Phase& phase : f.phases)
                if (phase.kind == PhaseKind::travel) travel += phase.to - phase.from;
            EXPECT_NEAR(toSeconds(travel), 22, 1.5) << meter.interval_s << " s, seed " << seed;
            if (!faulty) {
                EXPECT_EQ(dropoutCount(f), 0) << meter.interval_s << " s, seed " << seed;
                continue;
            }
            ++runs;
            found += told(f, trace.dropouts()[0], meter) ? 1 : 0;
        }
        EXPECT_GE(found, runs - 1) << meter.interval_s;
    }
}

// Nothing marked: a foot eases off to the stop, rests there and presses, past where it came from. A fault goes there
// and comes back to stay; at rest off a rail for longer than two seconds it would be a movement there, too.
TEST(Movement, ARestOnTheWayIsNoDropoutUnlessItsLevelComesBack) {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        TraceMaker hand({0.2, 0.1}, seed);
        hand.set(0.95);
        hand.hold(12);
        hand.move(0.82, 0.6);
        hand.hold(4);
        hand.move(4.1, hand.dice().between(8, 30));
        hand.hold(12);
        EXPECT_EQ(dropoutCount(examine(hand, risingSheet())), 0) << seed;

        TraceMaker fault({0.2, 0.1}, seed);
        fault.set(0.95);
        fault.dropout(12, 1.5, -0.13);
        fault.hold(30);
        fault.move(4.1, 15);
        fault.hold(12);
        EXPECT_EQ(dropoutCount(examine(fault, risingSheet())), 1) << seed;
    }
}

// The first shifted reading comes with the mark, so that its aperture began in the pose before.
TEST(Movement, PlayOfAHandThatIsOverJustBeforeItsMarkIsNoDropout) {
    Dice dice(5);
    std::vector<std::variant<Reading, Mark>> rows;
    rows.emplace_back(Mark{Time(0), "step:cold-start"});
    const auto shown = [&](int i, double level_V) {
        const double volts_V = std::round((level_V + 0.0005 * dice.normal()) * 1000) / 1000;
        rows.emplace_back(Reading{fromSeconds(0.33 * i), volts_V, {}});
    };
    for (int i = 0; i < 40; ++i) shown(i, 0.85);
    rows.emplace_back(Mark{fromSeconds(0.33 * 39), "step:wiggle-shaft"});
    for (int i = 40; i < 640; ++i) {
        const bool left = i / 6 % 2 == 0;
        if (i % 6 == 0) rows.emplace_back(Mark{fromSeconds(0.33 * i), left ? "pose:left" : "pose:right"});
        shown(i, left ? 0.871 : 0.842);
    }
    const MakerMeter meter{0.33, 0.1};
    EXPECT_EQ(dropoutCount(examine(rows, risingSheet(), TraceMaker(meter).traits())), 0);
}

TEST(Movement, AShallowShiftThatComesBackWithinItsPoseIsNoPlay) {
    for (const MakerMeter& meter : {kMeters[0], kMeters[1]}) {
        TraceMaker trace(meter, 3);
        trace.set(0.82);
        trace.guidedStart();
        trace.mark("step:wiggle-shaft");
        trace.hold(2);
        for (int i = 0; i < 6; ++i) {
            trace.mark(i % 2 == 0 ? "pose:left" : "pose:right");
            if (i == 3) trace.dropout(1.0, 4 * meter.interval_s, -0.035);
            trace.hold(6);
        }
        trace.mark("step:end");
        const Findings f = examine(trace, risingSheet());
        ASSERT_EQ(f.excursions.size(), 1U);
        EXPECT_EQ(f.excursions[0].kind, ExcursionKind::dropout);
        EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << "no deeper than play: it has no vote";
    }
}

} // namespace
} // namespace stillwire::test
