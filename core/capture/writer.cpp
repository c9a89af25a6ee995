// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/writer.hpp"

#include "core/capture/file_error.hpp"

#include <atomic>
#include <cerrno>
#include <cstdint>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace stillwire {

struct CaptureWriter::File {
    explicit File(int fd) : descriptor(fd) {}
    File(const File&) = delete;
    File& operator=(const File&) = delete;
    ~File() { ::close(descriptor); }

    const int descriptor;
    std::atomic<std::int64_t> written{0}; // bytes
};

namespace {

int createFile(const std::string& path) {
    return ::open(path.c_str(), O_RDWR | O_CREAT | O_EXCL | O_APPEND | O_CLOEXEC, 0666);
}

// Writes as much as goes, takes it off the front of `bytes`; 0, or errno's value.
int writeAndDrop(int descriptor, std::string& bytes, std::atomic<std::int64_t>& total) {
    std::size_t written = 0;
    int code = 0;
    while (written < bytes.size() && code == 0) {
        const ssize_t n = ::write(descriptor, bytes.data() + written, bytes.size() - written);
        if (n > 0) {
            written += static_cast<std::size_t>(n);
        } else if (n == 0) {
            code = ENOSPC;
        } else if (errno != EINTR) {
            code = errno;
        }
    }
    bytes.erase(0, written);
    total += static_cast<std::int64_t>(written);
    return code;
}

} // namespace

Result<CaptureWriter> CaptureWriter::create(const std::string& path, const CaptureHeader& header) {
    const int descriptor = createFile(path);
    if (descriptor < 0) return fileError(path, Deed::create, errno);
    CaptureWriter writer;
    writer.path_ = path;
    writer.file_ = std::make_unique<File>(descriptor);
    writer.pending_ = formatHeader(header) + kColumns;
    if (const int code = writeAndDrop(descriptor, writer.pending_, writer.file_->written)) {
        writer.pending_.clear();
        ::unlink(path.c_str());
        return fileError(path, Deed::write, code);
    }
    return writer;
}

CaptureWriter::CaptureWriter(CaptureWriter&& other) noexcept = default;

CaptureWriter& CaptureWriter::operator=(CaptureWriter&& other) noexcept {
    if (this != &other) {
        if (file_) static_cast<void>(retry());
        path_ = std::move(other.path_);
        file_ = std::move(other.file_);
        pending_ = std::move(other.pending_);
        other.pending_.clear();
    }
    return *this;
}

CaptureWriter::~CaptureWriter() {
    if (file_) static_cast<void>(retry());
}

Status CaptureWriter::append(const Reading& reading) { return append(formatRow(reading)); }

Status CaptureWriter::append(const Mark& mark) {
    if (mark.text().empty()) return Done{};
    return append(formatRow(mark));
}

Status CaptureWriter::append(const std::string& rows) {
    pending_ += rows;
    return retry();
}

Status CaptureWriter::retry() {
    if (pending_.empty()) return Done{};
    if (const int code = writeAndDrop(file_->descriptor, pending_, file_->written))
        return fileError(path_, Deed::write, code);
    return Done{};
}

Status CaptureWriter::sync() const {
    int code = 0;
    do {
        code = ::fdatasync(file_->descriptor) == 0 ? 0 : errno;
    } while (code == EINTR);
    // A pipe or a device has nothing to sync.
    if (code != 0 && code != EINVAL && code != EROFS) return fileError(path_, Deed::save, code);
    return Done{};
}

Status CaptureWriter::inPlace() const {
    struct stat there {
    }, ours{};
    if (::stat(path_.c_str(), &there) == 0 && ::fstat(file_->descriptor, &ours) == 0 && there.st_ino == ours.st_ino &&
        there.st_dev == ours.st_dev) {
        if (!S_ISREG(ours.st_mode) || ours.st_size >= file_->written) return Done{};
        return Error{Error::Kind::badInput, path_, 0, "another program has cut the file short",
                     "save the capture in another folder"};
    }
    return Error{Error::Kind::badInput, path_, 0, "the file or its folder is gone",
                 "save the capture in another folder"};
}

} // namespace stillwire
