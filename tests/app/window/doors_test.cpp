// SPDX-License-Identifier: GPL-3.0-or-later
// The ways in from outside: a file named on the command line or handed over by the desktop.
#include <QDir>
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

QByteArray contents(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

TEST(Doors, AFileOnTheCommandLineIsOpenedInTheWindow) {
    QTemporaryDir home;
    QProcess program;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("QT_QPA_PLATFORM", "offscreen");
    environment.insert("PULSE_SERVER", "/nowhere"); // it needs no sound
    for (const char* place : {"XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME"})
        environment.insert(place, home.path());
    program.setProcessEnvironment(environment);
    program.setWorkingDirectory(STILLWIRE_SOURCE "/demo-sessions");
    program.start(STILLWIRE_PROGRAM, {"good-pedal.csv"});
    ASSERT_TRUE(program.waitForStarted());
    // What was opened stands among the recent ones from then on, by its whole path.
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return contents(home.filePath("stillwire/stillwire.conf")).contains("/demo-sessions/good-pedal.csv"); },
        30'000));
    EXPECT_EQ(program.state(), QProcess::Running); // and the window stays
    program.kill();
    program.waitForFinished();
}

TEST(Doors, TheDesktopHandsCapturesOver) {
    const QByteArray entry = contents(STILLWIRE_SOURCE "/resources/stillwire.desktop");
    EXPECT_TRUE(entry.contains("\nExec=stillwire %f\n"));
    EXPECT_TRUE(entry.contains("\nMimeType=text/csv;\n"));
}

} // namespace
} // namespace stillwire
