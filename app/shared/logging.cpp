// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shared/logging.hpp"

#include "meters/session/log.hpp"

#include <cstdlib>
#include <filesystem>

namespace stillwire {

namespace fs = std::filesystem;

namespace {

std::string stateFolder() {
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
    return failed ? std::string() : (folder / "stillwire").string();
}

} // namespace

std::string logToFile() {
    const std::string folder = stateFolder();
    if (folder.empty()) return {};
    const std::string path = folder + "/stillwire.log";
    openLog(path);
    return path;
}

std::string recordingNotes() {
    const std::string folder = stateFolder();
    return folder.empty() ? folder : folder + "/recording";
}

} // namespace stillwire
