// SPDX-License-Identifier: GPL-3.0-or-later
// What a person may do to a capture on the start page: call it something, and write a line to it. Readings stay as
// they are, byte for byte.
#pragma once

#include "core/base/result.hpp"

#include <QString>

namespace stillwire {

// As a person reads it: without the time of day that stands before the name of a file that was recorded.
[[nodiscard]] QString titleOfCapture(const QString& path);

// The new path. The time of day before the name stays; a file that has the name already is an error.
[[nodiscard]] Result<QString> renameCapture(const QString& path, const QString& title);

// A line that is kept in the capture as a mark; the one written last is the one shown.
[[nodiscard]] Status noteOnCapture(const QString& path, const QString& note);

} // namespace stillwire
