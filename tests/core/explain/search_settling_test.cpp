// SPDX-License-Identifier: GPL-3.0-or-later
// When and how readings are settled, whatever they are taken for.
#include "tests/core/explain/wire.hpp"
#include "tests/support/trace_maker.hpp"

#include <cmath>
#include <malloc.h>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using enum ExpectedMotion;

// Quiet, dropouts, movements, noise and silence, whatever the dice say.
void showOddly(WireOf& wire, int readings, std::uint64_t seed) {
    Dice dice(seed);
    double level_V = 2.5;
    for (int shown = 0; shown < readings;) {
        const double kind = dice.uniform();
        const int count = 1 + static_cast<int>(40 * dice.uniform() * dice.uniform());
        const double next_V = dice.between(0.0, 5.0);
        for (int i = 0; i < count && shown < readings; ++i, ++shown) {
            const double noise_V = 0.001 * dice.normal();
            if (kind < 0.4)
                wire.show(level_V + noise_V);
            else if (kind < 0.6)
                wire.show(next_V + noise_V); // flat away
            else if (kind < 0.8)
                wire.show(level_V + (next_V - level_V) * (i + 1) / count + noise_V);
            else if (kind < 0.9)
                wire.show(dice.between(0.0, 5.0));
            else
                wire.show(level_V + 0.02 * dice.normal());
        }
        if (kind >= 0.6 && kind < 0.8) level_V = next_V;
        if (dice.uniform() < 0.1) {
            wire.search.blind();
            wire.now += fromSeconds(dice.between(1, 10));
        }
        wire.context += dice.uniform() < 0.3 ? 1 : 0;
    }
}

TEST(SearchSettling, EachReadingIsSettledOnceAndInOrder) {
    for (const ExpectedMotion motion : {still, positions, moving, free, sweep, unmarked}) {
        WireOf wire(motion);
        std::vector<int> contexts;
        showOddly(wire, 3000, 5);
        EXPECT_GT(wire.settled.all.size(), 2500U);
        const auto told = wire.told();
        ASSERT_EQ(told.size(), wire.pushed.size());
        for (std::size_t i = 0; i < told.size(); ++i) {
            ASSERT_EQ(told[i].reading.time, wire.pushed[i].time) << i;
            ASSERT_EQ(told[i].reading.volts_V, wire.pushed[i].volts_V) << i;
        }
        for (std::size_t i = 1; i < told.size(); ++i) ASSERT_GE(told[i].context, told[i - 1].context) << i;
        EXPECT_TRUE(told[0].begins);
        for (std::size_t i = 1; i < told.size(); ++i) {
            // A segment is told by its first reading, and by no other.
            ASSERT_EQ(told[i].begins, told[i].segment.from == static_cast<std::int64_t>(i)) << i;
            if (!told[i].begins) {
                ASSERT_EQ(told[i].segment.from, told[i - 1].segment.from) << i;
                ASSERT_EQ(told[i].segment.doing, told[i - 1].segment.doing) << i;
            }
        }
    }
}

TEST(SearchSettling, WhatIsSettledStaysSo) {
    WireOf wire(unmarked);
    std::size_t before = 0;
    for (int part = 0; part < 20; ++part) {
        showOddly(wire, 50, static_cast<std::uint64_t>(part) + 1);
        EXPECT_GE(wire.settled.all.size(), before);
        before = wire.settled.all.size();
        const int calls = wire.settled.calls;
        (void)wire.told(); // asking for the rest settles nothing
        EXPECT_EQ(wire.settled.calls, calls);
        EXPECT_EQ(wire.settled.all.size(), before);
    }
}

// What may come back, or not, is waited for, but no longer than search.lag_s and search.lagReadings.
TEST(SearchSettling, LagIsBounded) {
    const auto longest = [](double interval_s, double lag_s, int lagReadings) {
        Tuning tuning;
        tuning.search.lag_s = lag_s;
        tuning.search.lagReadings = lagReadings;
        WireOf wire(unmarked, interval_s, 0.01, tuning);
        std::size_t readings = 0;
        Time late{0};
        const auto look = [&] {
            const std::size_t settled = wire.settled.all.size();
            if (settled == wire.pushed.size()) return;
            readings = std::max(readings, wire.pushed.size() - settled);
            late = std::max(late, wire.pushed.back().time - wire.pushed[settled].time);
        };
        wire.show(2.5, 60);
        for (int i = 0; i < 1500; ++i) { // at a rail
            wire.show(0.01);
            look();
        }
        Dice dice(7);
        for (int i = 0; i < 1500; ++i) {
            wire.show(dice.between(0, 5));
            look();
        }
        return std::pair(readings, toSeconds(late));
    };
    EXPECT_LE(longest(0.02, 25, 400).first, 400U);
    EXPECT_LE(longest(0.33, 25, 400).second, 25);
    EXPECT_EQ(longest(0.1, 25, 30).first, 30U);
    EXPECT_NEAR(longest(0.1, 4, 400).second, 4, 1e-6);
}

TEST(SearchSettling, WhatEveryExplanationAgreesOnIsSettledAtOnce) {
    WireOf wire(still);
    wire.show(2.5, 40);
    EXPECT_EQ(wire.settled.all.size(), 40U);
    wire.show(1.0);
    EXPECT_EQ(wire.settled.all.size(), 40U); // that may be many things
    wire.show(2.5, 20);
    EXPECT_EQ(wire.settled.all.size(), 61U);
}

TEST(SearchSettling, ReadingsAreToldByContextAndSegment) {
    WireOf wire(still);
    wire.show(2.5, 20);
    wire.show(1.0, 2);
    wire.context = 1;
    wire.show(1.0, 2);
    const int calls = wire.settled.calls;
    wire.show(2.5, 20);
    EXPECT_EQ(wire.words(), "H" + std::string(19, 'h') + "Aaaa" + "H" + std::string(19, 'h'));
    const auto told = wire.told();
    for (std::size_t i = 0; i < told.size(); ++i) EXPECT_EQ(told[i].context, i < 22 ? 0 : 1) << i;
    EXPECT_GT(wire.settled.calls, calls + 2);
}

TEST(SearchSettling, QuietReadingsTogetherEqualThoseOneByOne) {
    Dice dice(11);
    WireOf one(still), together(still);
    std::vector<Reading> readings;
    for (int i = 0; i < 2000; ++i) {
        const bool off = i % 137 == 100;
        readings.push_back({fromSeconds(0.33 * i), off ? 1.0 : 4.5 + 0.0012 * dice.normal(), {}});
    }
    for (const Reading& r : readings) one.search.push(r, 0, one.expected, one.settled);
    std::size_t taken = 0;
    for (std::size_t i = 0; i < readings.size();) {
        const Search::Quiet quiet = together.search.quiet(together.expected);
        std::size_t n = 0;
        while (i + n < readings.size() && static_cast<int>(n) < quiet.most &&
               std::abs(readings[i + n].volts_V - quiet.level_V) <= quiet.reach_V)
            if (readings[i + n++].time >= quiet.due) break;
        if (n > 0) {
            together.search.pushQuiet(&readings[i], n, 0, together.expected, together.settled);
            taken += n;
            i += n;
        } else {
            together.search.push(readings[i++], 0, together.expected, together.settled);
        }
    }
    EXPECT_GT(taken, 1000U);
    ASSERT_EQ(one.settled.all.size(), together.settled.all.size());
    for (std::size_t i = 0; i < one.settled.all.size(); ++i) {
        const SettledOnes::One &a = one.settled.all[i], &b = together.settled.all[i];
        ASSERT_EQ(a.reading.time, b.reading.time) << i;
        ASSERT_EQ(a.segment.doing, b.segment.doing) << i;
        ASSERT_EQ(a.segment.from, b.segment.from) << i;
        ASSERT_EQ(a.begins, b.begins) << i;
    }
    EXPECT_EQ(one.search.now().level.level_V(), together.search.now().level.level_V());
    EXPECT_EQ(one.search.now().level.noise_V(), together.search.now().level.noise_V());
    EXPECT_EQ(one.search.expected_V(4.5), together.search.expected_V(4.5));
}

TEST(SearchSettling, NothingIsQuietThatIsNotAHeldLevelAlone) {
    WireOf wire(unmarked);
    wire.show(2.5, 15);
    EXPECT_EQ(wire.search.quiet(wire.expected).most, 0); // not known yet
    wire.show(2.5, 9);
    const Search::Quiet quiet = wire.search.quiet(wire.expected);
    EXPECT_GT(quiet.most, 0);
    EXPECT_NEAR(quiet.level_V, 2.5, 1e-9);
    EXPECT_EQ(quiet.reach_V, wire.search.now().level.quietReach_V());
    EXPECT_EQ(quiet.due, wire.search.now().level.due());
    EXPECT_EQ(wire.search.quiet(expecting(free)).most, 0); // nothing is judged
    WireOf blind = wire;
    blind.search.blind();
    EXPECT_EQ(blind.search.quiet(blind.expected).most, 0);
    wire.show(1.0);
    EXPECT_EQ(wire.search.quiet(wire.expected).most, 0);
    wire.show(2.5);
    EXPECT_EQ(wire.search.quiet(wire.expected).most, 0); // more than one explanation is left
}

TEST(SearchSettling, MemoryDoesNotGrow) {
    WireOf wire(unmarked);
    const auto used = [&](std::uint64_t seed) {
        for (std::uint64_t i = 0; i < 10; ++i) {
            showOddly(wire, 1000, seed + i);
            wire.settled.all.clear();
            wire.pushed.clear();
        }
        wire.settled.all.shrink_to_fit();
        wire.pushed.shrink_to_fit();
        return mallinfo2().uordblks;
    };
    const std::size_t before = used(1), after = used(100);
    EXPECT_LT(after, before + 64 * 1024);
}

} // namespace
} // namespace stillwire::test
