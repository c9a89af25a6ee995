// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/find/likeness.hpp"

#include "meters/decode/line_decoder.hpp"
#include "meters/decode/segments.hpp"

#include <algorithm>
#include <bit>
#include <cstdio>

namespace stillwire {

namespace {

constexpr double kText = 0.97;                         // printable share of text, less a torn byte or two
constexpr std::size_t kFewBytes = 12;                  // fewer say nothing of a parity
constexpr Time kPause = std::chrono::milliseconds(40); // between two packets
constexpr std::size_t kPackets = 3;                    // of one length that make a habit
constexpr int kFrames = 2;                             // LCD frames in a row

bool isPrintable(std::uint8_t byte) {
    return (byte >= 0x20 && byte < 0x7F) || byte == '\t' || byte == '\r' || byte == '\n';
}

double printableShare(const std::vector<std::uint8_t>& bytes) {
    const auto count = std::count_if(bytes.begin(), bytes.end(), isPrintable);
    return bytes.empty() ? 0 : static_cast<double>(count) / static_cast<double>(bytes.size());
}

// The parity bit makes the number of ones in a byte odd, or even. The same for all, and not by a top bit that is
// always 0: then it is no parity.
std::optional<Parity> parityOf(const std::vector<std::uint8_t>& bytes) {
    if (bytes.size() < kFewBytes) return std::nullopt;
    std::size_t odd = 0, top = 0;
    for (const std::uint8_t byte : bytes) {
        odd += static_cast<std::size_t>(std::popcount(byte)) % 2;
        top += byte >> 7;
    }
    if (top == 0) return std::nullopt;
    if (odd == bytes.size()) return Parity::odd;
    if (odd == 0) return Parity::even;
    return std::nullopt;
}

int longestRunOfLcdFrames(const std::vector<std::uint8_t>& bytes) {
    int run = 0, longest = 0;
    std::size_t filled = 0;
    for (const std::uint8_t byte : bytes) {
        if (byte >> 4 == filled + 1) {
            ++filled;
        } else {
            run = 0;
            filled = byte >> 4 == 1 ? 1 : 0;
        }
        if (filled < kSegmentFrame) continue;
        filled = 0;
        longest = std::max(longest, ++run);
    }
    return longest;
}

// Whole lines: what stands between two line ends.
void readLines(const std::vector<std::uint8_t>& bytes, Likeness& look) {
    std::string line;
    bool whole = false, same = true;
    std::size_t length = 0, lines = 0;
    for (const std::uint8_t byte : bytes) {
        if (byte != '\r' && byte != '\n') {
            line += static_cast<char>(byte);
            continue;
        }
        if (whole && !line.empty()) {
            same = same && (lines == 0 || line.size() == length);
            length = line.size();
            ++lines;
            look.line = line;
        }
        whole = true;
        line.clear();
    }
    if (lines >= 2 && same) look.lineLength = length;
}

// Bytes that come without a pause are one packet; the first and the last may be torn.
void readPackets(const Heard& heard, Likeness& look) {
    std::vector<Heard::Arrival> packets;
    Time last{-1};
    for (const Heard::Arrival& arrival : heard.arrivals) {
        if (packets.empty() || arrival.at - last > kPause)
            packets.push_back(arrival);
        else
            packets.back().bytes += arrival.bytes;
        last = arrival.at;
    }
    if (packets.size() < 2) return;
    look.interval_s = toSeconds(packets.back().at - packets.front().at) / static_cast<double>(packets.size() - 1);
    if (packets.size() < kPackets + 1) return;
    const std::size_t length = packets[1].bytes;
    const bool same = std::all_of(packets.begin() + 1, packets.end() - 1,
                                  [length](const Heard::Arrival& packet) { return packet.bytes == length; });
    if (same) look.packetBytes = length;
}

} // namespace

Heard sevenBits(const Heard& heard) {
    Heard out = heard;
    for (std::uint8_t& byte : out.bytes) byte &= 0x7F;
    return out;
}

Likeness likenessOf(const Heard& heard) {
    Likeness look;
    look.bytes = heard.bytes.size();
    if (heard.bytes.empty()) return look;
    look.parity = parityOf(heard.bytes);
    if (look.parity && printableShare(sevenBits(heard).bytes) < kText) look.parity.reset();
    const std::vector<std::uint8_t> bytes = look.parity ? sevenBits(heard).bytes : heard.bytes;
    look.printable = printableShare(bytes);
    readPackets(heard, look);
    if (longestRunOfLcdFrames(bytes) >= kFrames) {
        look.shape = ByteShape::lcdFrames;
    } else if (look.printable >= kText) {
        look.shape = ByteShape::textLines;
        readLines(bytes, look);
    } else {
        look.shape = look.packetBytes > 0 ? ByteShape::packets : ByteShape::unknown;
    }
    return look;
}

Sentence likenessSays(const Likeness& look) {
    switch (look.shape) {
    case ByteShape::nothing: return {"nothing came", {}};
    case ByteShape::lcdFrames: return {"frames of 14 LCD-segment bytes", {}};
    case ByteShape::packets: return {"no text, but packets of %1 bytes each", {std::to_string(look.packetBytes)}};
    case ByteShape::unknown: return {"neither text nor frames that are known here", {}};
    case ByteShape::textLines: break;
    }
    if (look.line.empty()) return {"text, but no whole line yet", {}};
    if (look.lineLength)
        return {"text lines of %1 characters, such as %2", {std::to_string(*look.lineLength), quoteLine(look.line)}};
    return {"text lines, such as %1", {quoteLine(look.line)}};
}

std::string framingText(const LinkSettings& link) {
    const char parity = link.parity == Parity::odd ? 'O' : link.parity == Parity::even ? 'E' : 'N';
    return std::to_string(link.bits) + parity + std::to_string(link.stopBits);
}

std::string hexRow(std::span<const std::uint8_t> bytes) {
    std::string hex, text;
    for (const std::uint8_t byte : bytes.first(std::min(bytes.size(), kBytesInARow))) {
        char two[4];
        std::snprintf(two, sizeof two, "%02x ", static_cast<unsigned>(byte));
        hex += two;
        text += byte >= 0x20 && byte < 0x7F ? static_cast<char>(byte) : '.';
    }
    hex.resize(3 * kBytesInARow, ' ');
    text.resize(kBytesInARow, ' ');
    return hex + " " + text;
}

} // namespace stillwire
