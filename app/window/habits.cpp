// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/habits.hpp"

#include <QSettings>

namespace stillwire::habits {
namespace {

constexpr int kRecents = 12;
const QString kRecent = QStringLiteral("recent");

} // namespace

QStringList recentCaptures() { return QSettings().value(kRecent).toStringList(); }

void rememberCapture(const QString& path) {
    if (path.isEmpty()) return;
    QStringList recent = recentCaptures();
    recent.removeAll(path);
    recent.prepend(path);
    QSettings().setValue(kRecent, QStringList(recent.mid(0, kRecents)));
}

void forgetCapture(const QString& path) {
    QStringList recent = recentCaptures();
    recent.removeAll(path);
    QSettings().setValue(kRecent, recent);
}

void renameCapture(const QString& from, const QString& to) {
    QStringList recent = recentCaptures();
    recent.replaceInStrings(from, to);
    QSettings().setValue(kRecent, recent);
}

} // namespace stillwire::habits
