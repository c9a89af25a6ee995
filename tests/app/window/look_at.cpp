// SPDX-License-Identifier: GPL-3.0-or-later
// look_at PAGE [--night] [--size WxH] [--language CODE] [--longer] [--shot FILE.png]: one page of the window, as the
// tests measure it (tests/app/support/pages.hpp); `look_at list` names them all. With --shot it writes the picture
// and ends; else it stays open. --longer makes every text a third longer. look_at all --shots FOLDER [...]: a picture
// of every page, PAGE.png; look_at drawings --shot FILE.png: the drawings.
#include "app/language/language.hpp"
#include "app/window/hand/drawing_view.hpp"
#include "app/window/start/find_meter_box.hpp"
#include "tests/app/support/pages.hpp"
#include "tests/app/support/room.hpp"

#include <algorithm>
#include <cstdio>

#include <QApplication>
#include <QDir>
#include <QPainter>
#include <QSettings>
#include <QSvgRenderer>
#include <QTemporaryDir>
#include <QTest>

namespace {

using namespace stillwire;

QPixmap allDrawings(const Palette& palette) {
    QPixmap sheet(4 * 330, 5 * 234);
    sheet.fill(palette[Role::paper]);
    QPainter painter(&sheet);
    for (int i = 0; i < kStepCount; ++i) {
        QSvgRenderer svg(
            drawingSvg(QString::fromUtf8(stepName(static_cast<Step>(i)).data()), QStringLiteral("left"), palette));
        svg.render(&painter, QRectF(7 + i % 4 * 330, 7 + i / 5 * 234, 316, 220));
    }
    return sheet;
}

// The window, and a box in front of it where it would stand.
bool shoot(test::Stage& stage, const QString& file) {
    QTest::qWait(400);
    QPixmap picture = stage.window->grab();
    for (FindMeterBox* box : stage.window->findChildren<FindMeterBox*>()) {
        QPainter painter(&picture);
        painter.drawPixmap(stage.window->rect().center() - box->rect().center(), box->grab());
    }
    return picture.save(file);
}

} // namespace

int main(int argc, char** argv) {
    QApplication app(argc, argv);
    QApplication::setStyle(QStringLiteral("Fusion")); // as the program does
    QTemporaryDir settings;
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
    const QStringList arguments = app.arguments();
    auto after = [&](const char* option) {
        const auto at = arguments.indexOf(QLatin1String(option));
        return at > 0 && at + 1 < arguments.size() ? arguments.at(at + 1) : QString();
    };
    const std::string name = arguments.value(1, QStringLiteral("dropped")).toStdString();
    speak(after("--language"));
    test::LongerWords longer;
    if (arguments.contains(QStringLiteral("--longer"))) QCoreApplication::installTranslator(&longer);
    const std::vector<test::Page> pages = test::pages();
    if (name == "list") {
        for (const test::Page& page : pages) std::printf("%s\n", page.name.c_str());
        return 0;
    }
    const auto stageFor = [&](const test::Page* page) {
        auto stage = std::make_unique<test::Stage>();
        const QStringList size = after("--size").split(QLatin1Char('x'));
        if (size.size() == 2) stage->window->resize(size[0].toInt(), size[1].toInt());
        stage->window->look().setNight(arguments.contains(QStringLiteral("--night")));
        stage->window->show();
        QTest::qWait(50); // the start page fills after the first painted window
        if (page) page->turnTo(*stage);
        return stage;
    };
    const QString shot = after("--shot"), shots = after("--shots");
    if (name == "drawings") return allDrawings(stageFor(nullptr)->window->look().palette()).save(shot) ? 0 : 1;
    if (name == "all") {
        QDir().mkpath(shots);
        bool good = true;
        for (const test::Page& page : pages) {
            const auto stage = stageFor(&page);
            good = shoot(*stage, shots + QLatin1Char('/') + QString::fromStdString(page.name) + ".png") && good;
        }
        return good ? 0 : 1;
    }
    const auto page = std::find_if(pages.begin(), pages.end(), [&](const test::Page& p) { return p.name == name; });
    if (page == pages.end()) {
        std::fprintf(stderr, "look_at: no page %s; `look_at list` names them\n", name.c_str());
        return 2;
    }
    const auto stage = stageFor(&*page);
    if (!shot.isEmpty()) return shoot(*stage, shot) ? 0 : 1;
    return app.exec();
}
