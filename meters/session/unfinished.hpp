// SPDX-License-Identifier: GPL-3.0-or-later
// Which captures are being recorded, so that one whose program ended early can be offered at the next start: a note
// for each in a folder of the caller's, with a lock that ends with the program, however that ends.
#pragma once

#include <string>
#include <vector>

namespace stillwire {

class RecordingNote {
public:
    RecordingNote() = default; // none
    // The folder is made if it is missing. Where no note can be made there is none: the recording matters more.
    RecordingNote(const std::string& folder, const std::string& capturePath);
    ~RecordingNote(); // leaves the note where it is
    RecordingNote(const RecordingNote&) = delete;
    RecordingNote& operator=(const RecordingNote&) = delete;
    RecordingNote(RecordingNote&& other) noexcept;
    RecordingNote& operator=(RecordingNote&& other) noexcept;

    void movedTo(const std::string& capturePath);
    void done(); // the capture is whole: the note goes

private:
    std::string path_;
    int descriptor_ = -1;
};

// Captures that were begun and not ended, and that no living program records; oldest first. Notes of captures that
// are no longer there are removed.
[[nodiscard]] std::vector<std::string> unfinishedCaptures(const std::string& folder);
// Offered and taken, or not wanted.
void forgetUnfinished(const std::string& folder, const std::string& capturePath);

} // namespace stillwire
