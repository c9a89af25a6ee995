// SPDX-License-Identifier: GPL-3.0-or-later
// Text of capture rows, and a file that grows by them. What is written is exactly what the analyser gets.
#pragma once

#include "core/base/result.hpp"
#include "core/capture/header.hpp"
#include "core/domain/mark.hpp"
#include "core/domain/reading.hpp"

#include <memory>
#include <string>

namespace stillwire {

inline constexpr const char* kColumns = "time_s,volts,flags,mark\n";

// Shortest decimal that reads back to the same double; time with up to six decimals, none trailing.
[[nodiscard]] std::string formatRow(const Reading& reading);
[[nodiscard]] std::string formatRow(const Mark& mark); // RFC 4180 quoting where the text needs it
[[nodiscard]] std::string formatVolts(double volts_V);
[[nodiscard]] std::string formatTime(Time time);

// Appends whole rows to a file. Not thread-safe but for sync() and inPlace(), which another thread may call.
// A failed write keeps the unwritten rows in memory (pendingBytes()) and says so; the next append or retry() tries
// again.
class CaptureWriter {
public:
    // Creates `path` (an existing file is never overwritten: error) and writes header and columns.
    [[nodiscard]] static Result<CaptureWriter> create(const std::string& path, const CaptureHeader& header);

    CaptureWriter(CaptureWriter&& other) noexcept;
    CaptureWriter& operator=(CaptureWriter&& other) noexcept;
    ~CaptureWriter(); // tries once more to write what is pending

    // A mark with an empty text is no mark and is not written.
    [[nodiscard]] Status append(const Reading& reading);
    [[nodiscard]] Status append(const Mark& mark);
    [[nodiscard]] Status append(const std::string& rows); // as formatRow() makes them, any number
    [[nodiscard]] Status retry();
    [[nodiscard]] Status sync() const; // to the disk
    // Error: `path` no longer leads to this file, which can still be written, but nobody would find it; or another
    // program has cut the file short, and rows that were written are gone from it.
    [[nodiscard]] Status inPlace() const;
    [[nodiscard]] std::size_t pendingBytes() const { return pending_.size(); }
    [[nodiscard]] const std::string& path() const { return path_; }

private:
    struct File; // a descriptor, closed with it
    CaptureWriter() = default;

    std::string path_;
    std::unique_ptr<File> file_;
    std::string pending_;
};

} // namespace stillwire
