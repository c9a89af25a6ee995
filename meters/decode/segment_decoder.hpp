// SPDX-License-Identifier: GPL-3.0-or-later
// Decodes the 14-byte LCD-segment frame. Finds its place again with the first whole frame after garbage.
#pragma once

#include "meters/decode/decoder.hpp"
#include "meters/decode/segments.hpp"

namespace stillwire {

class SegmentDecoder final : public Decoder {
public:
    void push(std::span<const std::uint8_t> bytes, Time arrived, std::vector<Reading>& out) override;
    void reset() override;
    [[nodiscard]] NotVolts notVolts() const override { return notVolts_; }
    [[nodiscard]] std::size_t droppedBytes() const override { return dropped_; }
    [[nodiscard]] Sentence lastComplaint() const override { return complaint_; }

private:
    void drop(std::size_t bytes, Sentence why);
    void frame(Time arrived, std::vector<Reading>& out);

    std::array<std::uint8_t, kSegmentFrame> frame_{}; // low nibbles
    std::size_t filled_ = 0;
    std::size_t dropped_ = 0;
    NotVolts notVolts_ = NotVolts::unsaid;
    Sentence complaint_;
};

} // namespace stillwire
