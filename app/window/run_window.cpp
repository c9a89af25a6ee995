// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/run_window.hpp"

#include "app/cli/cli.hpp"
#include "app/cli/logging.hpp"
#include "app/window/bench_doors.hpp"
#include "app/window/bench_window.hpp"

#include <cstdio>

#include <QApplication>
#include <QIcon>
#include <QTimer>

namespace stillwire {

int runWindow(int& argc, char** argv, bool demo) {
    const bool screen = !qEnvironmentVariableIsEmpty("DISPLAY") || !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY") ||
                        !qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM");
    if (!screen) { // Qt would end the program with a page of its own
        std::fputs(
            "stillwire: no display: start it from a desktop, or see `stillwire --help` for what works without one\n",
            stderr);
        return kExitBadInput;
    }
    logToFile();
    QApplication app(argc, argv);
    QCoreApplication::setOrganizationName(QStringLiteral("stillwire"));
    QCoreApplication::setApplicationName(QStringLiteral("stillwire"));
    QGuiApplication::setApplicationDisplayName(QStringLiteral("Stillwire"));
    QGuiApplication::setDesktopFileName(QStringLiteral("stillwire"));
    QApplication::setStyle(QStringLiteral("Fusion")); // the same on every desktop; colours are ours
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/stillwire.svg")));
    BenchWindow window(std::make_unique<BenchDoors>());
    window.setDemos(demoCaptures());
    window.restoreHabits();
    window.show();
    if (demo)
        QTimer::singleShot(0, &window, [&window] {
            Way way;
            way.scenario = QStringLiteral("worn-cold");
            window.open(way);
        });
    else
        QTimer::singleShot(0, &window, &BenchWindow::restoreSession);
    return QApplication::exec();
}

} // namespace stillwire
