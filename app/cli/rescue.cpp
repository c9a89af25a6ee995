// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/rescue.hpp"

#include <cstdlib>
#include <filesystem>

namespace stillwire {
namespace {

namespace fs = std::filesystem;

// Where the window keeps its captures too; empty: nowhere.
fs::path dataFolder() {
    const char* data = std::getenv("XDG_DATA_HOME");
    const char* home = std::getenv("HOME");
    if (data != nullptr && *data != '\0') return fs::path(data) / "stillwire/stillwire/captures";
    return home != nullptr && *home != '\0' ? fs::path(home) / ".local/share/stillwire/stillwire/captures"
                                            : fs::path();
}

// The path of the saved capture; empty: it could not be saved there either.
std::string savedElsewhere(Session& session, const std::string& output) {
    const fs::path folder = dataFolder();
    if (folder.empty()) return {};
    std::error_code failed;
    fs::create_directories(folder, failed);
    for (int i = 1; i < 100; ++i) {
        const std::string number = i == 1 ? "" : "-" + std::to_string(i);
        const fs::path path = folder / (fs::path(output).stem().string() + number + ".csv");
        if (fs::exists(path, failed)) continue;
        session.saveTo(path.string());
        return session.snapshot()->capturePath == path ? path.string() : std::string();
    }
    return {};
}

} // namespace

Status recordedWhole(Session& session, const std::string& output) {
    const auto last = session.snapshot();
    if (last->recorderSays.empty() && last->pendingBytes == 0) return Done{};
    const std::string saved = savedElsewhere(session, output);
    return Error{.where = output,
                 .what = {"the capture may not be whole: %1", {last->recorderSays}},
                 .mend = saved.empty() ? Sentence{"record again elsewhere"}
                                       : Sentence{"the whole of it is in %1", {saved}}};
}

Status recordedSomething(Session& session, const std::string& port) {
    const auto last = session.snapshot();
    if (last->findings->readings > 0 || !last->recorderSays.empty()) return Done{};
    std::error_code failed;
    fs::remove(last->capturePath, failed);
    return Error{.where = port,
                 .what = "no reading came, and no capture is kept",
                 .mend = "switch the meter's data output on; `stillwire listen` shows what it sends"};
}

} // namespace stillwire
