// SPDX-License-Identifier: GPL-3.0-or-later
// What the accessibility interface is told, and when: each change once, and nothing while nothing changes.
#include "app/window/announcer.hpp"
#include "tests/app/support/moments.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Announced : public ::testing::Test {
protected:
    void SetUp() override {
        QObject::connect(&announcer, &Announcer::told, &announcer, [this](const QString& words) {
            told << words;
            EXPECT_EQ(page.accessibleName(), words); // what a reader of screens finds behind the alert
        });
    }
    QStringList after(const std::shared_ptr<SessionSnapshot>& moment) {
        told.clear();
        announcer.hear({moment, test::leverSheet()}, false);
        return told;
    }
    QStringList told;
    QWidget page;
    Announcer& announcer = *new Announcer(page);
};

TEST_F(Announced, PromptStateAndVerdictAreToldOnceEach) {
    const auto moment = test::moment(WireState::steady);
    const QStringList first = after(moment);
    EXPECT_FALSE(first.filter("Push the sensor's shaft").isEmpty()) << first.join('|').toStdString();
    EXPECT_FALSE(first.filter("So far: replace the sensor").isEmpty());
    EXPECT_TRUE(after(moment).isEmpty());
    EXPECT_EQ(after(test::moment(WireState::blind)).filter("Blind").size(), 1);
    auto next = test::moment(WireState::blind);
    next->prompt.instruction = {"Bend one section.", {}};
    EXPECT_EQ(after(next).size(), 1);
}

TEST_F(Announced, EveryDropoutIsToldThoughItsWordStands) {
    auto moment = test::wiggleMoment();
    (void)after(moment);
    auto again = test::wiggleMoment();
    auto findings = std::make_shared<Findings>(*again->findings);
    findings->excursions.push_back(findings->excursions.back());
    again->findings = findings;
    const QStringList words = after(again);
    ASSERT_EQ(words.size(), 1);
    EXPECT_TRUE(words.front().startsWith("Dropout 7")) << words.front().toStdString();
}

TEST_F(Announced, AHiddenVerdictIsNotTold) {
    announcer.hear({test::finishedMoment(), test::leverSheet()}, true);
    EXPECT_TRUE(told.filter("replace").isEmpty());
}

} // namespace
} // namespace stillwire
