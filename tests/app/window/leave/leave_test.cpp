// SPDX-License-Identifier: GPL-3.0-or-later
// Nothing ends a run without one question that names what would be lost; and nothing that is bad ends it at all.
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/habits.hpp"
#include "app/window/leave/ask_view.hpp"
#include "app/window/start/start_page.hpp"
#include "app/window/wire/stop_view.hpp"
#include "tests/app/support/fake_session.hpp"

#include <QDropEvent>
#include <QFile>
#include <QLabel>
#include <QMimeData>
#include <QPushButton>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <QUrl>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Leave : public ::testing::Test {
protected:
    void SetUp() override {
        QSettings().clear();
        window.show();
        QTest::qWait(10);
        show(test::wiggleMoment());
    }
    void show(std::shared_ptr<SessionSnapshot> snapshot) {
        snapshot->capturePath = "/tmp/a-run.csv";
        session = test::attachTo(window, std::move(snapshot));
        QTest::qWait(20);
    }
    void drop(const QString& path) {
        QMimeData data;
        data.setUrls({QUrl::fromLocalFile(path)});
        QDragEnterEvent entered({10, 10}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&window, &entered);
        ASSERT_TRUE(entered.isAccepted());
        QDropEvent dropped({10, 10}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&window, &dropped);
    }
    QString words(const QWidget& of) {
        QString all;
        for (const QLabel* label : of.findChildren<QLabel*>())
            if (label->isVisible()) all += label->text() + QLatin1Char('\n');
        return all;
    }
    bool asked() { return window.question().asking(); }
    // The run goes on, on its page, and nobody has been told to stop it.
    void expectItGoesOn() {
        EXPECT_EQ(window.page(), &window.bench());
        EXPECT_EQ(window.feed().session(), session);
        EXPECT_TRUE(session->running());
        EXPECT_TRUE(session->commands.empty());
    }
    test::FakeDoors* doors = new test::FakeDoors;
    BenchWindow window{std::unique_ptr<test::FakeDoors>(doors)};
    test::FakeSession* session = nullptr;
};

TEST_F(Leave, EveryWayOutAsksAndNamesWhatWouldBeLost) {
    const std::vector<std::pair<const char*, std::function<void()>>> ways{
        {"the window's own button", [&] { window.close(); }},
        {"Ctrl+Q", [&] { QTest::keyClick(&window, Qt::Key_Q, Qt::ControlModifier); }},
        {"Esc", [&] { QTest::keyClick(&window, Qt::Key_Escape); }},
        {"Ctrl+E", [&] { QTest::keyClick(&window, Qt::Key_E, Qt::ControlModifier); }},
        {"a dropped file", [&] { drop(QStringLiteral("/tmp/good.csv")); }},
    };
    for (const auto& [name, go] : ways) {
        go();
        ASSERT_TRUE(asked()) << name;
        expectItGoesOn();
        const QString says = words(window.question());
        EXPECT_TRUE(says.contains("step 5 of 14, Wiggle the shaft")) << name << says.toStdString();
        EXPECT_TRUE(says.contains("9 more poses")) << says.toStdString();
        EXPECT_TRUE(says.contains("harness, press, sweep")) << says.toStdString();
        EXPECT_TRUE(says.contains("kept: a-run.csv")) << says.toStdString();
        QTest::keyClick(&window, Qt::Key_Escape); // a second Esc never ends a run
        EXPECT_FALSE(asked()) << name;
        expectItGoesOn();
    }
    EXPECT_TRUE(window.isVisible());
}

TEST_F(Leave, TheAnswerDoesWhatWasAskedFor) {
    window.close();
    QTest::keyClick(&window, Qt::Key_E, Qt::ControlModifier);
    EXPECT_FALSE(window.isVisible());
    EXPECT_EQ(window.feed().session(), nullptr);
    EXPECT_EQ(habits::recentCaptures().value(0), "/tmp/a-run.csv");
}

TEST_F(Leave, ADroppedFileTakesThePlaceOnlyOnceItIsWanted) {
    drop(QStringLiteral("/tmp/good.csv"));
    ASSERT_TRUE(asked());
    for (QPushButton* button : window.question().findChildren<QPushButton*>())
        if (button->isVisible() && button->accessibleName() == "end it") button->click();
    EXPECT_FALSE(asked());
    EXPECT_EQ(window.page(), &window.bench());
    EXPECT_FALSE(window.feed().scene().snapshot->guided); // what was dropped
    EXPECT_EQ(habits::recentCaptures(), QStringList({"/tmp/good.csv", "/tmp/a-run.csv"}));
}

TEST_F(Leave, ABadFileIsSaidAndEndsNothing) {
    drop(QStringLiteral("/tmp/broken.csv"));
    EXPECT_FALSE(asked());
    expectItGoesOn();
    EXPECT_TRUE(words(window.bench()).contains("remove the row or split the file there"));
}

TEST_F(Leave, ALongFileIsReadWhileTheRunGoesOn) {
    QTemporaryDir folder;
    QFile file(folder.filePath("long.csv"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(QByteArray(2'000'000, '#'));
    file.close();
    drop(file.fileName());
    expectItGoesOn();
    ASSERT_TRUE(QTest::qWaitFor([&] { return asked(); }, 30'000));
    expectItGoesOn();
}

TEST_F(Leave, UnderTheQuestionNoKeyReachesTheRun) {
    window.close();
    for (const Qt::Key key : {Qt::Key_S, Qt::Key_Backspace, Qt::Key_T, Qt::Key_1}) QTest::keyClick(&window, key);
    expectItGoesOn();
    QTest::keyClick(&window, Qt::Key_Escape);
    QTest::keyClick(&window, Qt::Key_S);
    EXPECT_EQ(session->commands, std::vector<Command>{Command::skip});
}

TEST_F(Leave, EndingTheRunHereTellsTheSessionAndKeepsItsPage) {
    QTest::keyClick(&window, Qt::Key_E, Qt::ControlModifier);
    EXPECT_TRUE(session->commands.empty());
    QTest::keyClick(&window, Qt::Key_E, Qt::ControlModifier);
    EXPECT_EQ(session->commands, std::vector<Command>{Command::stop});
    EXPECT_EQ(window.page(), &window.bench());
}

TEST_F(Leave, WhatIsOverIsLeftWithoutAWord) {
    for (const auto& over : {test::finishedMoment(), test::replayMoment()}) {
        show(over);
        QTest::keyClick(&window, Qt::Key_Escape);
        EXPECT_FALSE(asked());
        EXPECT_EQ(window.page(), &window.start());
    }
}

TEST_F(Leave, AQuestionAboutARunThatEndedMeanwhileGoesAway) {
    window.close();
    ASSERT_TRUE(asked());
    auto over = test::finishedMoment();
    session->show(over);
    window.feed().poll();
    EXPECT_FALSE(asked());
}

TEST_F(Leave, AStopGoesBeforeTheQuestion) {
    window.close();
    auto stop = test::moment(WireState::overVoltage);
    stop->prompt.stopNow = true;
    session->show(stop);
    window.feed().poll();
    EXPECT_FALSE(asked());
    EXPECT_TRUE(window.findChild<StopView*>()->isVisible());
    window.close(); // and the bench can still be closed
    EXPECT_TRUE(asked());
}

TEST_F(Leave, FromThePageOfKeysTheQuestionComesToo) {
    window.press(KeyAction::keys);
    window.close();
    EXPECT_TRUE(asked());
    expectItGoesOn();
}

TEST_F(Leave, RowsThatTheDiskDidNotTakeAreNamedAndCanBeSaved) {
    auto full = test::wiggleMoment();
    full->pendingBytes = 4096;
    show(full);
    window.close();
    EXPECT_TRUE(words(window.question()).contains("4.00 KiB")) << words(window.question()).toStdString();
    bool offered = false;
    for (QPushButton* button : window.question().findChildren<QPushButton*>())
        offered = offered || (button->isVisible() && button->accessibleName().startsWith("save elsewhere"));
    EXPECT_TRUE(offered);
}

TEST_F(Leave, ARunMovesToAnotherWindowWhole) {
    auto run = window.handOver();
    ASSERT_TRUE(run);
    EXPECT_EQ(run->session.get(), session);
    EXPECT_TRUE(session->running());
    BenchWindow next(std::make_unique<test::FakeDoors>());
    next.attach(std::move(*run), window.guided());
    EXPECT_EQ(next.feed().session(), session);
    EXPECT_EQ(next.page(), &next.bench());
    EXPECT_FALSE(window.handOver()); // once
}

} // namespace
} // namespace stillwire
