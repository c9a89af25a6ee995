// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shared/resources.hpp"

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <sstream>

namespace stillwire {

namespace fs = std::filesystem;

fs::path resourcesFolder() {
    if (const char* told = std::getenv("STILLWIRE_RESOURCES"); told != nullptr && *told != '\0') return told;
    std::error_code none;
    const fs::path program = fs::read_symlink("/proc/self/exe", none);
    if (none) return {};
    // build/PRESET/bin/stillwire in the tree; PREFIX/bin/stillwire when installed.
    for (fs::path up = program.parent_path(); up.has_relative_path(); up = up.parent_path()) {
        if (fs::is_directory(up / "resources" / "sheets", none)) return up / "resources";
        if (fs::is_directory(up / "share" / "stillwire" / "sheets", none)) return up / "share" / "stillwire";
    }
    return {};
}

std::vector<Named> listNamed(const std::string& kind) {
    std::vector<Named> found;
    std::error_code none;
    const fs::path folder = resourcesFolder();
    if (folder.empty()) return found;
    for (const auto& entry : fs::directory_iterator(folder / kind, none))
        if (entry.path().extension() == ".toml")
            found.push_back({entry.path().stem().string(), entry.path().string()});
    std::sort(found.begin(), found.end(), [](const Named& a, const Named& b) { return a.name < b.name; });
    return found;
}

std::string shippedOr(const std::string& path) {
    std::error_code none;
    const fs::path resources = resourcesFolder();
    if (path.rfind("demo-sessions/", 0) != 0 || resources.empty() || fs::exists(path, none)) return path;
    for (const fs::path& beside : {resources.parent_path(), resources})
        if (fs::exists(beside / path, none)) return (beside / path).string();
    return path;
}

Result<std::string> pathOf(const std::string& given, const std::string& kind) {
    if (given.find('/') != std::string::npos || given.ends_with(".toml")) return given;
    std::string known;
    for (const Named& n : listNamed(kind)) {
        if (n.name == given) return n.path;
        known += (known.empty() ? "" : ", ") + n.name;
    }
    Error e;
    e.where = given;
    e.what = {"no such name among the %1", {byName(kind)}};
    e.mend = known.empty() ? Sentence{"give a path to a .toml file"}
                           : Sentence{"give a path to a .toml file, or one of: %1", {known}};
    return e;
}

Result<std::string> readText(const std::string& path) {
    std::error_code none;
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    if (!in || fs::is_directory(path, none)) {
        Error e;
        e.where = path;
        e.what = {"cannot be opened: %1", {in ? std::strerror(EISDIR) : std::strerror(errno)}};
        e.mend = "check the path and its permissions";
        return e;
    }
    text << in.rdbuf();
    return text.str();
}

namespace {

template <class T> Result<T> loadAs(const std::string& given, const char* kind,
                                    Result<T> (*parse)(std::string_view, const std::string&)) {
    auto path = pathOf(given, kind);
    if (!path) return path.error();
    auto text = readText(*path);
    if (!text) return text.error();
    return parse(*text, *path);
}

} // namespace

Result<Sheet> loadSheet(const std::string& given) { return loadAs(given, "sheets", parseSheet); }
Result<MeterTraits> loadMeter(const std::string& given) { return loadAs(given, "meters", parseMeterTraits); }
Result<MeterDescription> loadDescription(const std::string& given) {
    return loadAs(given, "meters", parseMeterDescription);
}

std::vector<MeterCandidate> loadCandidates() {
    std::vector<MeterCandidate> out;
    for (const Named& named : listNamed("meters"))
        if (auto description = loadDescription(named.path)) out.push_back({named.name, std::move(*description)});
    return out;
}

} // namespace stillwire
