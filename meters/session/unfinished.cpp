// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/unfinished.hpp"

#include <algorithm>
#include <cerrno>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sys/file.h>
#include <unistd.h>
#include <utility>

namespace stillwire {

namespace fs = std::filesystem;

namespace {

constexpr const char* kEnding = ".recording";

// Locked for this process, or -1: somebody else holds it, or it is gone.
int lockNote(const std::string& path, int flags) {
    const int descriptor = open(path.c_str(), flags | O_RDWR | O_CLOEXEC, 0666);
    if (descriptor < 0 || flock(descriptor, LOCK_EX | LOCK_NB) == 0) return descriptor;
    close(descriptor);
    return -1;
}

// Calls `take(note, capture)` for every note that nobody holds.
template <class Take> void forEachLeft(const std::string& folder, const Take& take) {
    std::error_code none;
    std::vector<std::pair<fs::file_time_type, std::string>> notes;
    for (const auto& entry : fs::directory_iterator(folder, none))
        if (entry.path().extension() == kEnding) notes.emplace_back(entry.last_write_time(none), entry.path());
    std::sort(notes.begin(), notes.end());
    for (const auto& [when, note] : notes) {
        const int descriptor = lockNote(note, 0);
        if (descriptor < 0) continue;
        std::ifstream file(note, std::ios::binary);
        const std::string capture((std::istreambuf_iterator<char>(file)), {});
        take(note, capture);
        close(descriptor);
    }
}

} // namespace

RecordingNote::RecordingNote(const std::string& folder, const std::string& capturePath) {
    std::error_code failed;
    fs::create_directories(folder, failed);
    for (int i = 0; i < 1000 && descriptor_ < 0; ++i) {
        path_ = folder + "/" + std::to_string(getpid()) + "-" + std::to_string(i) + kEnding;
        descriptor_ = lockNote(path_, O_CREAT | O_EXCL);
        if (descriptor_ < 0 && errno != EEXIST) return;
    }
    movedTo(capturePath);
}

RecordingNote::~RecordingNote() {
    if (descriptor_ >= 0) close(descriptor_);
}

RecordingNote::RecordingNote(RecordingNote&& other) noexcept
    : path_(std::move(other.path_)), descriptor_(std::exchange(other.descriptor_, -1)) {}

RecordingNote& RecordingNote::operator=(RecordingNote&& other) noexcept {
    std::swap(path_, other.path_);
    std::swap(descriptor_, other.descriptor_);
    return *this;
}

void RecordingNote::movedTo(const std::string& capturePath) {
    if (descriptor_ < 0) return;
    std::error_code failed;
    const std::string text = fs::absolute(capturePath, failed).lexically_normal().string();
    if (pwrite(descriptor_, text.data(), text.size(), 0) == static_cast<ssize_t>(text.size()))
        static_cast<void>(ftruncate(descriptor_, static_cast<off_t>(text.size())) == 0);
}

void RecordingNote::done() {
    if (descriptor_ >= 0) unlink(path_.c_str());
}

std::vector<std::string> unfinishedCaptures(const std::string& folder) {
    std::vector<std::string> captures;
    forEachLeft(folder, [&captures](const std::string& note, const std::string& capture) {
        std::error_code none;
        if (fs::is_regular_file(capture, none))
            captures.push_back(capture);
        else
            fs::remove(note, none);
    });
    return captures;
}

void forgetUnfinished(const std::string& folder, const std::string& capturePath) {
    forEachLeft(folder, [&capturePath](const std::string& note, const std::string& capture) {
        std::error_code none;
        if (capture == capturePath) fs::remove(note, none);
    });
}

} // namespace stillwire
