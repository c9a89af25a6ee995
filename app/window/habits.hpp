// SPDX-License-Identifier: GPL-3.0-or-later
// What is remembered of captures from one day to the next, in QSettings.
#pragma once

#include <QStringList>

namespace stillwire::habits {

[[nodiscard]] QStringList recentCaptures();
void rememberCapture(const QString& path); // the newest first

void forgetCapture(const QString& path);
void renameCapture(const QString& from, const QString& to); // keeps its place

} // namespace stillwire::habits
