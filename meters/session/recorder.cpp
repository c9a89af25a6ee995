// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/recorder.hpp"

#include "meters/session/log.hpp"

namespace stillwire {

Status Recorder::begin(const std::string& path, const CaptureHeader& header) {
    auto made = CaptureWriter::create(path, header);
    if (!made) return made.error();
    writer_ = std::move(made.value());
    syncThread_ = std::jthread([this](const std::stop_token& stop) { syncLoop(stop); });
    return Done{};
}

void Recorder::append(const Reading& reading) {
    if (writer_) took(writer_->append(reading));
}

void Recorder::append(const Mark& mark) {
    if (writer_) took(writer_->append(mark));
}

void Recorder::retry() {
    if (writer_ && writer_->pendingBytes() > 0) took(writer_->retry());
}

void Recorder::took(const Status& status) {
    dirty_.store(true, std::memory_order_relaxed);
    const std::string trouble = status ? std::string() : status.error().text();
    if (trouble != trouble_) {
        if (trouble.empty())
            logInfo("the capture is on the disk again");
        else
            logWarning(trouble);
    }
    trouble_ = trouble;
}

void Recorder::saveTo(const std::string& path) {
    if (!writer_) return;
    const std::lock_guard lock(fileMutex_);
    const Status moved = writer_->moveTo(path);
    took(moved);
    if (!moved) return;
    const std::lock_guard syncLock(syncMutex_);
    syncTrouble_.clear();
}

void Recorder::finish() {
    if (syncThread_.joinable()) {
        syncThread_.request_stop();
        wake_.notify_all();
        syncThread_.join();
    }
    if (!writer_) return;
    retry();
    if (const Status synced = writer_->sync(); !synced && trouble_.empty()) trouble_ = synced.error().text();
}

std::string Recorder::path() const { return writer_ ? writer_->path() : std::string(); }

std::string Recorder::says() const {
    if (!trouble_.empty()) return trouble_;
    const std::lock_guard lock(syncMutex_);
    return syncTrouble_;
}

void Recorder::syncLoop(const std::stop_token& stop) {
    std::mutex waiting;
    std::unique_lock lock(waiting);
    while (!stop.stop_requested()) {
        wake_.wait_for(lock, stop, std::chrono::seconds(1), [] { return false; });
        if (!dirty_.exchange(false)) continue;
        const std::lock_guard file(fileMutex_);
        const Status synced = writer_->sync();
        const std::lock_guard guard(syncMutex_);
        syncTrouble_ = synced ? std::string() : synced.error().text();
    }
}

} // namespace stillwire
