// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/habits.hpp"

#include <QFileInfo>
#include <QSettings>

namespace stillwire::habits {
namespace {

constexpr int kRecents = 12;
const QString kRecent = QStringLiteral("recent"), kOpen = QStringLiteral("open");

} // namespace

QStringList recentCaptures() { return QSettings().value(kRecent).toStringList(); }

void rememberCapture(const QString& path) {
    if (path.isEmpty()) return;
    QStringList recent = recentCaptures();
    recent.removeAll(path);
    recent.prepend(path);
    QSettings().setValue(kRecent, QStringList(recent.mid(0, kRecents)));
}

void keepOpen(const QString& path) { QSettings().setValue(kOpen, path); }

QString keptOpen() {
    const QString path = QSettings().value(kOpen).toString();
    return QFileInfo::exists(path) ? path : QString();
}

} // namespace stillwire::habits
