// SPDX-License-Identifier: GPL-3.0-or-later
// Said plainly: what Space cannot do, a step that nothing was read in, a wire that is not there yet, keys where they
// work, every finding, and the advice as the largest thing of the final page.
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/hand/path_view.hpp"
#include "app/window/key_hints.hpp"
#include "app/window/keys_page.hpp"
#include "app/window/look/key_button.hpp"
#include "app/window/look/rows_list.hpp"
#include "app/window/verdict/verdict_details.hpp"
#include "app/window/wire/band.hpp"
#include "app/window/wire/trace_painter.hpp"
#include "app/window/words.hpp"
#include "tests/app/support/fake_session.hpp"

#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QRegularExpression>
#include <QSettings>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Plain : public ::testing::Test {
protected:
    void SetUp() override {
        QSettings().clear();
        window.resize(1366, 768);
        window.show();
        QTest::qWait(20);
    }
    test::FakeSession* show(std::shared_ptr<SessionSnapshot> snapshot) {
        test::FakeSession* session = test::attachTo(window, std::move(snapshot));
        QTest::qWait(20);
        return session;
    }
    QString words() {
        QString all;
        for (const QLabel* label : window.bench().findChildren<QLabel*>())
            if (label->isVisible()) all += label->text() + QLatin1Char('\n');
        return all;
    }
    BenchWindow window{std::make_unique<test::FakeDoors>()};
};

TEST_F(Plain, SpaceSaysWhatIsStillWantedAndHowToLeaveItOut) {
    test::FakeSession* session = show(test::wiggleMoment());
    QTest::keyClick(&window, Qt::Key_Space);
    EXPECT_EQ(session->commands, std::vector<Command>{Command::next});
    EXPECT_TRUE(words().contains("9 more poses. S skips the step.")) << words().toStdString();
    auto done = test::wiggleMoment();
    done->prompt.wanted = {};
    show(done);
    QTest::keyClick(&window, Qt::Key_Space);
    EXPECT_FALSE(words().contains("skips the step"));
}

TEST_F(Plain, AStepThatNothingWasReadInHasNoTick) {
    auto moment = test::hookUpMoment();
    moment->path = {{Step::hookUp, StepOutcome::done}, {Step::reference, StepOutcome::current}};
    moment->marks = {{fromSeconds(0), "step:hook-up"}, {fromSeconds(5), "step:reference"}};
    show(moment);
    const auto described = [&] { return window.bench().findChild<PathView*>()->accessibleDescription(); };
    EXPECT_TRUE(described().contains("hook-up without a reading")) << described().toStdString();
    auto read = test::wiggleMoment(); // readings from the start
    read->path = moment->path;
    read->marks = moment->marks;
    show(read);
    EXPECT_TRUE(described().contains("hook-up done")) << described().toStdString();
}

TEST_F(Plain, BeforeALeadIsOnNothingIsSteady) {
    auto moment = test::moment(WireState::steady);
    EXPECT_EQ(stateWord(*moment).word, "Steady");
    moment->prompt.step = Step::hookUp;
    EXPECT_EQ(stateWord(*moment).word, "Waiting");
    moment->prompt.step = Step::ground;
    moment->prompt.movingLead = true;
    EXPECT_EQ(stateWord(*moment).word, "Waiting");
    moment->findings = [&] {
        auto findings = std::make_shared<Findings>(*moment->findings);
        findings->state = WireState::overVoltage;
        return findings;
    }();
    EXPECT_EQ(stateWord(*moment).state, WireState::overVoltage); // a stop is never held back
}

TEST_F(Plain, TheRibbonBeginsWhereTheLeadIsOnAWire) {
    const std::vector<Mark> marks{{fromSeconds(0), "step:hook-up"}, {fromSeconds(12), "step:reference"}};
    EXPECT_EQ(onAWireFrom(marks, fromSeconds(40)), fromSeconds(12));
    EXPECT_EQ(onAWireFrom({marks.front()}, fromSeconds(40)), fromSeconds(40));
    EXPECT_EQ(onAWireFrom({}, fromSeconds(40)), Time{0}); // nobody led
}

TEST_F(Plain, EveryFindingCanBeSeen) {
    auto moment = test::replayMoment();
    auto findings = std::make_shared<Findings>(*moment->findings);
    findings->coldWarm = ColdWarm{};
    findings->coldWarm->coldDropouts = 7;
    findings->coldWarm->coldPoses = 23;
    moment->findings = findings;
    show(moment);
    QListView* list = nullptr;
    for (QListView* view : window.bench().findChildren<QListView*>())
        if (view->accessibleName() == "Every finding") list = view;
    ASSERT_NE(list, nullptr);
    EXPECT_FALSE(list->isVisible());
    QPushButton* more = nullptr;
    for (QPushButton* button : window.bench().findChildren<QPushButton*>())
        if (button->isVisible() && button->accessibleName().endsWith("more")) more = button;
    ASSERT_NE(more, nullptr) << "no way to the findings that have no card";
    more->click();
    ASSERT_TRUE(list->isVisible());
    bool cold = false;
    for (int row = 0; row < list->model()->rowCount(); ++row)
        cold = cold || list->model()->index(row, 0).data().toString().startsWith("Cold and warm");
    EXPECT_TRUE(cold);
    QTest::keyClick(&window, Qt::Key_E);
    EXPECT_FALSE(list->isVisible());
}

TEST_F(Plain, TheAdviceIsTheLargestOfWhatStandsBehindTheVerdict) {
    show(test::finishedMoment());
    const auto* details = window.bench().findChild<VerdictDetails*>();
    const QString html = details->findChild<QLabel*>()->text();
    std::vector<int> sizes;
    for (auto found = QRegularExpression("font-size:(\\d+)px").globalMatch(html); found.hasNext();)
        sizes.push_back(found.next().captured(1).toInt());
    ASSERT_GE(sizes.size(), 2U);
    EXPECT_EQ(sizes.front(), *std::max_element(sizes.begin(), sizes.end())); // what to do next stands first
    EXPECT_GT(sizes.front(), sizes.back());
    EXPECT_GE(sizes.back(), window.look().font(TextSize::text).pixelSize());
}

TEST_F(Plain, TheListsOfTheFinalPageLeaveNoHoles) {
    for (const QSize size : {QSize(1366, 768), QSize(1280, 800), QSize(1920, 1080)}) {
        window.resize(size);
        show(test::replayMoment());
        for (const WholeRows* list : window.bench().findChildren<WholeRows*>()) {
            if (!list->isVisible() || list->accessibleName() == "Every finding") continue;
            const int row = list->sizeHintForRow(0);
            EXPECT_LT(list->height() - list->viewport()->height(), row / 2) << list->accessibleName().toStdString();
            EXPECT_LT(list->viewport()->height() % row, row / 4) << list->accessibleName().toStdString();
        }
    }
}

TEST_F(Plain, KeysStandBackWhereTheyDoNotWorkAndTheMouseIsThereToo) {
    const auto words = [&](bool enabled) {
        QString all;
        for (const QLabel* label : window.findChild<KeysPage*>()->findChildren<QLabel*>())
            if (label->isEnabled() == enabled) all += label->text() + QLatin1Char('\n');
        return all;
    };
    window.press(KeyAction::keys);
    EXPECT_TRUE(words(false).contains("skip the step"));
    EXPECT_TRUE(words(true).contains("open a capture"));
    window.press(KeyAction::keys);
    show(test::wiggleMoment());
    window.press(KeyAction::keys);
    EXPECT_TRUE(words(true).contains("skip the step"));
    EXPECT_TRUE(words(true).contains("the trace along its time")); // by dragging
    EXPECT_TRUE(words(false).isEmpty());
}

TEST_F(Plain, HintsLookLikeButtonsAndAreHitWithAGlove) {
    show(test::wiggleMoment());
    int seen = 0;
    for (const KeyHints* hints : window.bench().findChildren<KeyHints*>()) {
        if (!hints->isVisible()) continue;
        for (const KeyButton* button : hints->findChildren<KeyButton*>()) {
            EXPECT_FALSE(button->isFlat()) << button->text().toStdString();
            EXPECT_GE(button->height(), 36) << button->text().toStdString(); // 8 mm on 14 inches at 1366
            ++seen;
        }
    }
    EXPECT_GE(seen, 6);
}

TEST(VoltLabels, HaveRoomForTheirSign) {
    Look look;
    const double widest = QFontMetricsF(look.font(TextSize::small)).horizontalAdvance(QStringLiteral("-0.05"));
    EXPECT_GE(TracePainter::labelWidth(look) - look.px(10), widest);
}

} // namespace
} // namespace stillwire
