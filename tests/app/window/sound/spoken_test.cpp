// SPDX-License-Identifier: GPL-3.0-or-later
// What is said aloud, and the tone that follows the voltage. Neither needs a sound device.
#include "app/window/sound/hum.hpp"
#include "app/window/sound/sounds.hpp"
#include "app/window/sound/teller.hpp"
#include "tests/app/support/fake_session.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <QSettings>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

Scene sceneOf(std::shared_ptr<SessionSnapshot> snapshot) { return {std::move(snapshot), test::leverSheet()}; }

TEST(Teller, SaysTheCautionsOnceBeforeTheInstruction) {
    Teller teller;
    auto moment = test::wiggleMoment();
    const QString first = teller.hear(sceneOf(moment));
    EXPECT_LT(first.indexOf("starts the engine"), first.indexOf("Push the sensor's shaft"));
    EXPECT_GE(first.indexOf("starts the engine"), 0);
    EXPECT_EQ(teller.hear(sceneOf(moment)), QString());
    moment->prompt.instruction = {"Bend one section.", {}};
    EXPECT_EQ(teller.hear(sceneOf(moment)), QString("Bend one section."));
}

TEST(Teller, NamesTheNextSectionOfTheHarnessAndNotEveryPose) {
    Teller teller;
    auto moment = test::wiggleMoment();
    moment->prompt.step = Step::wiggleHarness;
    moment->prompt.pose = {"section %1, hold left", {"1"}};
    moment->prompt.asked = AskedPose{.place = PosePlace::at(Side::left, 1)};
    (void)teller.hear(sceneOf(moment));
    moment->prompt.pose = {"section %1, hold right", {"1"}};
    moment->prompt.asked->place = PosePlace::at(Side::right, 1);
    EXPECT_EQ(teller.hear(sceneOf(moment)), QString());
    moment->prompt.pose = {"section %1, hold left", {"2"}};
    moment->prompt.asked->place = PosePlace::at(Side::left, 2);
    EXPECT_EQ(teller.hear(sceneOf(moment)), QString("section 2, hold left"));
}

TEST(Teller, ReadsAQuestionWithItsAnswersAndTheirKeys) {
    Teller teller;
    auto moment = test::wiggleMoment();
    (void)teller.hear(sceneOf(moment));
    moment->prompt.question = Question::badGround;
    moment->prompt.instruction = {"Was it on its stop?", {}};
    moment->prompt.choices = {{Command::liftOnStop, {"On its stop", {}}}, {Command::liftOffStop, {"Off it", {}}}};
    EXPECT_EQ(teller.hear(sceneOf(moment)), QString("Was it on its stop? 1: On its stop. 2: Off it."));
}

TEST(Teller, SaysStopAndTheVerdictOnceEach) {
    Teller teller;
    const Scene stop = sceneOf(test::moment(WireState::overVoltage));
    EXPECT_TRUE(teller.hear(stop).startsWith("Stop: over 5.5 V"));
    EXPECT_EQ(teller.hear(stop), QString());
    const Scene over = sceneOf(test::finishedMoment());
    EXPECT_EQ(teller.hear(over), QString("The run is over. Verdict: replace the sensor."));
    EXPECT_EQ(teller.hear(over), QString());
}

TEST(Teller, IsSilentInAReplay) {
    Teller teller;
    EXPECT_EQ(teller.hear(sceneOf(test::replayMoment())), QString());
}

TEST(Hum, RisesWithTheVoltageByTwoOctavesOverTheReference) {
    // Equal temperament: an octave doubles, so the steps between equal voltages are equal ratios.
    EXPECT_NEAR(humFrequency_Hz(5, 5) / humFrequency_Hz(0, 5), 4, 1e-9);
    EXPECT_NEAR(humFrequency_Hz(2, 5) / humFrequency_Hz(1, 5), humFrequency_Hz(4, 5) / humFrequency_Hz(3, 5), 1e-9);
    EXPECT_EQ(humFrequency_Hz(std::nan(""), 5), 0);
}

TEST(Hum, SoundsAtItsPitchWithoutAClickAndFallsSilent) {
    Hum hum;
    constexpr int kRate_Hz = 48000;
    hum.aim(440);
    std::vector<float> samples(kRate_Hz);
    hum.fill(samples.data(), samples.size(), kRate_Hz);
    int risings = 0;
    float worst = 0;
    for (std::size_t i = 1; i < samples.size(); ++i) {
        risings += samples[i - 1] < 0 && samples[i] >= 0 ? 1 : 0;
        worst = std::max(worst, std::abs(samples[i] - samples[i - 1]));
    }
    EXPECT_NEAR(risings, 440, 2);
    EXPECT_LT(worst, 0.02F); // a click is a leap
    hum.aim(0);
    hum.fill(samples.data(), samples.size(), kRate_Hz);
    EXPECT_LT(std::abs(samples.back()), 1e-4F);
}

TEST(Sounds, OneKeyMutesAllAndItIsRememberedWithNoDeviceNothingFails) {
    QSettings().clear();
    Settings settings;
    Sounds sounds(settings);
    EXPECT_FALSE(sounds.muted());
    sounds.begin();
    sounds.hear(sceneOf(test::wiggleMoment()));
    // Not loaded: as on a computer without sound. Every key answers, and says so.
    EXPECT_TRUE(sounds.toggleMute().contains("no sound output"));
    EXPECT_TRUE(sounds.toggleHum().contains("no sound output"));
    EXPECT_TRUE(sounds.toggleVoice().contains("no sound output"));
    sounds.end();
    settings.setMuted(true);
    Settings next;
    EXPECT_TRUE(Sounds(next).muted());
}

} // namespace
} // namespace stillwire
