// SPDX-License-Identifier: GPL-3.0-or-later
// A second meter on the reference. That a divider's output goes where its supply goes is Ohm's law; the tolerances
// are our own rule.
#include "core/analyse/reference_watch.hpp"
#include "tests/support/trace_maker.hpp"

#include <algorithm>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

ReferenceWatch watchOf(const std::vector<double>& volts_V) {
    ReferenceWatch watch({"", 0.33, 0.1, {MeterRange{}}, ""}, 5.0);
    for (std::size_t i = 0; i < volts_V.size(); ++i)
        watch.push({.time = fromSeconds(0.33 * static_cast<double>(i)), .volts_V = volts_V[i], .flags = Flag::ref});
    return watch;
}

std::vector<double> steady(std::size_t count) {
    std::vector<double> out;
    for (std::size_t i = 0; i < count; ++i) out.push_back(4.98 + 0.001 * static_cast<double>(i % 2));
    return out;
}

Excursion referenceDip(double from_s, double to_s, double extreme_V, int readings) {
    Excursion e;
    e.from = fromSeconds(from_s);
    e.to = fromSeconds(to_s);
    e.held_V = 5.0;
    e.extreme_V = extreme_V;
    e.readings = readings;
    return e;
}

constexpr Time kSlack = std::chrono::milliseconds(430);

} // namespace

TEST(ReferenceWatch, AQuietReferenceHasNotMoved) { EXPECT_TRUE(watchOf(steady(500)).movements().empty()); }

TEST(ReferenceWatch, ASagHasItsTimesAndItsDepth) {
    auto volts = steady(60);
    volts[40] = 4.4;
    volts[41] = 3.9;
    volts[42] = 4.5;
    const auto moves = watchOf(volts).movements();
    ASSERT_EQ(moves.size(), 1U);
    EXPECT_EQ(moves[0].from, fromSeconds(0.33 * 40));
    EXPECT_EQ(moves[0].to, fromSeconds(0.33 * 42));
    EXPECT_EQ(moves[0].readings, 3);
    EXPECT_NEAR(moves[0].held_V, 4.98, 0.0011);
    EXPECT_NEAR(moves[0].extreme_V, 3.9, 1e-9);
    EXPECT_EQ(moves[0].direction, Direction::down);
    EXPECT_FALSE(moves[0].open);
}

TEST(ReferenceWatch, ASagThatStaysBecomesTheLevel) {
    auto volts = steady(40);
    volts.resize(140, 4.5);
    const auto moves = watchOf(volts).movements();
    ASSERT_EQ(moves.size(), 1U);
    EXPECT_NEAR(moves[0].extreme_V, 4.5, 1e-9);
    volts[120] = 4.98; // and from there a return is a movement up
    const auto again = watchOf(volts).movements();
    ASSERT_EQ(again.size(), 2U);
    EXPECT_EQ(again[1].direction, Direction::up);
}

TEST(ReferenceWatch, APauseForgetsTheLevel) {
    ReferenceWatch watch = watchOf(steady(40));
    watch.pause();
    EXPECT_FALSE(watch.freshAt(fromSeconds(14)));
    watch.push({.time = fromSeconds(14), .volts_V = 0.0, .flags = Flag::ref}); // key off
    EXPECT_TRUE(watch.movements().empty());
    EXPECT_TRUE(watch.freshAt(fromSeconds(14.9)));
    EXPECT_FALSE(watch.freshAt(fromSeconds(15.1))); // 2.5 intervals are 0.825 s; a second at least
}

// Well seen, the shares must agree: 40 % and 40 %, not 40 % and 10 %.
TEST(ReferenceWatch, TheSignalWentAlongIfItsShareIsTheSame) {
    const std::vector<Excursion> sag = {referenceDip(10, 12, 3.0, 6)};
    EXPECT_TRUE(wentWithReference({fromSeconds(10.1), fromSeconds(12), 0.82, 0.492, 6}, sag, kSlack));
    EXPECT_TRUE(wentWithReference({fromSeconds(10.1), fromSeconds(12), 4.10, 2.5, 6}, sag, kSlack));
    EXPECT_FALSE(wentWithReference({fromSeconds(10.1), fromSeconds(12), 4.10, 3.7, 6}, sag, kSlack)); // far less
    EXPECT_FALSE(wentWithReference({fromSeconds(10.1), fromSeconds(12), 4.10, 0.2, 6}, sag, kSlack)); // far more
    EXPECT_FALSE(wentWithReference({fromSeconds(10.1), fromSeconds(12), 3.0, 4.2, 6}, sag, kSlack));  // other way
}

// A short one is averaged by two meters at two moments.
TEST(ReferenceWatch, AShortOneMayDifferByAFactorOfThree) {
    const std::vector<Excursion> sag = {referenceDip(10, 10, 4.0, 1)}; // 20 %
    EXPECT_TRUE(wentWithReference({fromSeconds(10.2), fromSeconds(10.2), 1.0, 0.6, 1}, sag, kSlack));
    EXPECT_FALSE(wentWithReference({fromSeconds(10.2), fromSeconds(10.2), 1.0, 0.3, 1}, sag, kSlack));
    EXPECT_FALSE(wentWithReference({fromSeconds(11), fromSeconds(11), 1.0, 0.8, 1}, sag, kSlack)); // another moment
}

namespace {

// A guided run of two meters: `sags` sags of the reference in the shaft wiggle, each `share` deep, that the signal
// follows or not. Times of the second meter's readings lie between those of the first.
std::vector<std::variant<Reading, Mark>> twoMeters(bool signalFollows, bool referenceSags, double share = 0.4) {
    TraceMaker trace(MakerMeter{}, 5);
    trace.set(4.4);
    trace.guidedStart(5.0, 0.0);
    const double from_s = trace.now_s();
    trace.wiggle("wiggle-shaft", "", 32, signalFollows ? 8 : 0, -4.4 * share, 1.2);
    trace.wiggle("wiggle-harness", "section-1/", 32);
    trace.guidedEnds(0.9);
    std::vector<TrueDropout> dips = trace.dropouts();
    if (!signalFollows)
        for (int i = 1; i <= 4; ++i) dips.push_back({from_s + 10.0 * i, from_s + 10.0 * i + 1.2, 0, 0});
    Dice dice(9);
    std::vector<Reading> second;
    for (double t = 0.11; t < trace.now_s(); t += 0.33) {
        const bool sagging = referenceSags && std::any_of(dips.begin(), dips.end(), [t](const TrueDropout& d) {
                                 return t - 0.1 >= d.from_s && t <= d.to_s;
                             });
        const double volts_V = std::round(1000 * (5.0 * (sagging ? 1 - share : 1) + 0.0005 * dice.normal())) / 1000;
        second.push_back({.time = fromSeconds(t), .volts_V = volts_V, .flags = Flag::ref});
    }
    std::vector<std::variant<Reading, Mark>> out;
    const auto timeOf = [](const std::variant<Reading, Mark>& row) {
        return std::visit([](const auto& r) { return r.time; }, row);
    };
    std::size_t next = 0;
    for (const auto& row : trace.rows()) {
        while (next < second.size() && second[next].time < timeOf(row)) out.emplace_back(second[next++]);
        out.push_back(row);
    }
    return out;
}

Findings examineBoth(const std::vector<std::variant<Reading, Mark>>& rows) {
    return examine(rows, fallingSheet(), TraceMaker(MakerMeter{}).traits());
}

} // namespace

TEST(SecondMeter, ADropoutTheReferenceMadeIsTheSupplys) {
    const Findings f = examineBoth(twoMeters(true, true));
    ASSERT_EQ(f.excursions.size(), 4U);
    for (const Excursion& e : f.excursions) EXPECT_TRUE(e.withReference);
    EXPECT_EQ(f.referenceMoves.size(), 4U);
    EXPECT_EQ(f.verdict.decision, Decision::checkSupply);
    EXPECT_NE(f.verdict.reasons.front().says.english().find("in the same proportion, 4 times"), std::string::npos)
        << f.verdict.reasons.front().says.english();
    EXPECT_EQ(f.wiggle.dropouts, 0);
}

TEST(SecondMeter, ADropoutUnderASteadyReferenceIsTheSensors) {
    const Findings f = examineBoth(twoMeters(true, false));
    ASSERT_EQ(f.excursions.size(), 4U);
    for (const Excursion& e : f.excursions) EXPECT_FALSE(e.withReference);
    EXPECT_EQ(f.verdict.decision, Decision::replace);
}

TEST(SecondMeter, ASagThatTheSignalMissedIsToldToo) {
    const Findings f = examineBoth(twoMeters(false, true));
    EXPECT_TRUE(f.excursions.empty());
    EXPECT_EQ(f.verdict.decision, Decision::checkSupply);
    EXPECT_NE(f.verdict.reasons.front().says.english().find(
                  "The reference went from 5.00 V to 3.00 V or further, 4 times."),
              std::string::npos)
        << f.verdict.reasons.front().says.english();
}

TEST(SecondMeter, AGoodSensorIsKeptAndItsGainErrorIsNoLongerCommon) {
    const auto rows = twoMeters(false, false);
    const Findings f = examineBoth(rows);
    EXPECT_EQ(f.verdict.decision, Decision::keep) << f.verdict.reasons.front().says.english();
    ASSERT_TRUE(f.ratio);
    EXPECT_NEAR(f.ratio->reference_V, 5.0, 0.003);
    ASSERT_TRUE(f.ratio->level_V);
    EXPECT_NEAR(*f.ratio->level_V, 4.4, 0.005);
}

// level = (raw - G)·nominal/(R - G): the live ratio holds while both wires sag to 60 %.
TEST(SecondMeter, TheRatioHoldsWhileBothWiresSag) {
    std::vector<std::variant<Reading, Mark>> rows;
    for (int i = 0; i < 60; ++i) {
        const double factor = i < 40 ? 1.0 : 0.6;
        rows.emplace_back(Reading{.time = fromSeconds(0.33 * i), .volts_V = 5.0 * factor, .flags = Flag::ref});
        rows.emplace_back(Reading{.time = fromSeconds(0.33 * i + 0.1), .volts_V = 4.4 * factor, .flags = {}});
    }
    const Findings f = examine(rows, fallingSheet(), TraceMaker(MakerMeter{}).traits(), BlackLead::sensorGround);
    ASSERT_TRUE(f.ratio);
    EXPECT_NEAR(f.ratio->reference_V, 3.0, 1e-9);
    EXPECT_NEAR(*f.ratio->level_V, 4.4, 1e-9);
}

TEST(SecondMeter, WhatIsNoVoltsMakesItBlindAndIsNoSag) {
    for (const auto& [flag, cause] :
         {std::pair{Flag::hold, BlindCause::hold}, std::pair{Flag::overload, BlindCause::overload},
          std::pair{Flag::unit, BlindCause::unit}}) {
        std::vector<std::variant<Reading, Mark>> rows = twoMeters(true, false);
        Time from{0}, to{0};
        int left = 12;
        for (auto& row : rows) {
            Reading* reading = std::get_if<Reading>(&row);
            if (reading == nullptr || !reading->flags.has(Flag::ref) || reading->time < fromSeconds(100)) continue;
            if (left == 12) from = reading->time;
            if (left == 0) to = reading->time;
            if (left-- <= 0) continue;
            reading->volts_V = 2.5; // a number that is none
            reading->flags |= flag;
        }
        const Findings f = examineBoth(rows);
        ASSERT_EQ(f.referenceBlind.size(), 1U);
        EXPECT_EQ(f.referenceBlind[0].cause, cause);
        EXPECT_LT(f.referenceBlind[0].from, from); // from the last reading that was one
        EXPECT_GE(f.referenceBlind[0].from, from - fromSeconds(0.34));
        EXPECT_EQ(f.referenceBlind[0].to, to);
        EXPECT_TRUE(f.referenceMoves.empty());
        EXPECT_TRUE(f.blind.empty());
        EXPECT_EQ(f.verdict.decision, Decision::replace); // as with a steady reference
        ASSERT_TRUE(f.reference);
        EXPECT_GT(f.reference->lowest_V, 4.9);
    }
}

TEST(SecondMeter, OneThatFallsSilentIsBlindAndNoGapOfTheSignal) {
    std::vector<std::variant<Reading, Mark>> rows = twoMeters(true, false);
    rows.erase(std::remove_if(rows.begin(), rows.end(),
                              [](const std::variant<Reading, Mark>& row) {
                                  const Reading* reading = std::get_if<Reading>(&row);
                                  return reading != nullptr && reading->flags.has(Flag::ref) &&
                                         reading->time > fromSeconds(100);
                              }),
               rows.end());
    const Findings f = examineBoth(rows);
    ASSERT_EQ(f.referenceBlind.size(), 1U);
    EXPECT_EQ(f.referenceBlind[0].cause, BlindCause::gap);
    EXPECT_TRUE(f.blind.empty());
    EXPECT_FALSE(f.ratio);
}

} // namespace stillwire::test
