// SPDX-License-Identifier: GPL-3.0-or-later
// A lead that is off its wire for a while, and a key turned off, leave the levels alone. Common practice, no source.
#include "core/judge/telling_stays.hpp"
#include "tests/support/guided_run.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

Plateau stayOf(Wire wire, double level_V, int position = -1) {
    Plateau stay;
    stay.place.wire = wire;
    stay.place.position = position;
    stay.level_V = level_V;
    return stay;
}
std::vector<double> levelsOf(const std::vector<Plateau>& stays) {
    std::vector<double> levels;
    for (const Plateau& stay : stays) levels.push_back(stay.level_V);
    return levels;
}

TEST(TellingStays, WhatReadsNothingIsLeftOutWhereOthersRead) {
    const Sheet sheet = risingSheet();
    EXPECT_EQ(levelsOf(tellingStays({stayOf(Wire::reference, 4.98), stayOf(Wire::reference, 0.02)}, sheet)),
              std::vector{4.98});
    EXPECT_EQ(levelsOf(tellingStays({stayOf(Wire::ground, 4.98), stayOf(Wire::ground, 0.02)}, sheet)),
              std::vector{0.02});
    EXPECT_EQ(levelsOf(tellingStays({stayOf(Wire::signal, 0.0, 1), stayOf(Wire::signal, 4.1, 1)}, sheet)),
              std::vector{4.1});
}

TEST(TellingStays, AloneItIsAllThereIs) {
    const Sheet sheet = risingSheet();
    EXPECT_EQ(levelsOf(tellingStays({stayOf(Wire::reference, 0.02)}, sheet)), std::vector{0.02});
    const std::vector<double> both{0.01, 4.1}; // of two positions
    EXPECT_EQ(levelsOf(tellingStays({stayOf(Wire::signal, 0.01, 0), stayOf(Wire::signal, 4.1, 1)}, sheet)), both);
}

TEST(TellingStays, ALowReferenceIsNoLeadOffItsWire) {
    const std::vector<double> both{4.98, 3.2};
    EXPECT_EQ(levelsOf(tellingStays({stayOf(Wire::reference, 4.98), stayOf(Wire::reference, 3.2)}, risingSheet())),
              both);
}

TEST(TellingStays, TheKeyTurnedOffInAStepIsNoReading) {
    TraceMaker trace(MakerMeter{}, 1);
    trace.mark("step:reference");
    trace.set(5.0);
    trace.hold(6);
    trace.mark("key:off");
    trace.set(0.0);
    trace.hold(5);
    trace.mark("key:on");
    trace.set(5.0);
    trace.hold(6);
    trace.mark("step:end");
    const Findings f = examine(trace, risingSheet());
    ASSERT_TRUE(f.reference);
    EXPECT_NEAR(f.reference->worst_V, 5.0, 0.01);
}

} // namespace
} // namespace stillwire::test
