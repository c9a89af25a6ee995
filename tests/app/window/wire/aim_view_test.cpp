// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/wire/aim_view.hpp"
#include "tests/app/support/fake_session.hpp"

#include <cmath>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

AimFigures figuresAt(double volts_V) {
    auto snapshot = test::adjustMoment();
    snapshot->lastVolts_V = volts_V;
    LevelsBefore before;
    before.watch(*snapshot->findings);
    return *aimFigures({snapshot, test::leverSheet()}, before);
}

TEST(Aim, SaysHowFarAndWhichWay) {
    EXPECT_EQ(aimSays(figuresAt(4.27)).toStdString(), "Down by 0.120 V");
    EXPECT_EQ(aimSays(figuresAt(4.05)).toStdString(), "Up by 0.100 V");
    EXPECT_EQ(aimSays(figuresAt(4.16)).toStdString(), "On the aim: stop, tighten");
}

// Released was 4.37 V before turning and is 4.27 V now; the other end moves half as much: 0.95 - 0.05.
TEST(Aim, PredictsTheOtherEndFromTheLevelsBeforeTurning) {
    const AimFigures figures = figuresAt(4.27);
    ASSERT_EQ(figures.others.size(), 1U);
    EXPECT_NEAR(figures.others[0].predicted_V, 0.90, 1e-9);
    EXPECT_TRUE(figures.others[0].inside());
    EXPECT_EQ(otherEndSays(figures.others[0]).toStdString(), "lifted would be 0.90 V, inside 0.60 to 1.00 V");
}

TEST(Aim, KeepsTheLevelsOfBeforeWhenATurnMadeThemVoid) {
    auto snapshot = test::adjustMoment();
    LevelsBefore before;
    before.watch(*snapshot->findings);
    auto turned = *snapshot->findings;
    turned.positions[0].visits.clear();
    turned.positions[1].visits.erase(turned.positions[1].visits.begin()); // the turned one is left
    before.watch(turned);
    EXPECT_EQ(before.of("lifted"), 0.95);
    EXPECT_EQ(before.of("deep"), 4.37);
    EXPECT_EQ(before.of("nowhere"), std::nullopt);
}

TEST(Aim, CountsThePartTurnsLeftOnceAPartTurnIsKnown) {
    EXPECT_EQ(perTurnSays(figuresAt(4.27)).toStdString(), "one part-turn moves it by -0.050 V");
    EXPECT_EQ(turnsSay(figuresAt(4.27)).toStdString(), "about 2.4 more part-turns, the way of T");
    EXPECT_EQ(turnsSay(figuresAt(4.05)).toStdString(), "about 2.0 more part-turns, the way of Shift+T");
    EXPECT_EQ(turnsSay(figuresAt(4.16)).toStdString(), "");
    AimFigures unknown = figuresAt(4.27);
    unknown.perTurn_V.reset();
    EXPECT_EQ(turnsSay(unknown).toStdString(), "");
}

TEST(Aim, IsThereOnlyWhileTurning) {
    EXPECT_FALSE(aimFigures({test::wiggleMoment(), test::leverSheet()}, {}));
    auto silent = test::adjustMoment();
    silent->lastVolts_V = std::nan("");
    EXPECT_FALSE(aimFigures({silent, test::leverSheet()}, {}));
}

} // namespace
} // namespace stillwire
