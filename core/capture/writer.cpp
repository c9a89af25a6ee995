// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/writer.hpp"

#include "core/capture/file_error.hpp"

#include <array>
#include <cerrno>
#include <fcntl.h>
#include <mutex>
#include <unistd.h>

namespace stillwire {

struct CaptureWriter::File {
    explicit File(int fd) : descriptor(fd) {}
    File(const File&) = delete;
    File& operator=(const File&) = delete;
    ~File() { ::close(descriptor); }

    const int descriptor;
};

// sync() may run in another thread while moveTo() changes the file: it holds the one it took.
struct CaptureWriter::Holder {
    std::mutex mutex;
    std::shared_ptr<File> file; // guarded by mutex

    std::shared_ptr<File> take() {
        const std::lock_guard lock(mutex);
        return file;
    }
    void put(std::shared_ptr<File> other) {
        const std::lock_guard lock(mutex);
        file.swap(other);
    }
};

namespace {

int createFile(const std::string& path) {
    return ::open(path.c_str(), O_RDWR | O_CREAT | O_EXCL | O_APPEND | O_CLOEXEC, 0666);
}

// Writes as much as goes, takes it off the front of `bytes`; 0, or errno's value.
int writeAndDrop(int descriptor, std::string& bytes) {
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
    return code;
}

int copyAll(int from, int to) {
    std::array<char, 65536> block{};
    off_t offset = 0;
    for (;;) {
        const ssize_t n = ::pread(from, block.data(), block.size(), offset);
        if (n == 0) return 0;
        if (n < 0) {
            if (errno == EINTR) continue;
            return errno;
        }
        std::string bytes(block.data(), static_cast<std::size_t>(n));
        if (const int code = writeAndDrop(to, bytes)) return code;
        offset += n;
    }
}

} // namespace

Result<CaptureWriter> CaptureWriter::create(const std::string& path, const CaptureHeader& header) {
    const int descriptor = createFile(path);
    if (descriptor < 0) return fileError(path, "create", errno);
    CaptureWriter writer;
    writer.path_ = path;
    writer.holder_ = std::make_unique<Holder>();
    writer.holder_->file = std::make_shared<File>(descriptor);
    writer.pending_ = formatHeader(header) + kColumns;
    if (const int code = writeAndDrop(descriptor, writer.pending_)) {
        writer.pending_.clear();
        ::unlink(path.c_str());
        return fileError(path, "write", code);
    }
    return writer;
}

CaptureWriter::CaptureWriter(CaptureWriter&& other) noexcept = default;

CaptureWriter& CaptureWriter::operator=(CaptureWriter&& other) noexcept {
    if (this != &other) {
        if (holder_) static_cast<void>(retry());
        path_ = std::move(other.path_);
        holder_ = std::move(other.holder_);
        pending_ = std::move(other.pending_);
        other.pending_.clear();
    }
    return *this;
}

CaptureWriter::~CaptureWriter() {
    if (holder_) static_cast<void>(retry());
}

Status CaptureWriter::append(const Reading& reading) { return write(formatRow(reading)); }

Status CaptureWriter::append(const Mark& mark) {
    if (mark.text.empty()) return Done{};
    return write(formatRow(mark));
}

Status CaptureWriter::write(const std::string& row) {
    pending_ += row;
    return retry();
}

Status CaptureWriter::retry() {
    if (pending_.empty()) return Done{};
    if (const int code = writeAndDrop(holder_->take()->descriptor, pending_)) return fileError(path_, "write", code);
    return Done{};
}

Status CaptureWriter::sync() const {
    const auto file = holder_->take();
    int code = 0;
    do {
        code = ::fdatasync(file->descriptor) == 0 ? 0 : errno;
    } while (code == EINTR);
    // A pipe or a device has nothing to sync.
    if (code != 0 && code != EINVAL && code != EROFS) return fileError(path_, "save", code);
    return Done{};
}

Status CaptureWriter::moveTo(const std::string& otherPath) {
    const auto old = holder_->take();
    const int descriptor = createFile(otherPath);
    if (descriptor < 0) return fileError(otherPath, "create", errno);
    auto file = std::make_shared<File>(descriptor);
    // A row that the old file holds half of is whole again here: its other half is the first that is pending.
    std::string rest = pending_;
    int code = copyAll(old->descriptor, descriptor);
    if (code == 0) code = writeAndDrop(descriptor, rest);
    if (code == 0 && ::fdatasync(descriptor) != 0) code = errno;
    if (code != 0) {
        ::unlink(otherPath.c_str());
        return fileError(otherPath, "write", code);
    }
    pending_.clear();
    holder_->put(std::move(file));
    path_ = otherPath;
    return Done{};
}

} // namespace stillwire
