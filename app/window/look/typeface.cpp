// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/typeface.hpp"

#include <QFile>
#include <QFontDatabase>
#include <QStandardPaths>

namespace stillwire {
namespace {

// The fixed-width cut of B612 is listed under the family name of the proportional one, and font matching mixes the
// two. The faces wanted are therefore loaded from their files under a family name nobody else has: "B612" in the name
// table becomes one of the same length, in memory.
const QByteArray kListed = QByteArrayLiteral("B612"), kOurs = QByteArrayLiteral("S612");

QByteArray wide(const QByteArray& ascii) { // UTF-16BE, as name tables hold it
    QByteArray out;
    for (char c : ascii) out.append('\0').append(c);
    return out;
}

QString loadFaces() {
    QString family;
    for (const char* name : {"B612-Regular.otf", "B612-Bold.otf"}) {
        QFile file(QStandardPaths::locate(QStandardPaths::FontsLocation,
                                          QStringLiteral("opentype/b612/") + QLatin1String(name)));
        if (!file.open(QIODevice::ReadOnly)) return {};
        QByteArray face = file.readAll();
        face.replace(wide(kListed), wide(kOurs)).replace(kListed, kOurs);
        const QStringList families =
            QFontDatabase::applicationFontFamilies(QFontDatabase::addApplicationFontFromData(face));
        if (families.isEmpty()) return {};
        family = families.front();
    }
    return family;
}

} // namespace

QString typefaceFamily() {
    static const QString family = [] {
        const QString loaded = loadFaces();
        if (!loaded.isEmpty()) return loaded;
        if (QFontDatabase::families().contains(QStringLiteral("B612"))) return QStringLiteral("B612");
        return QFontDatabase::systemFont(QFontDatabase::GeneralFont).family();
    }();
    return family;
}

} // namespace stillwire
