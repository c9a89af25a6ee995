// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/byte_rows.hpp"

#include "core/base/sentence.hpp"
#include "core/capture/writer.hpp"
#include "meters/find/likeness.hpp"

namespace stillwire {

namespace {

constexpr std::size_t kKept = 65536;
constexpr Time kPause = std::chrono::milliseconds(40); // between two frames

const char* whyNot(NotVolts notVolts) {
    switch (notVolts) {
    case NotVolts::alternating: return " (AC)";
    case NotVolts::relative: return " (relative mode)";
    case NotVolts::lowImpedance: return " (low-impedance mode)";
    case NotVolts::unsaid: break;
    }
    return "";
}

std::string padded(const std::string& text, std::size_t width) {
    return text.size() < width ? std::string(width - text.size(), ' ') + text : text;
}

} // namespace

std::string readingText(const Reading& reading, NotVolts notVolts) {
    std::string out = reading.hasNumber() ? formatVolts(reading.volts_V) + " V" : "no number:";
    if (!reading.flags.none()) out += " " + reading.flags.text();
    if (reading.flags.has(Flag::unit)) out += std::string(", not DC volts") + whyNot(notVolts);
    return out;
}

std::string ByteRows::decode(std::uint8_t byte, Time at) {
    if (!decoder_) return {};
    std::vector<Reading> readings;
    const std::size_t dropped = decoder_->droppedBytes();
    decoder_->push({&byte, 1}, at, readings);
    std::string says;
    for (const Reading& reading : readings)
        says += (says.empty() ? "" : "; ") + readingText(reading, decoder_->notVolts());
    readings_ += readings.size();
    if (const auto answer = decoder_->takeAnswer()) says += "answers " + answer->text;
    if (says.empty() && decoder_->droppedBytes() != dropped) says = "dropped: " + decoder_->lastComplaint().english();
    return says;
}

void ByteRows::endRow(std::string& out, const std::string& says) {
    if (row_.empty() && says.empty()) return;
    out += padded(plain(toSeconds(at_), 3), 9) + " s  " + hexRow(row_) + (says.empty() ? "" : "  " + says) + "\n";
    row_.clear();
}

std::string ByteRows::take(std::span<const std::uint8_t> bytes, Time at) {
    std::string out;
    if (heard_.bytes.size() + bytes.size() > kKept) heard_ = {};
    heard_.add(bytes, at);
    if (at - last_ > kPause) endRow(out, {});
    last_ = at;
    for (const std::uint8_t byte : bytes) {
        if (!says_.empty()) {
            const bool belongs = byte == '\n';
            if (belongs) {
                if (row_.size() == kBytesInARow) endRow(out, {});
                row_.push_back(byte);
                (void)decode(byte, at);
            }
            endRow(out, std::exchange(says_, {}));
            if (belongs) continue;
        }
        if (row_.size() == kBytesInARow) endRow(out, {});
        if (row_.empty()) at_ = at;
        row_.push_back(byte);
        const std::string says = decode(byte, at);
        if (says.empty()) continue;
        if (byte == '\r')
            says_ = says;
        else
            endRow(out, says);
    }
    if (!says_.empty()) endRow(out, std::exchange(says_, {}));
    return out;
}

std::string ByteRows::finish() {
    std::string out;
    endRow(out, {});
    return out;
}

} // namespace stillwire
