// SPDX-License-Identifier: GPL-3.0-or-later
// Writes the capture as it grows; a thread of its own brings it to the disk once a second, so that a slow disk holds
// up nobody. Rows the disk does not take stay in memory and are tried again.
#pragma once

#include "core/base/result.hpp"
#include "core/capture/header.hpp"
#include "core/capture/mark.hpp"
#include "core/capture/reading.hpp"
#include "core/capture/writer.hpp"

#include <atomic>
#include <condition_variable>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

namespace stillwire {

// One thread appends; the sync thread is inside.
class Recorder {
public:
    Recorder() = default;
    ~Recorder() { finish(); }
    Recorder(const Recorder&) = delete;
    Recorder& operator=(const Recorder&) = delete;

    [[nodiscard]] Status begin(const std::string& path, const CaptureHeader& header);
    void append(const Reading& reading);
    void append(const Mark& mark);
    void retry();                         // rows in memory, if there are any
    void saveTo(const std::string& path); // says() tells how it went
    void finish();                        // writes, syncs, ends the thread; nothing is recorded afterwards

    [[nodiscard]] std::string path() const; // empty: not recording
    [[nodiscard]] std::string says() const; // one sentence, empty when all is well
    [[nodiscard]] std::size_t pendingBytes() const { return writer_ ? writer_->pendingBytes() : 0; }

private:
    void took(const Status& status);
    void syncLoop(const std::stop_token& stop);

    std::optional<CaptureWriter> writer_; // moved to another file only under fileMutex_
    std::string trouble_;                 // of writing; the appending thread's
    std::mutex fileMutex_;
    std::atomic<bool> dirty_{false};
    mutable std::mutex syncMutex_;
    std::string syncTrouble_; // guarded by syncMutex_
    std::condition_variable_any wake_;
    std::jthread syncThread_; // last: ends before what it uses
};

} // namespace stillwire
