// SPDX-License-Identifier: GPL-3.0-or-later
// Recent captures: told apart, opened by one click, renamed, noted, taken off the list; empty ones not first.
#include "app/window/habits.hpp"
#include "app/window/start/capture_edit.hpp"
#include "app/window/start/recents.hpp"
#include "core/capture/reader.hpp"
#include "core/capture/writer.hpp"

#include <QAbstractItemModelTester>
#include <QDir>
#include <QFile>
#include <QScrollBar>
#include <QSettings>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Recents : public ::testing::Test {
protected:
    void SetUp() override { QSettings().clear(); }
    QString capture(const QString& name, int readings) {
        const QString path = folder.filePath(name);
        CaptureHeader header;
        header.started = "2026-11-24T07:12:00+01:00";
        auto writer = CaptureWriter::create(path.toStdString(), header);
        EXPECT_TRUE(writer);
        for (int i = 0; i < readings; ++i)
            EXPECT_TRUE(writer.value().append(Reading{.time = fromSeconds(i), .volts_V = 0.8, .flags = {}}));
        return path;
    }
    static Glance glance(const QString& path, bool empty = false) {
        Glance made;
        made.path = path;
        made.name = titleOfCapture(path);
        made.empty = empty;
        return made;
    }
    QStringList paths() {
        QStringList all;
        for (const Glance& row : model.rows()) all << row.path;
        return all;
    }
    QTemporaryDir folder;
    Look look;
    RecentsModel model;
};

TEST_F(Recents, AreToldApartByNameMachineAndTimeEachOnce) {
    const Glance seen = glanceAt(capture("2026-11-24-071200-resurfacer-drive-pedal.csv", 5));
    EXPECT_EQ(seen.name, "Resurfacer drive pedal");
    EXPECT_EQ(seen.when, "24 Nov 2026 at 07:12");
    EXPECT_FALSE(seen.empty);
    EXPECT_TRUE(glanceAt(capture("2026-11-24-071300-pedal.csv", 0)).empty);
}

TEST_F(Recents, EmptyOnesStandLastWheneverThatIsFound) {
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.setPaths({"/empty.csv", "/a.csv", "/hollow.csv", "/b.csv"});
    model.setGlance(glance("/empty.csv", true));
    model.setGlance(glance("/hollow.csv", true));
    EXPECT_EQ(paths().mid(0, 2), QStringList({"/a.csv", "/b.csv"}));
    model.setPaths({"/new.csv", "/empty.csv", "/a.csv", "/hollow.csv", "/b.csv"});
    EXPECT_EQ(paths(), QStringList({"/new.csv", "/a.csv", "/b.csv", "/empty.csv", "/hollow.csv"}));
}

TEST_F(Recents, OneClickOpensAndTheWheelMovesNothingBack) {
    QStringList many;
    for (int i = 0; i < 30; ++i) many << QStringLiteral("/capture-%1.csv").arg(i);
    model.setPaths(many);
    RecentsList list(look, model, nullptr);
    list.resize(700, 200);
    list.show();
    QTest::qWait(20);
    QSignalSpy chosen(&list, &RecentsList::chosen);
    QTest::mouseClick(list.viewport(), Qt::LeftButton, {}, list.visualRect(model.index(1)).center());
    ASSERT_EQ(chosen.count(), 1);
    EXPECT_EQ(chosen.at(0).at(0).toString(), "/capture-1.csv");
    list.verticalScrollBar()->setValue(200);
    model.setGlance(glance("/capture-20.csv")); // a look at one comes in
    model.setPaths(many);                       // and the list is made anew with the same
    QTest::qWait(20);
    EXPECT_EQ(list.verticalScrollBar()->value(), 200);
}

TEST_F(Recents, ByKeyboardOneIsOpenedAndTakenOffWhileItsFileStays) {
    const QString path = capture("2026-11-24-071200-pedal.csv", 3);
    habits::rememberCapture(path);
    model.setPaths({path});
    RecentsList list(look, model, nullptr);
    list.show();
    list.setCurrentIndex(model.index(0));
    QSignalSpy chosen(&list, &RecentsList::chosen);
    QTest::keyClick(&list, Qt::Key_Return);
    EXPECT_EQ(chosen.count(), 1);
    QTest::keyClick(&list, Qt::Key_Delete);
    EXPECT_EQ(model.rowCount(), 0);
    EXPECT_TRUE(habits::recentCaptures().isEmpty());
    EXPECT_TRUE(QFile::exists(path));
}

TEST_F(Recents, ARenamedCaptureKeepsItsTimeOfDayItsBytesAndItsPlace) {
    const QString path = capture("2026-11-24-071200-pedal.csv", 3);
    habits::rememberCapture(path);
    habits::rememberCapture("/newer.csv");
    QFile before(path);
    ASSERT_TRUE(before.open(QIODevice::ReadOnly));
    const QByteArray bytes = before.readAll();
    const auto renamed = renameCapture(path, "Rink two, left/right");
    ASSERT_TRUE(renamed);
    EXPECT_EQ(QFileInfo(renamed.value()).fileName(), "2026-11-24-071200-Rink two, left-right.csv");
    EXPECT_EQ(titleOfCapture(renamed.value()), "Rink two, left right");
    habits::renameCapture(path, renamed.value());
    EXPECT_EQ(habits::recentCaptures(), QStringList({"/newer.csv", renamed.value()}));
    QFile after(renamed.value());
    ASSERT_TRUE(after.open(QIODevice::ReadOnly));
    EXPECT_EQ(after.readAll(), bytes);
    EXPECT_FALSE(renameCapture(capture("2026-11-24-071200-other.csv", 1), "Rink two, left/right")); // it is taken
    EXPECT_FALSE(renameCapture(renamed.value(), "  "));
}

TEST_F(Recents, ANoteStaysInTheCaptureAndTouchesNoReading) {
    const QString path = capture("pedal.csv", 3);
    const auto before = captureHash(path.toStdString());
    ASSERT_TRUE(noteOnCapture(path, "after the\nnew bracket"));
    EXPECT_EQ(glanceAt(path).note, "after the new bracket");
    EXPECT_EQ(captureHash(path.toStdString()).value(), before.value());
}

} // namespace
} // namespace stillwire
