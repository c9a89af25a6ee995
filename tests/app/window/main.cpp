// SPDX-License-Identifier: GPL-3.0-or-later
// Runs the window's tests without a screen, with settings that nobody else sees.
#include <QApplication>
#include <QSettings>
#include <QTemporaryDir>
#include <gtest/gtest.h>

#ifdef __SANITIZE_ADDRESS__
// What the desktop's message bus keeps to the end of the program is its own.
extern "C" const char* __lsan_default_suppressions() { return "leak:libdbus-1.so"; }
#endif

int main(int argc, char** argv) {
    ::testing::InitGoogleTest(&argc, argv);
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QTemporaryDir settings;
    qputenv("XDG_DATA_HOME", settings.path().toUtf8()); // recordings go there too
    qputenv("XDG_STATE_HOME", settings.filePath("state").toUtf8());
    QApplication app(argc, argv);
    QCoreApplication::setOrganizationName(QStringLiteral("stillwire-tests"));
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
    return RUN_ALL_TESTS();
}
