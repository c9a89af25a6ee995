// SPDX-License-Identifier: GPL-3.0-or-later
// The scorer finds no fault with the truth, and every fault with whoever tells nothing or everything.
#include "tests/core/families/marks.hpp"
#include "tests/core/families/oracle.hpp"
#include "tests/core/families/rows_of_families.hpp"

namespace stillwire::families {
namespace {

int seedsEach(const Family& family) { return test::scaled(family.quickSeeds / 2, family.longSeeds); }

TEST(FamilyScorer, TheTruthIsFaultless) {
    for (const Family& family : families()) {
        RunOrder order;
        order.family = &family;
        order.seeds = seedsEach(family);
        order.teller = Teller::truth;
        order.missesWanted = 3;
        const RunResult result = run(order);
        const Score& s = result.score;
        // A mean of a few readings is off by more than three of its own sd now and then.
        const double mayMiss = 2 + 0.005 * s.plateaus.of;
        EXPECT_EQ(s.seen.got, s.seen.of) << family.name;
        EXPECT_EQ(s.moves.got, s.moves.of) << family.name;
        EXPECT_NEAR(s.sweeps.got, s.sweeps.of, 1e-6) << family.name;
        EXPECT_EQ(s.wiggles.got, s.wiggles.of) << family.name;
        EXPECT_EQ(s.calm.got, s.calm.of) << family.name;
        EXPECT_GE(s.plateaus.got, s.plateaus.of - mayMiss) << family.name;
        EXPECT_EQ(s.blind.got, s.blind.of) << family.name;
        EXPECT_EQ(s.falseFlags + s.falseTravel + s.falseJumps + s.falseWiggles + s.falseBlind, 0) << family.name;
        EXPECT_EQ(s.lawsBroken, 0) << family.name;
        for (const MissSeen& m : result.misses)
            if (m.miss.kind != "plateau")
                ADD_FAILURE() << family.name << " seed " << m.seed << ": " << m.miss.kind << "\n  expected "
                              << m.miss.expected << "\n  told " << m.miss.told << "\n"
                              << m.context;
    }
}

Told oneLongPhase(const Trace& trace, PhaseKind kind) {
    Told told;
    told.phases.push_back({kind, {toSeconds(trace.readings.front().time), toSeconds(trace.readings.back().time)}, 0});
    return told;
}

TEST(FamilyScorer, WhoTellsNothingFindsNothing) {
    const Trace trace = make(*findFamily("plain"), 3, false);
    const Score s = score(trace, oneLongPhase(trace, PhaseKind::quiet));
    EXPECT_EQ(s.seen.got + s.moves.got + s.wiggles.got + s.plateaus.got + s.blind.got, 0);
    EXPECT_EQ(s.falseFlags, 0);
}

TEST(FamilyScorer, OneFlagOverEverythingIsFalseAndSeesNothing) {
    const Trace trace = make(*findFamily("plain"), 3, false);
    Told told = oneLongPhase(trace, PhaseKind::travel);
    told.dropouts.push_back({told.phases[0].when, static_cast<int>(trace.readings.size()), 0, 0});
    const Score s = score(trace, told);
    EXPECT_EQ(s.seen.got, 0);
    EXPECT_EQ(s.falseFlags, 1);
    EXPECT_EQ(s.moves.got + s.calm.got, 0);
}

TEST(FamilyScorer, AFlagOnACalmReadingIsFalse) {
    const Trace trace = make(*findFamily("quiet-hour"), 3, false);
    Told told = tellAll(trace);
    told.dropouts.push_back({{toSeconds(trace.readings[500].time), toSeconds(trace.readings[500].time)}, 1, 0, 0});
    EXPECT_EQ(score(trace, told).falseFlags, 1);
}

TEST(FamilyScorer, AMovementToldThreeIntervalsLateIsMissed) {
    const Trace trace = make(*findFamily("plain"), 3, false);
    const Score right = score(trace, tellAll(trace));
    Told told = tellAll(trace);
    for (std::size_t i = 1; i < told.phases.size(); ++i)
        if (told.phases[i].kind == PhaseKind::travel) {
            const double late_s = told.phases[i].when.from_s + 3.2 * trace.meter.interval_s;
            told.phases[i - 1].when.to_s = told.phases[i].when.from_s = late_s;
            told.phases[i].when.to_s = std::max(told.phases[i].when.to_s, late_s);
        }
    EXPECT_EQ(right.moves.got, right.moves.of);
    EXPECT_LT(score(trace, told).moves.got, 0.3 * right.moves.of);
}

TEST(FamilyScorer, PhasesThatOverlapOrLeaveAHoleBreakALaw) {
    const Trace trace = make(*findFamily("plain"), 3, false);
    for (const double shift_s : {-0.1, 0.1}) {
        Told told = tellAll(trace);
        ASSERT_GT(told.phases.size(), 2U);
        told.phases[1].when.from_s += shift_s;
        EXPECT_GT(score(trace, told).lawsBroken, 0);
    }
}

TEST(FamilyScorer, MarksForgiveChanceAndNothingElse) {
    Score s;
    s.hours = 50;
    s.moves = {995, 1000};
    EXPECT_EQ(shortOf(PassMarks{}, s), "");
    s.moves = {970, 1000};
    EXPECT_NE(shortOf(PassMarks{}, s), "");
    s.moves = {1000, 1000};
    s.falseFlags = 40;
    EXPECT_NE(shortOf(PassMarks{}, s), "");
}

} // namespace
} // namespace stillwire::families
