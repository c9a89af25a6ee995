// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/run_window.hpp"

#include "app/language/language.hpp"
#include "app/shared/exit_status.hpp"
#include "app/shared/logging.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/sound/threads_left.hpp"
#include "app/window/start/bench_doors.hpp"
#include "app/window/start/start_page.hpp"
#include "meters/session/log.hpp"

#include <cstdio>
#include <cstdlib>
#include <memory>

#include <QApplication>
#include <QFileInfo>
#include <QIcon>
#include <QTimer>

namespace stillwire {
namespace {

// Words are put into the widgets as they are made: another language is another window in the place of the first.
void openWindow(std::unique_ptr<BenchWindow>& window) {
    BenchWindow* before = window.release();
    window = std::make_unique<BenchWindow>(std::make_unique<BenchDoors>());
    window->setDemos(demoCaptures());
    window->restoreHabits();
    if (before) window->restoreGeometry(before->saveGeometry());
    window->show();
    if (before)
        if (auto run = before->handOver()) window->attach(std::move(*run), before->guided());
    if (before) before->deleteLater(); // it is still telling of the choice
    QObject::connect(
        window.get(), &BenchWindow::languageChosen, window.get(),
        [&window](const QString& code) {
            if (code == languageSpoken()) return;
            rememberLanguage(code);
            speak(code);
            openWindow(window);
        },
        Qt::QueuedConnection); // not from within the list that was chosen from
}

// What Qt complains of by itself, such as a sound server that has gone, is for the log and not for a terminal.
void intoTheLog(QtMsgType type, const QMessageLogContext&, const QString& text) {
    if (type == QtDebugMsg || type == QtInfoMsg)
        logInfo(text.toStdString());
    else
        logWarning(text.toStdString());
    if (type == QtFatalMsg) std::fprintf(stderr, "stillwire: %s\n", qPrintable(text)); // it ends the program
}

} // namespace

int runWindow(int& argc, char** argv, const Opens& opens) {
    const bool screen = !qEnvironmentVariableIsEmpty("DISPLAY") || !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY") ||
                        !qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM");
    if (!screen) { // Qt would end the program with a page of its own
        std::fputs(
            "stillwire: no display: start it from a desktop, or see `stillwire --help` for what works without one\n",
            stderr);
        return kExitBadInput;
    }
    logToFile();
    qInstallMessageHandler(intoTheLog);
    QApplication app(argc, argv);
    nameProgram();
    speak(languageWanted());
    QGuiApplication::setApplicationDisplayName(QStringLiteral("Stillwire"));
    QGuiApplication::setDesktopFileName(QStringLiteral("stillwire"));
    QApplication::setStyle(QStringLiteral("Fusion")); // the same on every desktop; colours are ours
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/stillwire.svg")));
    std::unique_ptr<BenchWindow> window;
    openWindow(window);
    if (!opens.capture.empty()) // once the window is painted
        QTimer::singleShot(0, window.get(), [&window, path = QString::fromStdString(opens.capture)] {
            window->open(window->start().captureWay(QFileInfo(path).absoluteFilePath()));
        });
    if (opens.demo)
        QTimer::singleShot(0, window.get(), [&window] {
            Way way;
            way.scenario = QStringLiteral("worn-cold");
            window->open(way);
        });
    const int status = QApplication::exec();
    window.reset();
    if (threadsLeft) std::_Exit(status);
    return status;
}

} // namespace stillwire
