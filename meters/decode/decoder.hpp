// SPDX-License-Identifier: GPL-3.0-or-later
// A decoder turns bytes into readings. Pure: no clock, no port; any split of the bytes gives the same readings.
#pragma once

#include "core/base/sentence.hpp"
#include "core/base/time.hpp"
#include "core/domain/reading.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stillwire {

// Why the last reading flagged `unit` is not DC volts, where its frame says so.
enum class NotVolts { unsaid, alternating, relative, lowImpedance };

// What an instrument answered that is no reading: who it is, or the oldest entry of its error queue.
struct Answer {
    enum class Kind { identity, error };
    Kind kind = Kind::identity;
    int code = 0; // of an error entry; 0: the queue is empty
    std::string text;
};

class Decoder {
public:
    virtual ~Decoder() = default;
    // Appends the readings whose frames end within `bytes`, each stamped `arrived`. A partial frame waits.
    virtual void push(std::span<const std::uint8_t> bytes, Time arrived, std::vector<Reading>& out) = 0;
    virtual void reset() = 0; // after a lost link: forget the partial frame; the next byte begins one
    // The next bytes may begin inside a frame: whoever cannot tell a torn frame from a whole one skips the first.
    virtual void beginMidStream() {}
    [[nodiscard]] virtual NotVolts notVolts() const { return NotVolts::unsaid; }
    virtual std::optional<Answer> takeAnswer() { return std::nullopt; } // the newest, once
    [[nodiscard]] virtual std::size_t droppedBytes() const = 0;         // garbage so far
    [[nodiscard]] virtual Sentence lastComplaint() const = 0; // why the last bytes were dropped; empty: none were
};

} // namespace stillwire
