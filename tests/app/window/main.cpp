// SPDX-License-Identifier: GPL-3.0-or-later
// Runs the window's tests without a screen, with settings that nobody else sees.
#include <QApplication>
#include <QSettings>
#include <QTemporaryDir>
#include <gtest/gtest.h>

int main(int argc, char** argv) {
    ::testing::InitGoogleTest(&argc, argv);
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QTemporaryDir settings;
    qputenv("XDG_DATA_HOME", settings.path().toUtf8()); // recordings go there too
    QApplication app(argc, argv);
    QCoreApplication::setOrganizationName(QStringLiteral("stillwire-tests"));
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
    return RUN_ALL_TESTS();
}
