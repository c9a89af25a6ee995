// SPDX-License-Identifier: GPL-3.0-or-later
// The window as a person has it: nothing cut off, everything named and reached by Tab, driven by keys.
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/start/start_page.hpp"
#include "app/window/wire/readout_view.hpp"
#include "app/window/wire/trace_view.hpp"
#include "tests/app/support/fake_session.hpp"

#include <set>

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QSettings>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

using test::FakeDoors;
using test::FakeSession;

class WindowTest : public ::testing::Test {
protected:
    void SetUp() override {
        QSettings().clear();
        auto made = std::make_unique<FakeDoors>();
        doors = made.get();
        window = std::make_unique<BenchWindow>(std::move(made));
        window->show();
        QTest::qWait(10);
    }

    FakeSession* showMoment(std::shared_ptr<SessionSnapshot> snapshot) {
        auto session = std::make_unique<FakeSession>(std::move(snapshot));
        FakeSession* raw = session.get();
        Opened opened;
        opened.session = std::move(session);
        opened.sheet = test::leverSheet();
        opened.name = "Depth lever";
        const bool guided = raw->snapshot()->guided;
        window->attach(std::move(opened), guided);
        settle();
        return raw;
    }

    void settle() {
        QTest::qWait(20);
        window->grab();
    }

    FakeDoors* doors = nullptr;
    std::unique_ptr<BenchWindow> window;
};

TEST_F(WindowTest, DigitsFillASixthOfTheHeight) {
    for (const QSize size : {QSize(1280, 800), QSize(1920, 1080)}) {
        window->resize(size);
        showMoment(test::wiggleMoment());
        const ReadoutView& readout = window->bench().readout();
        const QFontMetricsF metrics(window->look().digits(readout.digitHeight()));
        EXPECT_GE(metrics.tightBoundingRect("1").height(), window->height() / 6.0 - 0.5);
        EXPECT_LE(readout.digitHeight(), readout.height());
    }
}

TEST_F(WindowTest, EveryInteractiveWidgetIsNamedAndReachedByTab) {
    auto check = [&](const char* page) {
        std::set<QWidget*> wanted;
        for (QWidget* widget : window->findChildren<QWidget*>()) {
            const bool interactive = qobject_cast<QAbstractButton*>(widget) || qobject_cast<QComboBox*>(widget) ||
                                     qobject_cast<QListView*>(widget) || qobject_cast<TraceView*>(widget);
            if (!interactive || !widget->isVisible() || !widget->isEnabled()) continue;
            if (qobject_cast<QComboBox*>(widget->parentWidget())) continue;
            EXPECT_FALSE(widget->accessibleName().isEmpty()) << page << ": " << widget->metaObject()->className();
            wanted.insert(widget);
        }
        EXPECT_FALSE(wanted.empty());
        std::set<QWidget*> reached;
        for (int i = 0; i < 60; ++i) {
            QTest::keyClick(QApplication::focusWidget() ? QApplication::focusWidget() : window.get(), Qt::Key_Tab);
            if (QApplication::focusWidget()) reached.insert(QApplication::focusWidget());
        }
        for (QWidget* widget : wanted)
            EXPECT_TRUE(reached.count(widget)) << page << ": " << widget->accessibleName().toStdString();
    };
    QApplication::setActiveWindow(window.get());
    check("start");
    showMoment(test::wiggleMoment());
    check("bench");
    auto full = test::adjustMoment();
    full->recorderSays = "The disk is full: make room or save elsewhere.";
    showMoment(full);
    check("adjust, disk full");
    showMoment(test::replayMoment());
    check("replay");
    window->press(KeyAction::keys);
    check("keys");
}

TEST_F(WindowTest, SpaceGoesOnWhereverTheKeyboardIs) {
    QApplication::setActiveWindow(window.get());
    FakeSession* session = showMoment(test::wiggleMoment());
    QTest::keyClick(window.get(), Qt::Key_Space);
    for (QPushButton* button : window->findChildren<QPushButton*>()) {
        if (!button->isVisible()) continue;
        button->setFocus();
        session->commands.clear();
        QTest::keyClick(button, Qt::Key_Space);
        EXPECT_EQ(session->commands, std::vector<Command>{Command::next}) << button->text().toStdString();
    }
    session->commands.clear();
    QTest::keyClick(window.get(), Qt::Key_Backspace);
    QTest::keyClick(window.get(), Qt::Key_S);
    EXPECT_EQ(session->commands, (std::vector<Command>{Command::back, Command::skip}));
}

TEST_F(WindowTest, NumberKeysGiveTheAnswersThatAreOffered) {
    auto snapshot = test::wiggleMoment();
    snapshot->prompt.question = Question::badGround;
    snapshot->prompt.instruction = {"Was it on its stop?", {}};
    snapshot->prompt.choices = {{Command::liftOnStop, {"It was on its stop", {}}},
                                {Command::liftOffStop, {"It was off its stop", {}}}};
    FakeSession* session = showMoment(snapshot);
    QTest::keyClick(window.get(), Qt::Key_2);
    QTest::keyClick(window.get(), Qt::Key_3); // not offered
    EXPECT_EQ(session->commands, std::vector<Command>{Command::liftOffStop});
}

TEST_F(WindowTest, AnErrorStandsInPlaceWithItsMend) {
    window->open(window->start().captureWay("/tmp/broken.csv"));
    EXPECT_EQ(window->page(), &window->start());
    bool said = false;
    for (QLabel* label : window->start().findChildren<QLabel*>())
        said = said || (label->isVisible() && label->text().contains("remove the row or split the file there"));
    EXPECT_TRUE(said);
    for (const QWidget* top : QApplication::topLevelWidgets())
        EXPECT_TRUE(top == window.get() || !top->isVisible()); // no box
}

TEST_F(WindowTest, SaysAndOffersTheMendWhenTheDiskIsFull) {
    auto snapshot = test::wiggleMoment();
    auto offer = [&]() -> QPushButton* {
        for (QPushButton* button : window->bench().findChildren<QPushButton*>())
            if (button->isVisible() && button->accessibleName() == "Save the capture elsewhere") return button;
        return nullptr;
    };
    showMoment(snapshot);
    EXPECT_EQ(offer(), nullptr);
    snapshot->recorderSays = "The disk is full: make room or save elsewhere.";
    showMoment(snapshot);
    EXPECT_NE(offer(), nullptr);
}

TEST_F(WindowTest, TurnsAreMarkedByKeyAndByButton) {
    FakeSession* session = showMoment(test::adjustMoment());
    QTest::keyClick(window.get(), Qt::Key_T);
    QTest::keyClick(window.get(), Qt::Key_T, Qt::ShiftModifier);
    int pressed = 0;
    for (QPushButton* button : window->bench().findChildren<QPushButton*>()) {
        if (!button->isVisible() || !button->accessibleName().contains("part-turn made")) continue;
        button->click();
        ++pressed;
    }
    EXPECT_EQ(pressed, 1);
    EXPECT_EQ(session->commands, (std::vector<Command>{Command::turnIn, Command::turnOut, Command::turnIn}));
}

TEST_F(WindowTest, ARunThatIsOverShowsWhatStandsBehindTheVerdict) {
    showMoment(test::finishedMoment());
    QString all;
    for (QLabel* label : window->bench().findChildren<QLabel*>())
        if (label->isVisible()) all += label->text();
    EXPECT_TRUE(all.contains("Hold the connector still")) << all.toStdString();
    QString head; // the decision and its first reason stand large on the right, and not again on the left
    for (const QWidget* widget : window->bench().findChildren<QWidget*>())
        if (widget->isVisible() && widget->accessibleName() == "Verdict") head += widget->accessibleDescription();
    EXPECT_TRUE(head.contains("6 of 20 poses")) << head.toStdString();
    EXPECT_FALSE(all.contains("6 of 20 poses")) << all.toStdString();
    EXPECT_TRUE(all.contains("a-run.csv")) << all.toStdString();
}

TEST_F(WindowTest, ThemeAndGeometryAreRemembered) {
    window->press(KeyAction::night);
    window->resize(1400, 900);
    window->close();
    BenchWindow next(std::make_unique<FakeDoors>());
    next.restoreHabits();
    EXPECT_TRUE(next.look().night());
    EXPECT_EQ(next.size(), QSize(1400, 900));
}

TEST_F(WindowTest, WhatWasHiddenWhileTheThemeChangedHasItsColours) {
    window->press(KeyAction::night);
    showMoment(test::finishedMoment());
    window->press(KeyAction::keys);
    for (QLabel* label : window->findChildren<QLabel*>()) {
        if (!label->isVisible() || label->text().isEmpty()) continue;
        EXPECT_GT(label->palette().color(QPalette::WindowText).lightness(), 127) << label->text().toStdString();
    }
    window->press(KeyAction::keys);
    for (QLabel* label : window->bench().findChildren<QLabel*>()) {
        if (!label->isVisible() || label->text().isEmpty()) continue;
        EXPECT_GT(label->palette().color(QPalette::WindowText).lightness(), 127) << label->text().toStdString();
    }
}

TEST_F(WindowTest, NothingMovesWhenTheNumberChangesItsWidth) {
    auto inkBox = [&](double volts_V) {
        auto snapshot = test::moment(WireState::steady);
        snapshot->now += fromSeconds(10);
        snapshot->lastVolts_V = volts_V;
        showMoment(snapshot);
        return window->bench().readout().grab().toImage();
    };
    // The unit and the word stand where they stood, whatever the digits.
    const QImage narrow = inkBox(1.111), wide = inkBox(4.888);
    const int from = static_cast<int>(narrow.width() * 0.62);
    EXPECT_EQ(narrow.copy(from, 0, narrow.width() - from, narrow.height()),
              wide.copy(from, 0, wide.width() - from, wide.height()));
}

TEST(Models, KeepTheContractOfItemModels) {
    FindingsModel findings;
    PhasesModel phases;
    QAbstractItemModelTester testFindings(&findings, QAbstractItemModelTester::FailureReportingMode::Fatal);
    QAbstractItemModelTester testPhases(&phases, QAbstractItemModelTester::FailureReportingMode::Fatal);
    const auto snapshot = test::wiggleMoment();
    findings.setRows(eventRows(*snapshot->findings));
    phases.setPhases(snapshot->findings->phases);
    EXPECT_EQ(findings.rowCount(), 7);
    EXPECT_EQ(phases.rowCount(), 4);
    EXPECT_NEAR(phases.data(phases.index(3), TimeRole).toDouble(), 30.0, 1e-9);
    findings.setRows({});
    phases.setPhases({});
    EXPECT_EQ(findings.rowCount() + phases.rowCount(), 0);
}

} // namespace
} // namespace stillwire
