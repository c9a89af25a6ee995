// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/logging.hpp"

#include "meters/session/log.hpp"

#include <cstdlib>
#include <filesystem>

namespace stillwire {

namespace fs = std::filesystem;

std::string logToFile() {
    const char* state = std::getenv("XDG_STATE_HOME");
    const char* home = std::getenv("HOME");
    fs::path folder;
    if (state != nullptr && *state != '\0')
        folder = state;
    else if (home != nullptr && *home != '\0')
        folder = fs::path(home) / ".local" / "state";
    else
        return {};
    std::error_code failed;
    fs::create_directories(folder / "stillwire", failed);
    if (failed) return {};
    const std::string path = (folder / "stillwire" / "stillwire.log").string();
    openLog(path);
    return path;
}

} // namespace stillwire
