// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/line_decoder.hpp"

namespace stillwire {

void LineDecoder::push(std::span<const std::uint8_t> bytes, Time arrived, std::vector<Reading>& out) {
    for (const std::uint8_t byte : bytes) {
        if (byte == '\n' || byte == '\r') {
            endOfLine(arrived, out);
            continue;
        }
        if (length_ < kLongestLine) line_ += static_cast<char>(byte);
        ++length_;
        if (length_ == kLongestLine + 1) {
            // Counted now: a stream without line ends must show as garbage while it runs.
            dropped_ += length_;
            complaint_ = "a line of more than 512 bytes: wrong baud rate, or another kind of meter";
        } else if (length_ > kLongestLine) {
            ++dropped_;
        }
    }
}

void LineDecoder::endOfLine(Time arrived, std::vector<Reading>& out) {
    const bool tooLong = length_ > kLongestLine;
    const bool skip = skipFirst_ && length_ > 0;
    if (length_ > 0) skipFirst_ = false;
    if (skip && !tooLong) {
        dropped_ += length_;
    } else if (length_ > 0 && !tooLong) {
        const Sentence why = line(line_, arrived, out);
        if (!why.empty()) {
            dropped_ += length_;
            complaint_ = why;
        }
    }
    line_.clear();
    length_ = 0;
}

void LineDecoder::reset() {
    if (length_ <= kLongestLine) dropped_ += length_;
    line_.clear();
    length_ = 0;
    skipFirst_ = false;
}

std::string quoteLine(std::string_view line) {
    std::string out = "\"";
    for (const char c : line.substr(0, 40)) out += c >= ' ' && c <= '~' ? c : '.';
    return out + (line.size() > 40 ? "…\"" : "\"");
}

} // namespace stillwire
