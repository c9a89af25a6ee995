// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/cli/program.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <sys/wait.h>

namespace stillwire::testing {

namespace {

std::string quote(const std::string& text) {
    std::string out = "'";
    for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return out + "'";
}

std::string slurp(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

} // namespace

int Ran::errLines() const { return static_cast<int>(std::count(err.begin(), err.end(), '\n')); }

Folder::Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "stillwire-test-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) std::abort();
    path_ = name;
}

Folder::~Folder() {
    std::error_code none;
    std::filesystem::remove_all(path_, none);
}

std::string Folder::write(const std::string& name, const std::string& bytes) const {
    std::ofstream(path(name), std::ios::binary) << bytes;
    return path(name);
}

std::string Folder::read(const std::string& name) const { return slurp(path(name)); }

Ran run(const std::vector<std::string>& arguments, const std::string& environment) {
    const Folder folder;
    std::string line = "env -u DISPLAY -u WAYLAND_DISPLAY XDG_STATE_HOME=" + quote(folder.path("state")) + " " +
                       environment + " " + quote(STILLWIRE_PROGRAM);
    for (const std::string& a : arguments) line += " " + quote(a);
    line += " </dev/null >" + quote(folder.path("out")) + " 2>" + quote(folder.path("err"));
    const int raw = std::system(line.c_str());
    return {WIFEXITED(raw) ? WEXITSTATUS(raw) : 128 + WTERMSIG(raw), folder.read("out"), folder.read("err")};
}

} // namespace stillwire::testing
