// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/recorder.hpp"

#include "core/base/sentence.hpp"
#include "meters/link/clock.hpp"
#include "meters/session/log.hpp"

#include <cstdio>

namespace stillwire {

namespace {

using namespace std::chrono_literals;

constexpr auto kPatience = 50ms; // a reading must not wait longer for the disk
constexpr auto kRetry = 100ms;   // of a disk that takes nothing
constexpr auto kSync = 1s;
constexpr Time kBehindTold = 1s;
constexpr Time kSaveTold = 20s;

} // namespace

Status Recorder::begin(const std::string& path, const CaptureHeader& header, const std::string& notesFolder) {
    auto made = CaptureWriter::create(path, header);
    if (!made) return made.error();
    header_ = header;
    target_.file = std::make_shared<CaptureWriter>(std::move(made.value()));
    if (!notesFolder.empty()) note_ = RecordingNote(notesFolder, path);
    writeThread_ = std::jthread([this](const std::stop_token& stop) { writeLoop(stop); });
    syncThread_ = std::jthread([this](const std::stop_token& stop) { syncLoop(stop); });
    return Done{};
}

void Recorder::append(const Reading& reading) {
    if (recording()) take(formatRow(reading));
}

void Recorder::append(const Mark& mark) {
    if (recording() && !mark.text().empty()) take(formatRow(mark));
}

void Recorder::take(const std::string& row) {
    {
        const std::lock_guard lock(mutex_);
        rows_.append(row);
    }
    work_.notify_one();
}

void Recorder::settle() {
    if (!recording()) return;
    std::unique_lock lock(mutex_);
    const std::size_t all = rows_.size();
    if (written_ >= all) {
        behind_ = false;
        return;
    }
    if (behind_ || failing_) return;
    behind_ = !progress_.wait_for(lock, kPatience, [this, all] { return failing_ || written_ >= all; });
    if (behind_) behindSince_ = awakeTime();
}

void Recorder::writeLoop(const std::stop_token& stop) {
    std::unique_lock lock(mutex_);
    for (;;) {
        if (failing_)
            work_.wait_for(lock, stop, kRetry, [this] { return saved_.has_value(); });
        else
            work_.wait(lock, stop, [this] { return saved_ || target_.given < rows_.size(); });
        const bool last = stop.stop_requested();
        adopt();
        const std::string more = failing_ ? std::string() : rows_.from(target_.given);
        target_.given += more.size();
        const Target target = target_;
        lock.unlock();
        const Status wrote = more.empty() ? target.file->retry() : target.file->append(more);
        lock.lock();
        written_ = target.given - target.file->pendingBytes();
        told(wrote);
        progress_.notify_all();
        if (last && (failing_ || written_ == rows_.size())) return;
    }
}

void Recorder::told(const Status& wrote) {
    failing_ = !wrote;
    Sentence trouble = wrote ? Sentence{} : wrote.error().sentence();
    if (trouble == trouble_) return;
    if (trouble.empty())
        logInfo("the capture is on the disk again");
    else
        logWarning(trouble.english());
    trouble_ = std::move(trouble);
}

void Recorder::syncLoop(const std::stop_token& stop) {
    std::unique_lock lock(mutex_);
    std::size_t synced = 0;
    while (!second_.wait_for(lock, stop, kSync, [] { return false; }) && !stop.stop_requested()) {
        const auto file = target_.file;
        const std::size_t written = written_;
        lock.unlock();
        Status status = file->inPlace();
        if (status && written != synced) status = file->sync();
        lock.lock();
        synced = written;
        syncTrouble_ = status ? Sentence{} : status.error().sentence();
    }
}

void Recorder::saveTo(const std::string& path) {
    if (!target_.file) return;
    if (!recording()) {
        save(path);
        const std::lock_guard lock(mutex_);
        adopt();
        noteWhole();
        return;
    }
    {
        const std::lock_guard lock(mutex_);
        if (std::exchange(saving_, true)) return; // one at a time; the first is under way
    }
    saveThread_ = std::jthread([this, path] { save(path); });
}

void Recorder::save(const std::string& path) {
    auto made = CaptureWriter::create(path, header_);
    Status status = made ? Status(Done{}) : Status(made.error());
    Target saved;
    if (made) {
        saved.file = std::make_shared<CaptureWriter>(std::move(made.value()));
        for (bool synced = false; status && !synced;) {
            std::string more;
            {
                const std::lock_guard lock(mutex_);
                more = rows_.from(saved.given);
            }
            synced = more.empty();
            status = synced ? saved.file->sync() : saved.file->append(more);
            saved.given += more.size();
        }
        if (!status) std::remove(path.c_str());
    }
    {
        const std::lock_guard lock(mutex_);
        saveTrouble_ = status ? Sentence{} : status.error().sentence();
        saveTroubleAt_ = awakeTime();
        saving_ = false;
        if (status) saved_ = std::move(saved);
    }
    work_.notify_one();
}

void Recorder::adopt() {
    if (!saved_) return;
    target_ = std::move(*saved_);
    saved_.reset();
    note_.movedTo(target_.file->path());
    written_ = target_.given;
    failing_ = behind_ = false;
    syncTrouble_ = {};
    trouble_ = {};
    logInfo("the capture goes on in " + target_.file->path());
}

void Recorder::finish() {
    if (!recording()) return;
    if (saveThread_.joinable()) saveThread_.join();
    for (std::jthread* thread : {&syncThread_, &writeThread_}) {
        thread->request_stop();
        thread->join();
    }
    Status status = target_.file->inPlace();
    if (status) status = target_.file->sync();
    const std::lock_guard lock(mutex_);
    if (!status && trouble_.empty()) trouble_ = status.error().sentence();
    noteWhole();
}

void Recorder::noteWhole() {
    if (trouble_.empty() && written_ == rows_.size()) note_.done();
}

std::string Recorder::path() const {
    const std::lock_guard lock(mutex_);
    return target_.file ? target_.file->path() : std::string();
}

Sentence Recorder::says() const {
    const std::lock_guard lock(mutex_);
    if (!trouble_.empty()) return trouble_;
    if (!saveTrouble_.empty() && awakeTime() - saveTroubleAt_ < kSaveTold) return saveTrouble_;
    if (!syncTrouble_.empty()) return syncTrouble_;
    const Time behind = awakeTime() - behindSince_;
    if (!behind_ || behind < kBehindTold) return {};
    return {"%1: the disk has been busy for %2; the capture goes on in memory",
            {target_.file->path(), seconds(toSeconds(behind))}};
}

std::size_t Recorder::pendingBytes() const {
    const std::lock_guard lock(mutex_);
    return rows_.size() - written_;
}

} // namespace stillwire
