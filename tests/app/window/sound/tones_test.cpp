// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/tones.hpp"
#include "tests/app/support/fake_session.hpp"

#include <algorithm>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

// Crossings of zero a second: twice the frequency of a sine.
double pitch_Hz(const std::vector<float>& s, std::size_t from, std::size_t to, int rate_Hz) {
    int crossings = 0;
    for (std::size_t i = from + 1; i < to; ++i) crossings += (s[i - 1] < 0) != (s[i] < 0) ? 1 : 0;
    return 0.5 * crossings * rate_Hz / static_cast<double>(to - from);
}

TEST(Tones, DownFallsAndUpRises) {
    constexpr int rate = 48000;
    const auto down = toneSamples(Tone::down, rate), up = toneSamples(Tone::up, rate);
    EXPECT_GT(pitch_Hz(down, 0, down.size() / 4, rate), 1.5 * pitch_Hz(down, down.size() / 2, down.size(), rate));
    EXPECT_LT(1.5 * pitch_Hz(up, 0, up.size() / 4, rate), pitch_Hz(up, up.size() * 3 / 4, up.size(), rate));
}

TEST(Tones, StayWithinFullScaleAndEndSilent) {
    for (const Tone tone : {Tone::down, Tone::up, Tone::tick}) {
        const auto samples = toneSamples(tone, 44100);
        ASSERT_GT(samples.size(), 1000U);
        EXPECT_LT(*std::max_element(samples.begin(), samples.end()), 1.0F);
        EXPECT_GT(*std::max_element(samples.begin(), samples.end()), 0.15F);
        EXPECT_NEAR(samples.front(), 0, 0.01);
        EXPECT_NEAR(samples.back(), 0, 0.01);
    }
}

Scene sceneOf(const std::vector<Direction>& dropouts, Time pose, bool guided) {
    auto snapshot = std::make_shared<SessionSnapshot>();
    auto findings = std::make_shared<Findings>();
    for (const Direction direction : dropouts) {
        Excursion e;
        e.kind = ExcursionKind::dropout;
        e.direction = direction;
        findings->excursions.push_back(e);
    }
    snapshot->findings = findings;
    snapshot->guided = guided;
    if (pose.count() > 0) snapshot->prompt.asked = AskedPose{.for_s = 2, .since = pose};
    return {snapshot, nullptr};
}

TEST(ToneWatch, SoundsEachDropoutOnceByItsDirection) {
    ToneWatch watch;
    EXPECT_EQ(watch.hear(sceneOf({}, Time(0), true)), std::nullopt);
    EXPECT_EQ(watch.hear(sceneOf({Direction::down}, Time(0), true)), Tone::down);
    EXPECT_EQ(watch.hear(sceneOf({Direction::down}, Time(0), true)), std::nullopt);
    EXPECT_EQ(watch.hear(sceneOf({Direction::down, Direction::up}, Time(0), true)), Tone::up);
}

TEST(ToneWatch, TicksAtEachPoseAndLetsADropoutGoFirst) {
    ToneWatch watch;
    EXPECT_EQ(watch.hear(sceneOf({}, Time(1'000'000), true)), Tone::tick);
    EXPECT_EQ(watch.hear(sceneOf({}, Time(1'000'000), true)), std::nullopt);
    EXPECT_EQ(watch.hear(sceneOf({Direction::down}, Time(3'000'000), true)), Tone::down);
    EXPECT_EQ(watch.hear(sceneOf({Direction::down}, Time(3'000'000), true)), std::nullopt);
}

TEST(ToneWatch, IsSilentInAReplay) {
    ToneWatch watch;
    EXPECT_EQ(watch.hear(sceneOf({Direction::down, Direction::down}, Time(1), false)), std::nullopt);
}

} // namespace
} // namespace stillwire
