// SPDX-License-Identifier: GPL-3.0-or-later
// Writes the capture as it grows. Rows go into memory and, by a thread of their own, into the file at once; another
// brings the file to the disk once a second. A slow disk holds up nobody; a full one, or a folder that is gone, is
// said, and the whole capture can be saved elsewhere from memory.
#pragma once

#include "core/base/result.hpp"
#include "core/base/time.hpp"
#include "core/capture/header.hpp"
#include "core/capture/writer.hpp"
#include "core/domain/mark.hpp"
#include "core/domain/reading.hpp"
#include "meters/session/row_memory.hpp"
#include "meters/session/unfinished.hpp"

#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

namespace stillwire {

// One thread calls; the others are inside.
class Recorder {
public:
    Recorder() = default;
    ~Recorder() { finish(); }
    Recorder(const Recorder&) = delete;
    Recorder& operator=(const Recorder&) = delete;

    // `notesFolder`: where a capture that was never finished is told from (unfinished.hpp); empty: nowhere.
    [[nodiscard]] Status begin(const std::string& path, const CaptureHeader& header,
                               const std::string& notesFolder = {});
    void append(const Reading& reading);
    void append(const Mark& mark);
    // Waits until every row so far is in the file, but no longer than a moment, and not again while the disk is
    // behind.
    void settle();
    // All rows into a new file, and on there; the old file is left as it is. Goes on beside the recording; after
    // finish(), at once. path() and says() tell how it went.
    void saveTo(const std::string& path);
    void finish(); // writes, syncs, saves what is being saved, ends the threads; nothing is recorded afterwards

    [[nodiscard]] std::string path() const;         // empty: not recording
    [[nodiscard]] Sentence says() const;            // one sentence, empty when all is well
    [[nodiscard]] std::size_t pendingBytes() const; // of rows that are in no file

private:
    // A file, and how many bytes of the rows it was given.
    struct Target {
        std::shared_ptr<CaptureWriter> file;
        std::size_t given = 0;
    };

    void take(const std::string& row);
    void writeLoop(const std::stop_token& stop);
    void syncLoop(const std::stop_token& stop);
    void save(const std::string& path);
    void adopt();                   // under mutex_: the saved file takes the old one's place
    void told(const Status& wrote); // under mutex_
    void noteWhole();               // under mutex_: if every row is in the file, it is finished
    [[nodiscard]] bool recording() const { return writeThread_.joinable(); }

    CaptureHeader header_;
    mutable std::mutex mutex_; // for all that follows
    RowMemory rows_;
    Target target_;
    RecordingNote note_;
    std::optional<Target> saved_; // the write thread takes it over
    std::size_t written_ = 0;     // bytes of rows that are in target_'s file
    Sentence trouble_, syncTrouble_, saveTrouble_;
    Time saveTroubleAt_{0}, behindSince_{0}; // by the waking clock
    bool failing_ = false, behind_ = false, saving_ = false;
    std::condition_variable_any work_, progress_, second_;
    std::jthread saveThread_, syncThread_, writeThread_; // last: end before what they use
};

} // namespace stillwire
