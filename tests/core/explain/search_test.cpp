// SPDX-License-Identifier: GPL-3.0-or-later
// What a wire is taken for. Thresholds, 2 s, five intervals and rails: the design, 'What the core computes', point 1.
#include "tests/core/explain/wire.hpp"
#include "tests/support/trace_maker.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using enum ExpectedMotion;
constexpr ExpectedMotion kEvery[] = {still, positions, moving, free, sweep, unmarked};

TEST(Search, AHeldLevelIsHeld) {
    for (const ExpectedMotion motion : kEvery) {
        Dice dice(2);
        WireOf wire(motion);
        for (int i = 0; i < 60; ++i) wire.show(4.5 + 0.001 * dice.normal());
        EXPECT_EQ(wire.words(), "H" + std::string(59, 'h'));
        EXPECT_NEAR(wire.search.now().level.level_V(), 4.5, 0.001);
        EXPECT_EQ(wire.search.now().level.id(), 0);
    }
}

TEST(Search, WhatLeavesALevelByMoreThanTheThresholdIsAway) {
    for (const double side : {-1.0, 1.0}) {
        for (const ExpectedMotion motion : {still, positions, unmarked}) {
            WireOf wire(motion);
            wire.show(2.5, 40);
            wire.show(2.5 + side * 0.021);
            EXPECT_EQ(wire.doing(), Doing::away); // by the reading that shows it
            wire.show(2.5, 3);
            EXPECT_EQ(wire.words(5), "hAHhh");
            EXPECT_EQ(wire.search.now().level.id(), 0); // the same level
            WireOf within(motion);
            within.show(2.5, 40);
            within.show(2.5 + side * 0.018);
            EXPECT_EQ(within.doing(), Doing::held);
            within.show(2.5, 3);
            EXPECT_EQ(within.words(5), "hhhhh");
        }
    }
}

TEST(Search, ADeepDropoutOfSomeReadingsComesBack) {
    for (const ExpectedMotion motion : {still, positions, unmarked}) {
        WireOf wire(motion);
        wire.show(4.1, 40);
        wire.showAll({3.1, 2.2, 3.3});
        EXPECT_EQ(wire.doing(), Doing::away);
        wire.show(4.1, 4);
        EXPECT_EQ(wire.words(8), "hAaaHhhh") << static_cast<int>(motion);
        const auto told = wire.told();
        EXPECT_NEAR(told[41].segment.level_V, 4.1, 1e-9); // of the level left
        EXPECT_NEAR(told[41].segment.threshold_V, 0.02, 1e-9);
        EXPECT_EQ(told[41].segment.level, told[45].segment.level);
    }
}

// Hysteresis of a fifth.
TEST(Search, ItIsBackWithinFourFifthsOfTheReach) {
    const auto doing = [](double volts_V) {
        WireOf wire(still);
        wire.show(2.5, 40);
        wire.show(2.0, 2);
        wire.show(volts_V);
        wire.show(2.5, 2);
        return wire.words(5);
    };
    EXPECT_EQ(doing(2.5 - 0.0158), "AaaHh");
    EXPECT_EQ(doing(2.5 + 0.0150), "AaHhh");
    EXPECT_EQ(doing(2.5 + 0.0158), "AaaHh");
}

TEST(Search, AMovementGoesFromLevelToLevel) {
    for (const ExpectedMotion motion : {moving, sweep, unmarked}) {
        WireOf wire(motion);
        wire.show(0.82, 40);
        wire.showAll({1.3, 2.0, 2.7, 3.4});
        wire.show(4.1, 10);
        EXPECT_EQ(wire.words(15), "hMmmmHhhhhhhhhh") << static_cast<int>(motion);
        EXPECT_NE(wire.search.now().level.id(), 0);
        EXPECT_FALSE(wire.told().back().segment.unasked);
    }
}

// A rail is 2 % of the nominal off 0 V or the reference, where no window of a position is.
TEST(Search, ADropoutAtARailIsOneHoweverLong) {
    for (const double rail_V : {0.01, 0.099, 4.901, 4.99}) {
        WireOf wire(unmarked);
        wire.show(2.5, 40);
        wire.show(rail_V, 200);
        EXPECT_EQ(wire.doing(), Doing::away) << rail_V;
        wire.show(2.5, 5);
        EXPECT_EQ(wire.words(6), "aHhhhh") << rail_V;
    }
    for (const double volts_V : {0.101, 4.899}) {
        WireOf wire(unmarked);
        wire.show(2.5, 40);
        wire.show(volts_V, 200);
        EXPECT_EQ(wire.doing(), Doing::held) << volts_V;
    }
    WireOf position(unmarked, 0.33, 0.1, {}, {{0.0, 0.3}, {2.0, 3.0}});
    position.show(2.5, 40);
    position.show(0.05, 200);
    EXPECT_EQ(position.doing(), Doing::held);
}

// max(2 s, 5 intervals); times 1.05, for stamps jitter.
TEST(Search, UnmarkedAndFlatForLongerIsAMovement) {
    const auto readingsAway = [](double interval_s, double aperture_s) {
        WireOf wire(unmarked, interval_s, aperture_s);
        wire.show(4.5, 60);
        int count = 0;
        for (wire.show(3.0); wire.doing() == Doing::away && count < 500; wire.show(3.0)) ++count;
        EXPECT_EQ(wire.doing(), Doing::held);
        EXPECT_NE(wire.search.now().level.id(), 0);
        return count;
    };
    EXPECT_EQ(readingsAway(0.33, 0.1), 7);  // 6 intervals and an aperture are 2.08 s
    EXPECT_EQ(readingsAway(0.1, 0.1), 21);  // 20 intervals and an aperture are 2.1 s
    EXPECT_EQ(readingsAway(0.25, 0.05), 9); // 8 intervals are 2.05 s
}

TEST(Search, UnmarkedAndFlatForNoLongerIsADropout) {
    WireOf wire(unmarked);
    wire.show(4.5, 60);
    wire.show(3.0, 7);
    wire.show(4.5, 5);
    EXPECT_EQ(wire.words(13), "hAaaaaaaHhhhh");
    WireOf slow(unmarked, 0.5, 0.4);
    slow.show(4.5, 60);
    slow.show(3.0, 5);
    slow.show(4.5, 5);
    EXPECT_EQ(slow.words(11), "hAaaaaHhhhh");
}

TEST(Search, UnmarkedAndNoisyIsADropoutHoweverLong) {
    Dice dice(6);
    WireOf wire(unmarked);
    wire.show(4.5, 60);
    for (int i = 0; i < 30; ++i) wire.show(dice.between(1.0, 3.5));
    wire.show(4.5, 20);
    const auto told = wire.told();
    EXPECT_EQ(told.back().segment.level, told[59].segment.level);
    EXPECT_EQ(wire.words(51), "hA" + std::string(29, 'a') + "H" + std::string(19, 'h'));
}

// Where nobody asked for a movement, poses are shorter than eight seconds (tuning).
TEST(Search, InAStepThatHoldsFlatForEightSecondsIsElsewhere) {
    WireOf wire(still);
    wire.show(4.5, 60);
    wire.show(3.0, 20);
    EXPECT_EQ(wire.doing(), Doing::away);
    wire.show(3.0, 10);
    EXPECT_EQ(wire.doing(), Doing::held);
    EXPECT_TRUE(wire.told().back().segment.unasked);
}

TEST(Search, AMovementNobodyAskedForIsUnasked) {
    WireOf wire(positions);
    wire.show(0.82, 40);
    wire.showAll({1.3, 2.0, 2.7, 3.4});
    wire.show(4.1, 40);
    EXPECT_EQ(wire.words(45), "hMmmmH" + std::string(39, 'h'));
    EXPECT_TRUE(wire.told()[41].segment.unasked);
    EXPECT_TRUE(wire.told().back().segment.unasked);
}

TEST(Search, AMovementThatAMarkAskedForIsNot) {
    WireOf wire(positions);
    wire.show(0.82, 40);
    wire.expected.asked = true;
    wire.expected.from = wire.now;
    wire.search.moveAsked(wire.expected);
    wire.showAll({0.82, 1.3, 2.0, 2.7, 3.4});
    wire.show(4.1, 20);
    EXPECT_EQ(wire.words(26), "hhMmmmH" + std::string(19, 'h'));
    EXPECT_FALSE(wire.told()[42].segment.unasked);
    EXPECT_FALSE(wire.told().back().segment.unasked);
}

// moving.early_s = 3.
TEST(Search, AHandThatMovedShortlyBeforeItsMarkWasEarly) {
    const auto takenFor = [](int readingsBefore, double stepBefore_s) {
        WireOf wire(positions);
        wire.show(0.82, 40);
        wire.showAll({1.3, 2.0, 2.7, 3.4});
        wire.show(4.1, readingsBefore - 4);
        wire.expected.asked = true;
        wire.expected.from = wire.now;
        wire.expected.stepFrom = wire.now - fromSeconds(stepBefore_s);
        wire.search.moveAsked(wire.expected);
        wire.show(4.1, 20);
        EXPECT_FALSE(wire.told().back().segment.unasked);
        return wire.told()[40].segment.doing;
    };
    EXPECT_EQ(takenFor(9, 30), Doing::moving); // 2.97 s before
    EXPECT_EQ(takenFor(10, 30), Doing::away);
    EXPECT_EQ(takenFor(9, 2), Doing::away); // in the step before
}

TEST(Search, AReadingOffTheLineOfASweepIsADropout) {
    WireOf wire(sweep, 0.33, 0.1);
    wire.show(0.82, 20);
    for (int i = 1; i <= 10; ++i) wire.show(0.82 + 0.1 * i);
    wire.showAll({0.4, 0.5});
    EXPECT_EQ(wire.doing(), Doing::offLine);
    for (int i = 13; i <= 25; ++i) wire.show(0.82 + 0.1 * i);
    wire.show(3.32, 10);
    EXPECT_EQ(wire.words().substr(20, 22), "MmmmmmmmmmOoMmmmmmmmmm") << wire.words();
}

TEST(Search, NothingMovesAtOneLevelForLong) {
    WireOf wire(moving);
    wire.show(0.82, 40);
    wire.showAll({1.5, 2.2, 2.9, 3.6});
    wire.show(3.6, 12);
    EXPECT_EQ(wire.doing(), Doing::held);
    wire.showAll({2.9, 2.2, 1.5});
    wire.show(0.82, 12);
    EXPECT_EQ(wire.doing(), Doing::held);
    EXPECT_NEAR(wire.search.now().level.level_V(), 0.82, 0.002);
}

TEST(Search, BetweenReadingsThatDoNotTouchADropoutIsTwo) {
    WireOf wire(still);
    wire.show(4.5, 40);
    wire.show(3.0, 2);
    wire.search.blind();
    wire.now += fromSeconds(5);
    wire.show(3.0, 2);
    wire.show(4.5, 4);
    EXPECT_EQ(wire.words(9), "hAaAaHhhh");
}

TEST(Search, AtAnotherWireWhateverLevelComesNextIsHeld) {
    WireOf wire(moving);
    wire.show(5.0, 40);
    wire.show(3.0);
    wire.search.otherWire(wire.now, wire.settled);
    EXPECT_EQ(wire.settled.all.size(), 41U); // all of the wire before
    EXPECT_FALSE(wire.search.any());
    wire.expected.rails = false;
    wire.show(0.02, 5);
    EXPECT_EQ(wire.words(6), "AHhhhh");
}

// A hand's tremor of 8 mV is no row of dropouts.
TEST(Search, AHandTrembles) {
    Dice dice(4);
    WireOf wire(positions);
    wire.show(0.82, 40);
    wire.expected.asked = wire.expected.held = true;
    wire.expected.from = wire.now;
    wire.search.moveAsked(wire.expected);
    wire.showAll({1.4, 2.3, 3.2});
    for (int i = 0; i < 40; ++i) wire.show(4.1 + 0.008 * dice.normal());
    EXPECT_EQ(wire.words(43), "MmmH" + std::string(39, 'h'));
}

TEST(Search, AStirredWireLeansWithinReach) {
    WireOf wire(still);
    wire.show(4.5, 40);
    wire.expected.stirred = true;
    wire.show(4.488, 30);
    wire.show(4.512, 30);
    EXPECT_EQ(wire.words(60), std::string(60, 'h'));
    EXPECT_NEAR(wire.search.now().level.level_V(), 4.5, 0.001); // a lean is no news of the level
}

TEST(Search, TheNoiseOfAMeterIsLearntFromQuietHolds) {
    Dice dice(9);
    WireOf wire(still);
    EXPECT_EQ(wire.search.expected_V(4.5), 0.001); // a count, before anything is known
    for (int i = 0; i < 2000; ++i) wire.show(4.5 + 0.0016 * dice.normal());
    EXPECT_NEAR(wire.search.expected_V(4.5), 0.0016, 0.00025);
    const double known_V = wire.search.expected_V(4.5);
    for (int i = 0; i < 200; ++i) wire.show(4.5 + 0.006 * dice.normal()); // that is no quiet hold
    EXPECT_NEAR(wire.search.expected_V(4.5), known_V, 0.0006);
}

} // namespace
} // namespace stillwire::test
