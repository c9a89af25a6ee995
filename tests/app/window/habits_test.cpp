// SPDX-License-Identifier: GPL-3.0-or-later
// What the window remembers: captures, the run that was cut short, what was open; and opening what is long.
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/habits.hpp"
#include "app/window/start/bench_doors.hpp"
#include "app/window/start/start_page.hpp"
#include "tests/app/support/fake_session.hpp"

#include <QDirIterator>
#include <QFile>
#include <QLabel>
#include <QProcess>
#include <QPushButton>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Habits : public ::testing::Test {
protected:
    void SetUp() override { QSettings().clear(); }
    QString file(const QString& name, qint64 bytes = 10) {
        QFile made(folder.filePath(name));
        EXPECT_TRUE(made.open(QIODevice::WriteOnly));
        made.write(QByteArray(static_cast<qsizetype>(bytes), '#'));
        return made.fileName();
    }
    static QString visibleText(const QWidget& page) {
        QString all;
        for (const QLabel* label : page.findChildren<QLabel*>())
            if (label->isVisible()) all += label->text() + QLatin1Char('\n');
        return all;
    }
    QTemporaryDir folder;
};

TEST_F(Habits, TheNewestCaptureStandsFirstAndNoneTwice) {
    habits::rememberCapture("/a.csv");
    habits::rememberCapture("/b.csv");
    habits::rememberCapture("/a.csv");
    EXPECT_EQ(habits::recentCaptures(), QStringList({"/a.csv", "/b.csv"}));
}

TEST_F(Habits, ARunWhoseProgramDiedIsOfferedUntilItIsTakenUpOrPutAside) {
    const QString path = file("died.csv");
    auto made = std::make_unique<test::FakeDoors>();
    test::FakeDoors* doors = made.get();
    doors->cutShort = {file("before.csv"), path};
    BenchWindow window(std::move(made));
    window.show();
    QTest::qWait(30);
    EXPECT_TRUE(visibleText(window.start()).contains("2 runs were cut short"));
    EXPECT_EQ(habits::recentCaptures().size(), 2); // kept even if nobody opens them
    EXPECT_EQ(habits::recentCaptures().value(0), path);
    window.open(window.start().captureWay(file("another.csv"))); // which is no answer to it
    window.leaveBench();
    EXPECT_TRUE(visibleText(window.start()).contains("2 runs were cut short"));
    const auto press = [&](const char* words) {
        for (QPushButton* button : window.start().findChildren<QPushButton*>())
            if (button->isVisible() && button->text() == QLatin1String(words)) return button->click();
    };
    press("Open it");
    EXPECT_EQ(window.page(), &window.bench());
    window.leaveBench();
    EXPECT_TRUE(visibleText(window.start()).contains("The last run was cut short"));
    press("Put it aside");
    EXPECT_FALSE(visibleText(window.start()).contains("cut short"));
    EXPECT_TRUE(doors->cutShort.isEmpty());
    EXPECT_TRUE(habits::recentCaptures().contains(path));
}

// The program itself, killed as the kernel kills when memory runs out.
TEST_F(Habits, ARunOnTheSimulatedMeterThatWasKilledIsOfferedToo) {
    const QByteArray data = qgetenv("XDG_DATA_HOME"), state = qgetenv("XDG_STATE_HOME");
    qputenv("XDG_DATA_HOME", folder.filePath("data").toUtf8());
    qputenv("XDG_STATE_HOME", folder.filePath("state").toUtf8());
    QProcess program;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("QT_QPA_PLATFORM", "offscreen");
    environment.insert("PULSE_SERVER", "/nowhere"); // it needs no sound
    program.setProcessEnvironment(environment);
    program.start(STILLWIRE_PROGRAM, {"--demo"});
    ASSERT_TRUE(program.waitForStarted());
    QString capture;
    qint64 begun = 0;
    ASSERT_TRUE(QTest::qWaitFor(
        [&] {
            QDirIterator files(folder.filePath("data"), {"*.csv"}, QDir::Files, QDirIterator::Subdirectories);
            if (files.hasNext()) capture = files.next();
            const qint64 size = QFileInfo(capture).size();
            if (begun == 0) begun = size; // its header, at least
            return size > begun;
        },
        30'000));
    program.kill();
    ASSERT_TRUE(program.waitForFinished());
    {
        BenchWindow window(std::make_unique<BenchDoors>());
        window.show();
        QTest::qWait(30);
        EXPECT_TRUE(visibleText(window.start()).contains("cut short"));
        EXPECT_EQ(habits::recentCaptures().value(0), capture);
        BenchWindow next(std::make_unique<BenchDoors>());
        next.show();
        QTest::qWait(30);
        EXPECT_TRUE(visibleText(next.start()).contains("cut short")); // nobody has answered yet
        next.open(next.start().captureWay(capture));
        BenchWindow last(std::make_unique<BenchDoors>());
        last.show();
        QTest::qWait(30);
        EXPECT_FALSE(visibleText(last.start()).contains("cut short"));
    }
    qputenv("XDG_DATA_HOME", data);
    qputenv("XDG_STATE_HOME", state);
}

TEST_F(Habits, TheStartPageComesFirstWhateverWasOpen) {
    {
        BenchWindow window(std::make_unique<test::FakeDoors>());
        window.show();
        window.open(window.start().captureWay(file("open.csv")));
        window.close();
    }
    BenchWindow next(std::make_unique<test::FakeDoors>());
    next.restoreHabits();
    next.show();
    QTest::qWait(30);
    EXPECT_EQ(next.page(), &next.start());
    EXPECT_EQ(next.start().recents().rows().front().path, folder.filePath("open.csv")); // one step away
}

// A door that waits until it is let go on.
class SlowDoors : public test::FakeDoors {
public:
    Result<Opened> open(const Way& way) override {
        while (!go && !gaveUp) {
            if (way.told && !way.told(0.43)) gaveUp = true;
            QThread::msleep(1);
        }
        return FakeDoors::open(way);
    }
    std::atomic<bool> go = false, gaveUp = false;
};

class LongCapture : public Habits {
protected:
    void SetUp() override {
        Habits::SetUp();
        window.show();
        window.open(window.start().captureWay(file("long.csv", 2'000'000)));
    }
    SlowDoors* doors = new SlowDoors;
    BenchWindow window{std::unique_ptr<SlowDoors>(doors)};
};

TEST_F(LongCapture, OpensInTheBackgroundAndSaysSo) {
    EXPECT_TRUE(window.opener().busy());
    EXPECT_TRUE(visibleText(window.start()).contains("Reading long.csv"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return visibleText(window.start()).contains("43 %"); }, 30'000));
    doors->go = true;
    EXPECT_TRUE(QTest::qWaitFor([&] { return window.page() == &window.bench(); }, 30'000));
    EXPECT_FALSE(window.opener().busy());
}

TEST_F(LongCapture, CanBeGivenUpWhileItOpens) {
    window.press(KeyAction::leave);
    EXPECT_FALSE(window.opener().busy());
    EXPECT_FALSE(visibleText(window.start()).contains("Reading"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return doors->gaveUp.load(); }, 30'000)) << "the reading goes on";
    QTest::qWait(50);
    EXPECT_EQ(window.page(), &window.start());
}

} // namespace
} // namespace stillwire
