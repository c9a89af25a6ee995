// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/write_file.hpp"

#include "core/capture/file_error.hpp"

#include <cerrno>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <unistd.h>

namespace stillwire {

namespace {

namespace fs = std::filesystem;

Error isThere(const std::string& path) {
    return {Error::Kind::badInput, path, 0, "exists already", "give another name, or --force to write over it"};
}

// 0, or errno's value.
int writeAll(int descriptor, const std::string& text) {
    std::size_t done = 0;
    while (done < text.size()) {
        const ssize_t n = ::write(descriptor, text.data() + done, text.size() - done);
        if (n < 0 && errno == EINTR) continue;
        if (n <= 0) return n == 0 ? ENOSPC : errno;
        done += static_cast<std::size_t>(n);
    }
    return 0;
}

Status writeInto(const std::string& path, const std::string& text) {
    const int descriptor = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
    if (descriptor < 0) return fileError(path, Deed::write, errno);
    const int code = writeAll(descriptor, text);
    ::close(descriptor);
    if (code != 0) return fileError(path, Deed::write, code);
    return Done{};
}

} // namespace

Status mayWrite(const std::string& path, bool force, const std::string& input) {
    std::error_code none;
    if (fs::is_directory(path, none)) return fileError(path, Deed::create, EISDIR);
    if (!input.empty() && fs::equivalent(path, input, none))
        return Error{Error::Kind::badInput, path, 0, "is the capture that is read", "give another name"};
    if (!force && fs::is_regular_file(path, none)) return isThere(path);
    return Done{};
}

Status writeWhole(const std::string& path, const std::string& text, bool force) {
    std::error_code none;
    if (fs::exists(path, none) && !fs::is_regular_file(path, none)) return writeInto(path, text);
    std::string beside = path + ".XXXXXX";
    const int descriptor = ::mkstemp(beside.data());
    if (descriptor < 0) return fileError(path, Deed::create, errno);
    const mode_t mask = ::umask(0);
    ::umask(mask);
    int code = ::fchmod(descriptor, 0666 & ~mask) == 0 ? writeAll(descriptor, text) : errno;
    if (code == 0 && ::fsync(descriptor) != 0) code = errno;
    ::close(descriptor);
    // A link takes a name only if nobody has it.
    if (code == 0 && force && ::rename(beside.c_str(), path.c_str()) != 0) code = errno;
    if (code == 0 && !force && ::link(beside.c_str(), path.c_str()) != 0) code = errno;
    if (code != 0 || !force) ::unlink(beside.c_str());
    if (code == EEXIST) return isThere(path);
    if (code != 0) return fileError(path, Deed::write, code);
    return Done{};
}

} // namespace stillwire
