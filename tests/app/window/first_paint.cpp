// SPDX-License-Identifier: GPL-3.0-or-later
// first_paint [PAIRS]: wall time from the start of a process to its first painted window, an empty Qt window against
// the bench, in pairs one after the other. Prints both medians and their ratio. Needs a display.
#include "app/window/bench_window.hpp"
#include "app/window/start/bench_doors.hpp"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include <QApplication>
#include <QProcess>
#include <QSettings>
#include <QTimer>

namespace {

using namespace stillwire;

// Ends the program once a window has been painted.
class FirstPaint : public QObject {
public:
    bool eventFilter(QObject*, QEvent* event) override {
        if (event->type() == QEvent::Paint) QTimer::singleShot(0, this, [] { QApplication::quit(); });
        return false;
    }
};

int paint(int argc, char** argv, bool empty) {
    QApplication app(argc, argv);
    QCoreApplication::setOrganizationName(QStringLiteral("stillwire"));
    QCoreApplication::setApplicationName(QStringLiteral("stillwire"));
    FirstPaint first;
    app.installEventFilter(&first);
    if (empty) {
        QWidget window;
        window.resize(1280, 800);
        window.show();
        return QApplication::exec();
    }
    QApplication::setStyle(QStringLiteral("Fusion"));
    BenchWindow window(std::make_unique<BenchDoors>());
    window.setDemos(demoCaptures());
    window.restoreHabits();
    window.show();
    return QApplication::exec();
}

double run_ms(const QString& program, const QString& what) {
    const auto from = std::chrono::steady_clock::now();
    if (QProcess::execute(program, {what}) != 0) return -1;
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count();
}

double median(std::vector<double> all) {
    std::nth_element(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(all.size() / 2), all.end());
    return all[all.size() / 2];
}

} // namespace

int main(int argc, char** argv) {
    const QString what = QString::fromLocal8Bit(argc > 1 ? argv[1] : "");
    if (what == QLatin1String("--empty") || what == QLatin1String("--bench"))
        return paint(argc, argv, what == QLatin1String("--empty"));
    const int pairs = std::max(1, what.isEmpty() ? 11 : what.toInt());
    const QString self = QString::fromLocal8Bit(argv[0]);
    std::vector<double> empty, bench, ratio;
    for (int i = 0; i < pairs; ++i) {
        empty.push_back(run_ms(self, QStringLiteral("--empty")));
        bench.push_back(run_ms(self, QStringLiteral("--bench")));
        if (empty.back() < 0 || bench.back() < 0) {
            std::fputs("first_paint: no window could be opened; start it on a display\n", stderr);
            return 1;
        }
        ratio.push_back(bench.back() / empty.back());
    }
    std::printf("empty window %.0f ms, bench %.0f ms, ratio %.2f (medians of %d pairs)\n", median(empty),
                median(bench), median(ratio), pairs);
    return 0;
}
