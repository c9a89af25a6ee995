// SPDX-License-Identifier: GPL-3.0-or-later
// Sheets, meter descriptions and scripts by name or path. Names are the files' own, without .toml.
#pragma once

#include "core/base/result.hpp"
#include "core/sheet/meter_traits.hpp"
#include "core/sheet/sheet.hpp"
#include "meters/describe/description.hpp"
#include "meters/find/find_meter.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace stillwire {

// The resources folder: $STILLWIRE_RESOURCES, or beside the build tree the program runs from, or the installed share
// folder; empty if none exists.
[[nodiscard]] std::filesystem::path resourcesFolder();

struct Named {
    std::string name; // what an option takes
    std::string path;
};
// `kind` is "sheets", "meters" or "bench" (scripts of the fault bench); sorted by name.
[[nodiscard]] std::vector<Named> listNamed(const std::string& kind);

// The capture as it was named, or the one of that name that ships: "demo-sessions/good-pedal.csv" from any folder.
[[nodiscard]] std::string shippedOr(const std::string& path);

// A path if it holds '/' or ends in .toml, else a name among `kind`. Error: unknown name (the known ones are told).
[[nodiscard]] Result<std::string> pathOf(const std::string& given, const std::string& kind);

// The whole file. Error: cannot be opened or read, with the system's reason.
[[nodiscard]] Result<std::string> readText(const std::string& path);

[[nodiscard]] Result<Sheet> loadSheet(const std::string& given);
[[nodiscard]] Result<MeterTraits> loadMeter(const std::string& given);            // what the judgement needs
[[nodiscard]] Result<MeterDescription> loadDescription(const std::string& given); // and how to talk to it

// Every meter that is known by name; one that does not read is left out: `stillwire meters` says what is wrong with
// it.
[[nodiscard]] std::vector<MeterCandidate> loadCandidates();

} // namespace stillwire
