// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/capture_place.hpp"

#include "app/window/settings/settings.hpp"

#include <QCoreApplication>
#include <QDateTime>
#include <QDir>
#include <QStandardPaths>
#include <QTemporaryFile>

namespace stillwire {
namespace {

struct PlaceText {
    Q_DECLARE_TR_FUNCTIONS(PlaceText)
};

constexpr qsizetype kRoom_bytes = 65536; // some minutes of a run

QString in(QStandardPaths::StandardLocation location) {
    return QStandardPaths::writableLocation(location) + QStringLiteral("/captures");
}

bool takesCaptures(const QString& folder) {
    QDir().mkpath(folder);
    QTemporaryFile probe(folder + QStringLiteral("/room-XXXXXX"));
    const QByteArray bytes(kRoom_bytes, '#');
    return probe.open() && probe.write(bytes) == bytes.size() && probe.flush();
}

} // namespace

QString capturesFolder() {
    const QString chosen = Settings().captures();
    return chosen.isEmpty() ? in(QStandardPaths::AppDataLocation) : chosen;
}

CapturePlace newCapturePlace(const QString& name) {
    const QString usual = capturesFolder();
    CapturePlace place;
    QString folder = usual;
    if (!takesCaptures(usual))
        for (const auto other :
             {QStandardPaths::AppDataLocation, QStandardPaths::CacheLocation, QStandardPaths::TempLocation})
            if (takesCaptures(in(other))) {
                folder = in(other);
                place.warning = PlaceText::tr("%1 takes no capture. This run is recorded in %2: copy it from there.")
                                    .arg(QDir::toNativeSeparators(usual), QDir::toNativeSeparators(folder));
                break;
            }
    QString plain;
    for (QChar c : name.toLower()) plain += c.isLetterOrNumber() ? c : QLatin1Char('-');
    const QString stem = QDateTime::currentDateTime().toString(QStringLiteral("yyyy-MM-dd-HHmmss-")) + plain;
    place.path = (folder + QLatin1Char('/') + stem + QStringLiteral(".csv")).toStdString();
    return place;
}

} // namespace stillwire
