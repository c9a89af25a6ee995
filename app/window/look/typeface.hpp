// SPDX-License-Identifier: GPL-3.0-or-later
// The face of the window: B612 where it is installed, else the system's own.
#pragma once

#include <QString>

namespace stillwire {

// Needs a QGuiApplication. Loads once.
[[nodiscard]] QString typefaceFamily();

} // namespace stillwire
