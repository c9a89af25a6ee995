// SPDX-License-Identifier: GPL-3.0-or-later
// Raw bytes beside what a decoder makes of them: rows of at most 16 bytes, a row ending where a frame does.
#pragma once

#include "meters/decode/decoder.hpp"
#include "meters/find/heard.hpp"

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace stillwire {

class ByteRows {
public:
    explicit ByteRows(std::unique_ptr<Decoder> decoder) : decoder_(std::move(decoder)) {} // null: bytes alone

    // The rows that are whole now, each with its line end.
    [[nodiscard]] std::string take(std::span<const std::uint8_t> bytes, Time at);
    [[nodiscard]] std::string finish(); // the row that has begun: the bytes pause, or it is over

    [[nodiscard]] std::size_t readings() const { return readings_; }
    [[nodiscard]] std::size_t droppedBytes() const { return decoder_ ? decoder_->droppedBytes() : 0; }
    [[nodiscard]] const Heard& heard() const { return heard_; } // the last 64 KiB or less

private:
    void endRow(std::string& out, const std::string& says);
    [[nodiscard]] std::string decode(std::uint8_t byte, Time at);

    std::unique_ptr<Decoder> decoder_;
    std::vector<std::uint8_t> row_;
    std::string says_;     // of a frame that ended with CR: the LF behind it still belongs to it
    Time at_{0}, last_{0}; // of the row's first byte, and of the newest
    std::size_t readings_ = 0;
    Heard heard_;
};

// "0.812 V hold", "no number: overload"
[[nodiscard]] std::string readingText(const Reading& reading, NotVolts notVolts);

} // namespace stillwire
