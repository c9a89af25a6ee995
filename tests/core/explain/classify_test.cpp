// SPDX-License-Identifier: GPL-3.0-or-later
// What a person would name it, from segments written by hand.
#include "core/explain/classify.hpp"

#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

struct Said final : Explained {
    void held(const Reading* first, std::size_t count, int context, const Segment& level, bool anew) override {
        words += anew ? "H" : "h";
        readings += count;
        lastHeld_V = first[count - 1].volts_V;
        contexts.push_back(context);
        levels_V.push_back(level.level_V);
    }
    void away(const Reading& reading, int context, const Segment& level) override {
        words += "a";
        away_V.push_back(reading.volts_V - level.level_V);
        contexts.push_back(context);
    }
    void moving(const Reading&, int context) override {
        words += "m";
        contexts.push_back(context);
    }
    void excursion(const Excursion& excursion, bool shoulder) override {
        words += "E";
        excursions.push_back(excursion);
        shoulders.push_back(shoulder);
    }
    void moved(const Movement& movement) override {
        words += "M";
        movements.push_back(movement);
    }
    std::string words;
    std::size_t readings = 0;
    double lastHeld_V = 0;
    std::vector<int> contexts;
    std::vector<double> levels_V, away_V;
    std::vector<Excursion> excursions;
    std::vector<bool> shoulders;
    std::vector<Movement> movements;
};

// A reading a second, from second 0 on.
class Classify : public testing::Test {
protected:
    void tell(const Segment& segment, const std::vector<double>& volts_V, bool begins = true) {
        std::vector<Reading> readings;
        for (const double v : volts_V) readings.push_back({std::chrono::seconds(next_++), v, {}});
        classifier.readings(readings.data(), readings.size(), 4, segment, begins);
    }
    void held(std::int64_t id, double level_V, const std::vector<double>& volts_V, bool begins = true) {
        tell(level(Doing::held, id, level_V), volts_V, begins);
    }
    void away(double level_V, const std::vector<double>& volts_V, bool begins = true) {
        tell(level(Doing::away, 1, level_V), volts_V, begins);
    }
    void moving(const std::vector<double>& volts_V, bool unasked = false, bool begins = true) {
        Segment segment = level(Doing::moving, 1, 0);
        segment.unasked = unasked;
        tell(segment, volts_V, begins);
    }
    void offLine(const std::vector<double>& volts_V, bool begins = true) {
        tell(level(Doing::offLine, 1, 0), volts_V, begins);
    }
    static Segment level(Doing doing, std::int64_t id, double level_V) {
        Segment segment;
        segment.doing = doing;
        segment.level = id;
        segment.level_V = level_V;
        segment.threshold_V = 0.02;
        return segment;
    }
    static Time at(int second) { return std::chrono::seconds(second); }

    Said said;
    Classifier classifier{said};
    int next_ = 0;
};

TEST_F(Classify, ReadingsAtALevelAreToldTogether) {
    held(1, 4.5, {4.5, 4.501, 4.499});
    held(1, 4.5, {4.5, 4.502}, false);
    EXPECT_EQ(said.words, "Hh"); // anew once
    EXPECT_EQ(said.readings, 5U);
    EXPECT_EQ(said.lastHeld_V, 4.502);
    EXPECT_EQ(said.contexts, (std::vector{4, 4}));
}

TEST_F(Classify, WhatComesBackIsAnExcursion) {
    held(1, 4.5, {4.5, 4.5});
    away(4.5, {4.0, 3.0, 3.5});
    EXPECT_EQ(said.words, "Haaa");
    EXPECT_EQ(said.away_V, (std::vector{-0.5, -1.5, -1.0}));
    held(1, 4.5, {4.5});
    EXPECT_EQ(said.words, "HaaaEh"); // the same level
    ASSERT_EQ(said.excursions.size(), 1U);
    const Excursion& e = said.excursions[0];
    EXPECT_EQ(e.from, at(2));
    EXPECT_EQ(e.to, at(4));
    EXPECT_EQ(e.held_V, 4.5);
    EXPECT_EQ(e.extreme_V, 3.0);
    EXPECT_EQ(e.threshold_V, 0.02);
    EXPECT_EQ(e.direction, Direction::down);
    EXPECT_EQ(e.readings, 3);
    EXPECT_FALSE(e.open);
    EXPECT_FALSE(said.shoulders[0]);
    EXPECT_TRUE(said.movements.empty());
}

TEST_F(Classify, AnExcursionMayGoUpAndBeToldInParts) {
    held(1, 0.8, {0.8});
    away(0.8, {1.2});
    away(0.8, {1.1, 1.0}, false);
    held(1, 0.8, {0.8});
    ASSERT_EQ(said.excursions.size(), 1U);
    EXPECT_EQ(said.excursions[0].direction, Direction::up);
    EXPECT_EQ(said.excursions[0].extreme_V, 1.2);
    EXPECT_EQ(said.excursions[0].readings, 3);
    EXPECT_EQ(said.excursions[0].to, at(3));
}

TEST_F(Classify, TheDeeperSideGivesTheDirection) {
    held(1, 2.5, {2.5});
    away(2.5, {2.4, 2.9});
    held(1, 2.5, {2.5});
    EXPECT_EQ(said.excursions[0].direction, Direction::up);
    EXPECT_EQ(said.excursions[0].extreme_V, 2.9);
}

TEST_F(Classify, AnExcursionThatIsStillOpenIsToldAsItStands) {
    held(1, 4.5, {4.5});
    EXPECT_FALSE(classifier.open());
    away(4.5, {4.0, 3.9});
    ASSERT_TRUE(classifier.open());
    EXPECT_TRUE(classifier.open()->open);
    EXPECT_EQ(classifier.open()->readings, 2);
    EXPECT_EQ(classifier.open()->extreme_V, 3.9);
    held(1, 4.5, {4.5});
    EXPECT_FALSE(classifier.open());
}

TEST_F(Classify, TwoExcursionsAfterEachOtherAreTwo) {
    held(1, 4.5, {4.5});
    away(4.5, {4.0});
    away(4.5, {3.0}); // what was not seen lies between
    held(1, 4.5, {4.5});
    EXPECT_EQ(said.words, "HaEaEh");
}

// Two fifths of the depth, on the same side.
TEST_F(Classify, ANeighbourThatLeansTheSameWayIsAShoulder) {
    const auto shoulder = [](double before_V, double after_V) -> bool {
        Said told;
        Classifier of(told);
        const Segment held = level(Doing::held, 1, 4.5), away = level(Doing::away, 1, 4.5);
        const Reading readings[] = {{at(0), before_V, {}}, {at(1), 4.4, {}}, {at(2), after_V, {}}};
        of.readings(&readings[0], 1, 0, held, true);
        of.readings(&readings[1], 1, 0, away, true);
        of.readings(&readings[2], 1, 0, held, true);
        return told.shoulders.at(0);
    };
    EXPECT_FALSE(shoulder(4.5, 4.5));
    EXPECT_TRUE(shoulder(4.459, 4.5));
    EXPECT_FALSE(shoulder(4.461, 4.5));
    EXPECT_FALSE(shoulder(4.541, 4.5)); // the other way
    EXPECT_TRUE(shoulder(4.5, 4.459));
    EXPECT_FALSE(shoulder(4.5, 4.461));
    EXPECT_FALSE(shoulder(4.5, 4.541));
}

TEST_F(Classify, AShoulderIsTheReadingBesideTheExcursion) {
    held(1, 4.5, {4.45, 4.5}); // two before it
    away(4.5, {4.4});
    held(1, 4.5, {4.5, 4.45});
    away(4.5, {4.4});
    held(1, 4.5, {4.5});
    EXPECT_EQ(said.shoulders, (std::vector{false, true}));
}

TEST_F(Classify, FromLevelToLevelIsAMovement) {
    held(1, 0.8, {0.8, 0.8});
    moving({1.5, 2.5, 3.5});
    moving({3.8}, false, false);
    held(2, 4.1, {4.1, 4.1});
    EXPECT_EQ(said.words, "HmmmmMH");
    ASSERT_EQ(said.movements.size(), 1U);
    const Movement& m = said.movements[0];
    EXPECT_EQ(m.from, at(1));
    EXPECT_EQ(m.first, at(2));
    EXPECT_EQ(m.to, at(6));
    EXPECT_EQ(m.from_V, 0.8);
    EXPECT_EQ(m.to_V, 4.1);
    EXPECT_FALSE(m.leapt);
    EXPECT_FALSE(m.unasked);
    EXPECT_TRUE(said.excursions.empty());
}

TEST_F(Classify, NoMoreThanAReadingOnTheWayIsALeap) {
    held(1, 0.8, {0.8});
    held(2, 4.1, {4.1});
    moving({2.0});
    held(3, 0.9, {0.9});
    moving({2.0, 3.0});
    held(4, 4.0, {4.0});
    ASSERT_EQ(said.movements.size(), 3U);
    EXPECT_TRUE(said.movements[0].leapt);
    EXPECT_EQ(said.movements[0].from, at(0));
    EXPECT_EQ(said.movements[0].first, at(1));
    EXPECT_EQ(said.movements[0].to, at(1));
    EXPECT_TRUE(said.movements[1].leapt);
    EXPECT_EQ(said.movements[1].from_V, 4.1);
    EXPECT_EQ(said.movements[1].to_V, 0.9);
    EXPECT_FALSE(said.movements[2].leapt); // counted anew
    EXPECT_EQ(said.movements[2].from, at(3));
    EXPECT_EQ(said.movements[2].first, at(4));
    EXPECT_EQ(said.movements[2].to, at(6));
}

TEST_F(Classify, AMovementThatNobodyAskedForIsToldSo) {
    held(1, 0.8, {0.8});
    moving({2.0}, true);
    held(2, 4.1, {4.1});
    moving({2.0});
    held(3, 0.8, {0.8});
    Segment leapt = level(Doing::held, 4, 4.1);
    leapt.unasked = true;
    tell(leapt, {4.1});
    held(5, 0.8, {0.8});
    ASSERT_EQ(said.movements.size(), 4U);
    EXPECT_TRUE(said.movements[0].unasked);
    EXPECT_FALSE(said.movements[1].unasked);
    EXPECT_TRUE(said.movements[2].unasked);
    EXPECT_FALSE(said.movements[3].unasked);
}

TEST_F(Classify, UnaskedInOnePartIsUnasked) {
    held(1, 0.8, {0.8});
    moving({2.0, 2.5}, true);
    offLine({0.0});
    moving({3.5});
    held(2, 4.1, {4.1});
    ASSERT_EQ(said.movements.size(), 1U);
    EXPECT_TRUE(said.movements[0].unasked);
    EXPECT_EQ(said.movements[0].first, at(1)); // one movement, with an excursion in it
    EXPECT_EQ(said.words, "HmmaEmMH");
}

TEST_F(Classify, BackWhereItBeganIsAMovementToo) {
    held(1, 0.8, {0.8});
    moving({0.9, 1.0});
    held(1, 0.8, {0.8});
    EXPECT_EQ(said.words, "HmmMh");
    EXPECT_EQ(said.movements[0].to_V, 0.8);
}

TEST_F(Classify, ADropoutInWhichTheShaftWasMovedIsBoth) {
    held(1, 0.8, {0.8});
    away(0.8, {0.0, 0.0});
    held(2, 4.1, {4.1});
    EXPECT_EQ(said.words, "HaaEMH");
    EXPECT_EQ(said.movements[0].from, at(2));
}

TEST_F(Classify, AtAnotherWireNothingHasMoved) {
    held(1, 5.0, {5.0});
    away(5.0, {3.0});
    classifier.otherWire();
    EXPECT_FALSE(classifier.open());
    held(2, 0.02, {0.02});
    EXPECT_EQ(said.words, "HaH");
    moving({1.0, 2.0});
    classifier.otherWire();
    held(3, 4.5, {4.5});
    held(4, 2.5, {2.5}); // no reading on the way is left over
    ASSERT_EQ(said.movements.size(), 1U);
    EXPECT_TRUE(said.movements[0].leapt);
    EXPECT_EQ(said.movements[0].from, at(5));
}

TEST_F(Classify, TheFirstLevelIsNoMovement) {
    moving({1.0, 2.0});
    held(0, 4.5, {4.5});
    EXPECT_EQ(said.words, "mmH");
    held(1, 2.5, {2.5}); // from a level whose id is 0
    EXPECT_EQ(said.words, "mmHMH");
}

// Off the straight line between its neighbours, 1.0 V at 1 s and 2.0 V at 5 s.
TEST_F(Classify, OffALineItsDeepestPointDecides) {
    held(1, 0.5, {0.5});
    moving({1.0});
    offLine({0.8, 0.3, 0.9}); // due 1.25, 1.50, 1.75
    ASSERT_TRUE(classifier.open());
    EXPECT_EQ(classifier.open()->held_V, 1.0);
    EXPECT_EQ(classifier.open()->readings, 3);
    moving({2.0});
    ASSERT_EQ(said.excursions.size(), 1U);
    EXPECT_NEAR(said.excursions[0].held_V, 1.5, 1e-12);
    EXPECT_EQ(said.excursions[0].extreme_V, 0.3);
    EXPECT_EQ(said.excursions[0].direction, Direction::down);
    EXPECT_EQ(said.excursions[0].from, at(2));
    EXPECT_EQ(said.excursions[0].to, at(4));
    EXPECT_FALSE(said.shoulders[0]);
    EXPECT_EQ(said.words, "HmaaaEm");
}

// 1.0 V at 1 s, 4.0 V at 4 s: 1.8 V is above where it was left and yet below the line.
TEST_F(Classify, OffALineTheSideIsThatOfTheLine) {
    held(1, 0.5, {0.5});
    moving({1.0});
    offLine({1.8, 1.8}); // due 2.0, 3.0
    moving({4.0});
    offLine({6.5}); // due 5.0
    moving({6.0});
    ASSERT_EQ(said.excursions.size(), 2U);
    EXPECT_EQ(said.excursions[0].direction, Direction::down);
    EXPECT_NEAR(said.excursions[0].held_V, 3.0, 1e-12);
    EXPECT_EQ(said.excursions[1].direction, Direction::up);
    EXPECT_NEAR(said.excursions[1].held_V, 5.0, 1e-12); // of its own points alone
    EXPECT_EQ(said.excursions[1].readings, 1);
}

TEST_F(Classify, OfPointsAsDeepTheFirstDecides) {
    moving({1.0});
    offLine({0.5, 0.5}); // both due 1.0
    moving({1.0});
    EXPECT_NEAR(said.excursions[0].held_V, 1.0, 1e-12);
    EXPECT_NEAR(said.excursions[0].depth_V(), 0.5, 1e-12);
}

TEST_F(Classify, AnExcursionFromALevelAfterOneOffALineIsOfTheLevel) {
    held(1, 0.5, {0.5});
    moving({1.0});
    offLine({0.3});
    moving({2.0});
    held(2, 2.5, {2.5});
    away(2.5, {2.0, 2.1});
    held(2, 2.5, {2.5});
    ASSERT_EQ(said.excursions.size(), 2U);
    EXPECT_EQ(said.excursions[1].held_V, 2.5);
    EXPECT_EQ(said.excursions[1].extreme_V, 2.0);
    EXPECT_EQ(said.excursions[1].readings, 2);
}

TEST_F(Classify, ACopyTellsSomebodyElse) {
    held(1, 4.5, {4.5});
    away(4.5, {4.0});
    Said other;
    Classifier copy(classifier, other);
    const Reading back{at(9), 4.5, {}};
    copy.readings(&back, 1, 0, level(Doing::held, 1, 4.5), true);
    EXPECT_EQ(other.words, "Eh"); // it knows what went before
    EXPECT_EQ(said.words, "Ha");
    EXPECT_TRUE(classifier.open());
}

} // namespace
} // namespace stillwire
