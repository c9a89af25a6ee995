// SPDX-License-Identifier: GPL-3.0-or-later
// Where a run is recorded: in the person's data folder, or, if its disk takes nothing, where there is room.
#pragma once

#include <string>

#include <QString>

namespace stillwire {

struct CapturePlace {
    std::string path; // of a new file; nothing is there yet
    QString warning;  // one sentence, if it is not the usual folder
};

// Runs are recorded without being asked, under the time of day and this name.
[[nodiscard]] CapturePlace newCapturePlace(const QString& name);

} // namespace stillwire
