// SPDX-License-Identifier: GPL-3.0-or-later
// What every line-based decoder shares: lines end with LF, CR or both; longer ones than kLongestLine are garbage.
#pragma once

#include "meters/decode/decoder.hpp"

#include <string_view>

namespace stillwire {

inline constexpr std::size_t kLongestLine = 512;

class LineDecoder : public Decoder {
public:
    void push(std::span<const std::uint8_t> bytes, Time arrived, std::vector<Reading>& out) final;
    void reset() final;
    void beginMidStream() final { skipFirst_ = true; }
    [[nodiscard]] std::size_t droppedBytes() const final { return dropped_; }
    [[nodiscard]] Sentence lastComplaint() const final { return complaint_; }

protected:
    // Appends the readings of one line (not empty, no line end), or returns why it has none; empty: taken, or of no
    // interest.
    virtual Sentence line(std::string_view text, Time arrived, std::vector<Reading>& out) = 0;

private:
    void endOfLine(Time arrived, std::vector<Reading>& out);

    std::string line_;
    std::size_t length_ = 0; // of the line so far, also when too long to keep
    bool skipFirst_ = false; // the first line may be the tail of one
    std::size_t dropped_ = 0;
    Sentence complaint_;
};

// A line shortened and made printable, for a complaint.
[[nodiscard]] std::string quoteLine(std::string_view line);

} // namespace stillwire
