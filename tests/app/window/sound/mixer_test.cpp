// SPDX-License-Identifier: GPL-3.0-or-later
// The stream that is played, as samples: what a person would hear, without a device.
#include "app/window/sound/mixer.hpp"
#include "tests/app/support/hearing.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using test::kRate_Hz;
using test::peak;
using test::steepest;
using test::strength;

constexpr std::size_t kBlock = 480; // as a device asks: 10 ms

// `for_s` of the stream, in blocks.
std::vector<float> listen(Mixer& mixer, double for_s) {
    std::vector<float> heard;
    for (auto left = static_cast<std::size_t>(for_s * kRate_Hz); left > 0;) {
        const std::size_t now = std::min(left, kBlock);
        heard.resize(heard.size() + now);
        mixer.fill(heard.data() + heard.size() - now, now);
        left -= now;
    }
    return heard;
}

// Of a sine of this amplitude.
double slope(double amplitude, double frequency_Hz) {
    return amplitude * 2 * std::numbers::pi * frequency_Hz / kRate_Hz;
}

TEST(Mixer, IsSilentUntilItIsStruckAndAfterwards) {
    Mixer mixer(kRate_Hz);
    EXPECT_EQ(peak(listen(mixer, 0.5)), 0);
    mixer.strike(Tone::down);
    EXPECT_GT(peak(listen(mixer, 0.5)), 0.45);
    EXPECT_EQ(peak(listen(mixer, 0.5)), 0);
}

TEST(Mixer, TellsSilenceFromSound) { // whoever plays it may rest meanwhile
    Mixer mixer(kRate_Hz);
    std::vector<float> block(kBlock);
    EXPECT_FALSE(mixer.fill(block.data(), block.size()));
    mixer.strike(Tone::tick); // 30 ms
    for (int i = 0; i < 3; ++i) EXPECT_TRUE(mixer.fill(block.data(), block.size())) << i;
    EXPECT_FALSE(mixer.fill(block.data(), block.size()));
    mixer.hum(true);
    EXPECT_FALSE(mixer.hums());
    EXPECT_FALSE(mixer.fill(block.data(), block.size())); // nothing to follow yet
    mixer.follow(440);
    EXPECT_TRUE(mixer.hums());
    EXPECT_TRUE(mixer.fill(block.data(), block.size()));
    mixer.hum(false);
    EXPECT_TRUE(mixer.fill(block.data(), block.size())); // it fades
    (void)listen(mixer, 0.5);
    EXPECT_FALSE(mixer.fill(block.data(), block.size()));
}

TEST(Mixer, SoundsInTheBlockAfterTheStrike) {
    Mixer mixer(kRate_Hz);
    (void)listen(mixer, 0.1);
    mixer.strike(Tone::down);
    const auto heard = listen(mixer, 0.01);
    EXPECT_GT(peak(heard), 0.45); // within ten milliseconds
}

TEST(Mixer, DownAndUpAreUnlikeEachOther) {
    Mixer mixer(kRate_Hz);
    mixer.strike(Tone::down);
    const auto down = listen(mixer, 0.4);
    mixer.strike(Tone::up);
    const auto up = listen(mixer, 0.4);
    EXPECT_GT(strength(down, 905, 0.01, 0.08), 0.4); // then lower
    EXPECT_GT(strength(down, 405, 0.11, 0.23), 0.4);
    EXPECT_GT(strength(up, 615, 0.01, 0.05), 0.35); // then higher, twice
    EXPECT_GT(strength(up, 885, 0.07, 0.11), 0.35);
    EXPECT_GT(strength(up, 1365, 0.13, 0.21), 0.35);
    EXPECT_LT(strength(up, 405, 0, 0.22), 0.1);
}

TEST(Mixer, ATickTakesNoDropoutsPlaceAndADropoutTakesATicks) {
    Mixer mixer(kRate_Hz);
    mixer.strike(Tone::down);
    mixer.strike(Tone::tick); // before anybody listened
    auto heard = listen(mixer, 0.05);
    EXPECT_GT(strength(heard, 905, 0.01, 0.05), 0.4);
    mixer.strike(Tone::tick); // while it sounds
    heard = listen(mixer, 0.2);
    EXPECT_GT(strength(heard, 405, 0.06, 0.18), 0.4);
    (void)listen(mixer, 0.3);
    mixer.strike(Tone::tick);
    (void)listen(mixer, 0.01);
    mixer.strike(Tone::up);
    heard = listen(mixer, 0.3);
    EXPECT_GT(strength(heard, 1365, 0.13, 0.21), 0.35);
}

TEST(Mixer, FollowsTheVoltageToTheHertz) {
    Mixer mixer(kRate_Hz);
    mixer.hum(true);
    for (const double volts_V : {0.5, 0.82, 2.5, 4.1}) {
        const double frequency_Hz = humFrequency_Hz(volts_V, 5.0);
        mixer.follow(frequency_Hz);
        const auto heard = listen(mixer, 1.5);
        EXPECT_NEAR(strength(heard, frequency_Hz, 0.5, 1.5), 0.1, 0.005) << volts_V;
        EXPECT_LT(strength(heard, frequency_Hz + 5, 0.5, 1.5), 0.005) << volts_V;
    }
    mixer.hum(false);
    (void)listen(mixer, 0.5);
    EXPECT_LT(peak(listen(mixer, 0.5)), 1e-4);
}

TEST(Mixer, NeitherClipsNorClicks) {
    Mixer mixer(kRate_Hz);
    mixer.hum(true);
    double most = 0, step = 0;
    // Every tone cut off by every other, at odd times, over a tone that leaps from end to end and back.
    int turn = 0;
    for (const Tone first : {Tone::down, Tone::up, Tone::tick})
        for (const Tone second : {Tone::down, Tone::up, Tone::tick})
            for (const double after_s : {0.0071, 0.0333, 0.1009}) {
                mixer.follow(humFrequency_Hz(turn++ % 2 == 0 ? 0.1 : 4.9, 5.0));
                mixer.strike(first);
                const auto one = listen(mixer, after_s);
                mixer.strike(second);
                const auto two = listen(mixer, 0.4);
                std::vector<float> both = one;
                both.insert(both.end(), two.begin(), two.end());
                most = std::max(most, peak(both));
                step = std::max(step, steepest(both));
                mixer.follow(0);
                (void)listen(mixer, 0.3);
            }
    EXPECT_LT(most, 0.65); // a voice has the rest
    // Two tones at once for two milliseconds, and the one underneath; a cut without care would step by 0.5.
    EXPECT_LT(step, slope(0.5, 1365) + slope(0.1, 740) + 0.04);
}

TEST(Mixer, WhatWasStruckWhileNobodyPlayedIsForgotten) {
    Mixer mixer(kRate_Hz);
    mixer.strike(Tone::down);
    mixer.forget();
    EXPECT_EQ(peak(listen(mixer, 0.5)), 0);
}

} // namespace
} // namespace stillwire
