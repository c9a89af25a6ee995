// SPDX-License-Identifier: GPL-3.0-or-later
// look_at MOMENT [--night] [--size WxH] [--language CODE] [--longer] [--shot FILE.png]: one page of the window on
// invented figures: start, trouble, keys, replay, adjust, finished, a state of the wire, or a step's name. With
// --shot it writes the picture and ends; else it stays open. --longer makes every text a third longer.
#include "app/language/language.hpp"
#include "app/language/say.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/hand/drawing_view.hpp"
#include "app/window/start/start_page.hpp"
#include "tests/app/support/fake_session.hpp"
#include "tests/app/support/room.hpp"

#include <QApplication>
#include <QPainter>
#include <QSettings>
#include <QSvgRenderer>
#include <QTemporaryDir>
#include <QTimer>

namespace {

using namespace stillwire;

QPixmap allDrawings(const Palette& palette) {
    QPixmap sheet(4 * 330, 4 * 234);
    sheet.fill(palette[Role::paper]);
    QPainter painter(&sheet);
    for (int i = 0; i < kStepCount; ++i) {
        QSvgRenderer svg(
            drawingSvg(QString::fromUtf8(stepName(static_cast<Step>(i)).data()), QStringLiteral("left"), palette));
        svg.render(&painter, QRectF(7 + i % 4 * 330, 7 + i / 4 * 234, 316, 220));
    }
    return sheet;
}

std::shared_ptr<SessionSnapshot> momentNamed(const QString& name) {
    const std::pair<const char*, WireState> states[] = {
        {"silent", WireState::silent}, {"steady", WireState::steady}, {"moving", WireState::moving},
        {"jumped", WireState::jumped}, {"blind", WireState::blind},   {"over", WireState::overVoltage}};
    for (const auto& [text, state] : states)
        if (name == QLatin1String(text)) return test::moment(state);
    if (name == QLatin1String("adjust")) return test::adjustMoment();
    if (name == QLatin1String("hook-up")) return test::hookUpMoment();
    if (name == QLatin1String("question")) return test::questionMoment(test::Question::badReference);
    if (const auto step = stepByName(name.toStdString())) return test::stepMoment(*step);
    if (name == QLatin1String("finished")) return test::finishedMoment();
    return name == QLatin1String("replay") ? test::replayMoment() : test::wiggleMoment();
}

} // namespace

int main(int argc, char** argv) {
    QApplication app(argc, argv);
    QTemporaryDir settings;
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
    const QStringList arguments = app.arguments();
    auto after = [&](const char* option) {
        const auto at = arguments.indexOf(QLatin1String(option));
        return at > 0 && at + 1 < arguments.size() ? arguments.at(at + 1) : QString();
    };
    const QString name = arguments.value(1, QStringLiteral("wiggle"));
    speak(after("--language"));
    test::LongerWords longer;
    if (arguments.contains(QStringLiteral("--longer"))) QCoreApplication::installTranslator(&longer);
    BenchWindow window(std::make_unique<test::FakeDoors>());
    const QStringList size = after("--size").split(QLatin1Char('x'));
    if (size.size() == 2) window.resize(size[0].toInt(), size[1].toInt());
    window.look().setNight(arguments.contains(QStringLiteral("--night")));
    if (name == QLatin1String("drawings")) return allDrawings(window.look().palette()).save(after("--shot")) ? 0 : 1;
    if (name == QLatin1String("keys"))
        window.press(KeyAction::keys);
    else if (name == QLatin1String("trouble"))
        window.open(window.start().captureWay(QStringLiteral("/tmp/broken.csv")));
    else if (name != QLatin1String("start")) {
        Opened opened;
        opened.session = std::make_unique<test::FakeSession>(momentNamed(name));
        opened.sheet = test::leverSheet();
        opened.name = sayName("Depth lever, fretting connector");
        window.attach(std::move(opened), name != QLatin1String("replay"));
    }
    window.show();
    const QString shot = after("--shot");
    if (!shot.isEmpty()) QTimer::singleShot(400, &window, [&] { app.exit(window.grab().save(shot) ? 0 : 1); });
    return app.exec();
}
