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

// Where captures are looked for and made: the folder that was chosen, else the person's data folder.
[[nodiscard]] QString capturesFolder();

// Runs are recorded without being asked, under the time of day and this name.
[[nodiscard]] CapturePlace newCapturePlace(const QString& name);

} // namespace stillwire
