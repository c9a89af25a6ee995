// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/past.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

Segment from(std::int64_t number, int before = -1) {
    Segment segment;
    segment.from = number;
    segment.before = before;
    segment.users = 7; // whatever the caller leaves there
    return segment;
}

std::vector<int> chainOf(const Past& past, int newest) {
    std::vector<int> chain{99};
    past.chain(newest, chain);
    return chain;
}

TEST(Past, ChainGoesFromTheOldestToTheNewest) {
    Past past;
    const int a = past.add(from(0)), b = past.add(from(5, a)), c = past.add(from(9, b)), other = past.add(from(6, a));
    EXPECT_EQ(chainOf(past, c), (std::vector{a, b, c}));
    EXPECT_EQ(chainOf(past, other), (std::vector{a, other}));
    EXPECT_EQ(chainOf(past, -1), std::vector<int>{});
    EXPECT_EQ(past.at(c).from, 9);
}

TEST(Past, ASegmentIsUsedByThoseThatStandOnIt) {
    Past past;
    const int a = past.add(from(0));
    EXPECT_EQ(past.at(a).users, 0);
    past.add(from(5, a));
    past.add(from(6, a));
    past.use(a);
    past.use(-1); // nobody
    EXPECT_EQ(past.at(a).users, 3);
}

TEST(Past, WhatNobodyUsesIsTakenAgain) {
    Past past;
    const int a = past.add(from(0)), b = past.add(from(5, a)), c = past.add(from(9, b));
    past.use(c);
    past.drop(c); // and with it b and a
    const int d = past.add(from(20)), e = past.add(from(21)), f = past.add(from(22));
    for (const int i : {d, e, f}) EXPECT_LE(i, c);
    EXPECT_NE(d, e);
    EXPECT_NE(e, f);
    EXPECT_NE(d, f);
    EXPECT_EQ(past.at(d).from, 20);
    EXPECT_EQ(past.at(d).users, 0);
    EXPECT_EQ(past.add(from(23)), 3); // nothing is free any more
}

TEST(Past, DroppingStopsWhereAnotherStillStands) {
    Past past;
    const int a = past.add(from(0)), b = past.add(from(5, a)), c = past.add(from(6, a));
    past.use(b);
    past.use(c);
    past.drop(b);
    EXPECT_EQ(past.at(a).users, 1);
    EXPECT_EQ(past.add(from(9)), b);
    EXPECT_EQ(past.add(from(10)), 3); // a is in use
    past.use(c);
    past.drop(c);
    EXPECT_EQ(past.at(c).users, 1);
    EXPECT_EQ(chainOf(past, c), (std::vector{a, c}));
    past.drop(-1); // nobody's
}

TEST(Past, CutForgetsWhatLiesBefore) {
    Past past;
    const int a = past.add(from(0)), b = past.add(from(5, a)), c = past.add(from(9, b));
    past.use(c);
    past.cut(c);
    EXPECT_EQ(chainOf(past, c), std::vector{c});
    EXPECT_EQ(past.at(c).users, 1);
    EXPECT_LE(past.add(from(20)), b); // both are free
    EXPECT_LE(past.add(from(21)), b);
    EXPECT_EQ(past.add(from(22)), 3);
}

} // namespace
} // namespace stillwire
