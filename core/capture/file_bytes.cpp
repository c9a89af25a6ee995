// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/file_bytes.hpp"

#include "core/capture/file_error.hpp"

#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

namespace stillwire {

Result<FileBytes> FileBytes::open(const std::string& path) {
    const int descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (descriptor < 0) return fileError(path, Deed::open, errno);
    FileBytes file(path, descriptor);
    struct stat about {};
    if (::fstat(descriptor, &about) == 0 && S_ISDIR(about.st_mode)) return fileError(path, Deed::read, EISDIR);
    ::posix_fadvise(descriptor, 0, 0, POSIX_FADV_SEQUENTIAL);
    return file;
}

FileBytes::FileBytes(FileBytes&& other) noexcept
    : path_(std::move(other.path_)), descriptor_(std::exchange(other.descriptor_, -1)) {}

FileBytes::~FileBytes() {
    if (descriptor_ >= 0) ::close(descriptor_);
}

Result<std::size_t> FileBytes::read(char* into, std::size_t most) {
    ssize_t n = 0;
    do {
        n = ::read(descriptor_, into, most);
    } while (n < 0 && errno == EINTR);
    if (n < 0) return fileError(path_, Deed::read, errno);
    return static_cast<std::size_t>(n);
}

} // namespace stillwire
