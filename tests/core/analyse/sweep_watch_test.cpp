// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/sweep_watch.hpp"
#include "tests/support/trace_maker.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

constexpr double kInterval_s = 0.33;
constexpr double kThreshold_V = 0.1; // a hand turns the shaft

// A falling pedal swept from 4.5 to 0.9 V and back in a minute each way, by a hand that is not quite even.
double swept_V(int reading) {
    const double t_s = reading * kInterval_s;
    const double phase = std::fmod(t_s, 120) / 60;
    return 4.5 - 3.6 * (phase < 1 ? phase : 2 - phase) + 0.01 * std::sin(0.9 * t_s);
}

std::vector<Excursion> sweep(const std::function<double(int)>& shown_V, std::uint64_t seed = 1, bool asked = true) {
    SweepWatch watch(0.001, {4.2, 4.8});
    Dice dice(seed);
    std::vector<Excursion> all;
    for (int i = 0; i < 360; ++i) {
        const double volts_V = std::round((shown_V(i) + 0.001 * dice.normal()) * 1000) / 1000;
        watch.push(fromSeconds(i * kInterval_s), volts_V, kThreshold_V, asked);
        all.insert(all.end(), watch.dropouts().begin(), watch.dropouts().end());
    }
    return all;
}

TEST(SweepWatch, SaysNothingOfASmoothSweep) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) EXPECT_TRUE(sweep(swept_V, seed).empty());
}

TEST(SweepWatch, FindsDropoutsOfEveryLengthOnceAndTheRightWay) {
    for (int length = 1; length <= 40; ++length)
        for (int begin = 20; begin < 150; begin += 13) {
            const auto found = sweep([&](int i) { return i >= begin && i < begin + length ? 0.01 : swept_V(i); });
            ASSERT_EQ(found.size(), 1U) << length << " readings from " << begin;
            EXPECT_EQ(found[0].direction, Direction::down);
            EXPECT_NEAR(toSeconds(found[0].from), begin * kInterval_s, 1.01 * kInterval_s);
            EXPECT_NEAR(toSeconds(found[0].to), (begin + length - 1) * kInterval_s, 1.01 * kInterval_s);
            EXPECT_NEAR(found[0].held_V, swept_V(begin), 0.1);
            EXPECT_NEAR(found[0].extreme_V, 0.01, 0.01);
        }
}

// The readings in which it leaps show something between.
TEST(SweepWatch, FindsLongDropoutsWithSlantedSides) {
    for (int length = 6; length <= 30; length += 3) {
        const auto found = sweep([&](int i) {
            if (i < 60 || i >= 60 + length) return swept_V(i);
            return i == 60 || i == 59 + length ? 0.4 * swept_V(i) : 0.01;
        });
        ASSERT_EQ(found.size(), 1U) << length;
        EXPECT_EQ(found[0].direction, Direction::down);
        EXPECT_NEAR(found[0].extreme_V, 0.01, 0.01);
    }
}

// Along with the sweep, so that two readings on it might pass for the hand; and no deeper than a hand could just not
// go.
TEST(SweepWatch, FindsShallowOnesThatGoOnWithTheSweep) {
    for (const bool asked : {true, false})
        for (const double depth_V : {-0.32, 0.32})
            for (int length = 1; length <= 6; ++length)
                for (int begin = 20; begin < 150; begin += 13) {
                    const auto shown = [&](int i) {
                        return swept_V(i) + (i >= begin && i < begin + length ? depth_V : 0);
                    };
                    const auto found = sweep(shown, 1, asked);
                    ASSERT_EQ(found.size(), 1U) << length << " readings from " << begin << " by " << depth_V;
                    EXPECT_EQ(found[0].direction, depth_V < 0 ? Direction::down : Direction::up);
                }
}

TEST(SweepWatch, AHandThatChangesItsPaceIsNoDropout) {
    for (int seed = 1; seed <= 20; ++seed)
        EXPECT_TRUE(sweep([](int i) { return 4.5 - 0.012 * std::min(i, 40) - 0.07 * std::clamp(i - 40, 0, 45); },
                          static_cast<std::uint64_t>(seed), false)
                        .empty());
}

// A lost contact that happens to show what the shaft shows at rest goes on along with the sweep.
TEST(SweepWatch, FindsDropoutsInTheWindowOfTheRest) {
    for (int length = 3; length <= 9; ++length) {
        const auto found = sweep([&](int i) { return i >= 130 && i < 130 + length ? swept_V(i) + 2.2 : swept_V(i); });
        ASSERT_EQ(found.size(), 1U) << length;
        EXPECT_EQ(found[0].direction, Direction::up);
    }
}

// The pedal falls as it is pressed: beyond the rest lies what no hand can show.
TEST(SweepWatch, ADropoutBeyondTheRestDuringWhichTheSweepBeginsIsTold) {
    for (int length = 2; length <= 6; ++length) {
        const auto shown_V = [&](int i) {
            if (i < 40) return 4.5;
            if (i < 40 + length) return 4.95;
            return 4.5 - 0.08 * (i - 40);
        };
        const auto found = sweep([&](int i) { return i < 80 ? shown_V(i) : shown_V(79); });
        ASSERT_EQ(found.size(), 1U) << length;
        EXPECT_EQ(found[0].direction, Direction::up);
        EXPECT_NEAR(found[0].held_V, 4.5, 0.05);
    }
}

TEST(SweepWatch, AHandThatLetsGoAndComesBackIsNoDropout) {
    EXPECT_TRUE(sweep([](int i) { return i >= 60 && i < 75 ? 4.5 : swept_V(i); }).empty());
}

TEST(SweepWatch, AHandThatJerksOnAndSweepsBackIsNoDropout) {
    const auto jerked_V = [](int i) {
        return i < 60 ? 4.5 - 0.01 * i : (i < 90 ? 3.5 - 0.06 * (i - 60) : 1.7 + 0.06 * (i - 90));
    };
    EXPECT_TRUE(sweep([&](int i) { return i < 130 ? jerked_V(i) : jerked_V(129); }).empty());
}

TEST(SweepWatch, AHandThatJerksOnIsNoDropout) {
    EXPECT_TRUE(sweep([](int i) { return i < 60 ? swept_V(i) : swept_V(i + 40); }).empty());
}

} // namespace
} // namespace stillwire::test
