// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/bench_doors.hpp"

#include "app/language/say.hpp"
#include "app/shared/logging.hpp"
#include "app/shared/resources.hpp"
#include "app/window/start/capture_place.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/link/clock.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/unfinished.hpp"

#include <algorithm>
#include <atomic>

#include <QDateTime>
#include <QDir>
#include <QFileInfo>

namespace stillwire {
namespace {

Error missing(Sentence what, Sentence mend) {
    return {Error::Kind::badInput, {}, 0, std::move(what), std::move(mend)};
}

std::vector<Listed> listed(const std::string& kind, QString (*title)(const std::string& path)) {
    std::vector<Listed> all;
    for (const Named& named : listNamed(kind))
        all.push_back({QString::fromStdString(named.name), title(named.path), QString::fromStdString(named.path)});
    return all;
}

QString fileName(const std::string& path) { return QFileInfo(QString::fromStdString(path)).completeBaseName(); }

// What cannot be read is listed by its file's name: choosing it says what is wrong with it.
QString sheetTitle(const std::string& path) {
    const auto sheet = loadSheet(path);
    return sheet ? sayName(sheet.value().name) : fileName(path);
}
QString meterTitle(const std::string& path) {
    const auto meter = loadMeter(path);
    return meter ? sayName(meter.value().name) : fileName(path);
}
QString scriptTitle(const std::string& path) {
    const auto text = readText(path);
    if (!text) return fileName(path);
    const auto script = parseBenchScript(text.value(), path);
    return script ? sayName(script.value().name) : fileName(path);
}

// By the clock of the place it was made at.
QString startedWords(const QString& started) {
    const QDateTime at = QDateTime::fromString(started, Qt::ISODate);
    return at.isValid()
               ? at.date().toString(Qt::ISODate) + QChar(QChar::Nbsp) + at.time().toString(QStringLiteral("HH:mm"))
               : started;
}

} // namespace

std::vector<Listed> BenchDoors::ports() {
    std::vector<Listed> all;
    const std::vector<PortInfo> ports = listPorts();
    for (const PortInfo& port : ports) {
        const QString name = QString::fromStdString(port.name);
        QString title = QFileInfo(name).fileName();
        if (!port.description.empty() && title != QString::fromStdString(port.description))
            title += QStringLiteral("  ") + QString::fromStdString(port.description);
        // By its identity: put back, an adapter may have another name. Some makes number all of theirs alike.
        const bool known =
            port.usb && !port.usb->serial.empty() &&
            std::count_if(ports.begin(), ports.end(), [&port](const PortInfo& p) { return p.usb == port.usb; }) == 1;
        all.push_back({known ? QString::fromStdString(port.usb->text()) : name, title, name});
    }
    return all;
}

std::vector<PortFinding> BenchDoors::findMeters(const std::function<void(const FindProgress&)>& told,
                                                const std::stop_token& stop) {
    FindPlan plan;
    plan.candidates = loadCandidates();
    for (const PortInfo& port : listPorts()) plan.ports.push_back(port.name);
    return stillwire::findMeters(plan, makeSerialLink, told, stop);
}

std::vector<Listed> BenchDoors::meters() { return listed("meters", meterTitle); }
std::vector<Listed> BenchDoors::sheets() { return listed("sheets", sheetTitle); }
std::vector<Listed> BenchDoors::scenarios() { return listed("bench", scriptTitle); }

Result<Opened> BenchDoors::open(const Way& way) {
    switch (way.kind) {
    case Way::Kind::port: return openPort(way);
    case Way::Kind::simulated: return openSimulated(way);
    case Way::Kind::capture: break;
    }
    return openCapture(way);
}

Result<Opened> BenchDoors::openPort(const Way& way) {
    if (way.sheet.isEmpty()) return missing("no sensor sheet is chosen", "choose the sensor's sheet first");
    if (way.meter.isEmpty()) return missing("no meter is chosen", "choose the meter's description first");
    auto sheet = loadSheet(way.sheet.toStdString());
    if (!sheet) return sheet.error();
    auto description = loadDescription(way.meter.toStdString());
    if (!description) return description.error();
    CaptureHeader header;
    header.sheet = *sheet;
    header.meter = description->traits;
    SessionOptions options;
    const CapturePlace place = newCapturePlace(QString::fromStdString(sheet->name));
    options.capturePath = place.path;
    options.notesFolder = recordingNotes();
    options.seed = static_cast<std::uint64_t>(QDateTime::currentMSecsSinceEpoch());
    std::optional<MeterPort> reference;
    if (!way.referencePort.isEmpty()) {
        auto second = loadDescription(way.referenceMeter.toStdString());
        if (!second) return second.error();
        reference = MeterPort{makeSerialLink(way.referencePort.toStdString(), second->link), *second};
    }
    auto session = Session::start({makeSerialLink(way.port.toStdString(), description->link), *description}, header,
                                  options, std::move(reference));
    if (!session) return session.error();
    return Opened{std::move(*session), std::make_shared<const Sheet>(*sheet), sayName(sheet->name), way.port, 0, {},
                  place.warning};
}

Result<SimulatedMeter> BenchDoors::makeMeter(const BenchScript& script, const Sheet& sheet,
                                             const MeterDescription& meter, const Way& way) {
    return simulatedMeter(script, sheet, meter, way.seed, way.speed, bootTime);
}

Result<Opened> BenchDoors::openSimulated(const Way& way) {
    auto path = pathOf(way.scenario.toStdString(), "bench");
    if (!path) return path.error();
    auto text = readText(*path);
    if (!text) return text.error();
    auto script = parseBenchScript(*text, *path);
    if (!script) return script.error();
    auto sheet = loadSheet(script->sheet.empty() ? way.sheet.toStdString() : script->sheet);
    if (!sheet) return sheet.error();
    auto description = loadDescription(script->meter.empty() ? way.meter.toStdString() : script->meter);
    if (!description) return description.error();
    auto meter = makeMeter(*script, *sheet, *description, way);
    if (!meter) return meter.error();
    CaptureHeader header;
    header.notes = script->notes;
    header.probe = script->setup.side;
    header.black = script->setup.black;
    header.sheet = *sheet;
    header.meter = description->traits;
    SessionOptions options;
    const CapturePlace place = newCapturePlace(QStringLiteral("simulated ") + QString::fromStdString(script->name));
    options.capturePath = place.path;
    options.notesFolder = recordingNotes();
    options.seed = way.seed;
    // The bench belongs to the session's thread, which asks the hand at every tick.
    auto struck = std::make_shared<std::atomic<bool>>(false);
    options.hand = [hand = meter->hand, strike = meter->strike, struck](const Prompt& prompt, Time now) {
        if (struck->exchange(false)) strike();
        return hand(prompt, now);
    };
    auto session = Session::start({std::move(meter->link), *description}, header, options);
    if (!session) return session.error();
    return Opened{std::move(*session),
                  std::make_shared<const Sheet>(*sheet),
                  sayName(script->name),
                  sayName(script->notes),
                  0,
                  [struck] { *struck = true; },
                  place.warning};
}

Result<Opened> BenchDoors::openCapture(const Way& way) {
    ImportOptions reading;
    const auto size = static_cast<double>(QFileInfo(way.path).size());
    if (way.told && size > 0)
        reading.told = [&](std::uint64_t bytes) { return way.told(static_cast<double>(bytes) / size); };
    auto capture = loadCapture(way.path.toStdString(), reading);
    if (!capture) return capture.error();
    CaptureHeader& header = capture->header;
    if (!header.sheet) {
        if (way.sheet.isEmpty())
            return missing("the capture holds no sensor sheet", "choose the sensor's sheet first");
        auto sheet = loadSheet(way.sheet.toStdString());
        if (!sheet) return sheet.error();
        header.sheet = *sheet;
    }
    auto sheet = std::make_shared<const Sheet>(*header.sheet);
    QString notes = sayName(sheet->name);
    if (!header.started.empty())
        notes += QStringLiteral(" · ") + startedWords(QString::fromStdString(header.started));
    if (!header.notes.empty()) notes += QStringLiteral("\n") + sayName(header.notes);
    for (const Sentence& warning : capture->summary.warnings) notes += QStringLiteral("\n") + say(warning);
    const double length_s = capture->readings.empty() ? 0 : toSeconds(capture->readings.back().time);
    SessionOptions options;
    options.guided = false;
    options.replaySpeed = way.speed;
    auto session = Session::replay(std::move(*capture), way.path.toStdString(), options);
    if (!session) return session.error();
    return Opened{std::move(*session), std::move(sheet), QFileInfo(way.path).completeBaseName(), notes, length_s};
}

QStringList BenchDoors::unfinished() {
    QStringList paths;
    for (const std::string& path : unfinishedCaptures(recordingNotes())) paths << QString::fromStdString(path);
    return paths;
}

void BenchDoors::forgetUnfinished(const QString& path) {
    stillwire::forgetUnfinished(recordingNotes(), path.toStdString());
}

QStringList demoCaptures() {
    const std::filesystem::path resources = resourcesFolder();
    if (resources.empty()) return {};
    QDir folder(QString::fromStdString((resources.parent_path() / "demo-sessions").string()));
    if (!folder.exists()) folder.setPath(QString::fromStdString((resources / "demo-sessions").string()));
    QStringList paths;
    for (const QFileInfo& file : folder.entryInfoList({QStringLiteral("*.csv")}, QDir::Files, QDir::Name))
        paths << file.absoluteFilePath();
    return paths;
}

} // namespace stillwire
