// SPDX-License-Identifier: GPL-3.0-or-later
// What holds for every decoder and all bytes; a fuzz target stops where it does not.
#pragma once

#include "meters/decode/decoder.hpp"
#include "meters/decode/encode.hpp"

#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <memory>
#include <span>
#include <vector>

namespace stillwire {

inline void require(bool holds) {
    if (!holds) std::abort();
}

inline bool sameReading(const Reading& a, const Reading& b) {
    return a.time == b.time && a.flags == b.flags && (a.volts_V == b.volts_V || (!a.hasNumber() && !b.hasNumber()));
}

// `make` gives a fresh decoder. The first byte says where the rest is cut.
template <class Make> void checkDecoder(const Make& make, std::span<const std::uint8_t> data) {
    if (data.empty()) return;
    const std::size_t step = data.front() % 17 + 1u;
    const auto bytes = data.subspan(1);
    std::vector<Reading> whole, pieces;
    const auto first = make(), second = make();
    first->push(bytes, Time(1), whole);
    for (std::size_t at = 0; at < bytes.size(); at += step)
        second->push(bytes.subspan(at, std::min(step, bytes.size() - at)), Time(1), pieces);
    require(whole.size() == pieces.size());
    for (std::size_t i = 0; i < whole.size(); ++i) require(sameReading(whole[i], pieces[i]));
    require(first->droppedBytes() == second->droppedBytes() && first->droppedBytes() <= bytes.size());
    require(first->droppedBytes() == 0 || !first->lastComplaint().empty());
    for (const Reading& reading : whole) {
        require(reading.time == Time(1));
        require(reading.hasNumber() || !reading.flags.none());
        if (reading.hasNumber()) require(std::abs(reading.volts_V) < 1e8);
        require(!(reading.volts_V == 0 && std::signbit(reading.volts_V))); // minus zero would be written as such
        if (reading.flags.has(Flag::unit) || reading.flags.has(Flag::overload)) require(!reading.hasNumber());
    }
    second->reset();
    require(second->droppedBytes() <= bytes.size());
}

// Whatever came before: of two whole frames the second is read at the latest, and nothing more is dropped than came.
template <class Make>
void checkRecovery(const Make& make, std::span<const std::uint8_t> garbage, const FrameSettings& settings) {
    Reading sent;
    sent.volts_V = 4.123;
    const std::vector<std::uint8_t> frame = encodeFrame(settings, sent, 0.001);
    std::vector<Reading> read;
    const auto decoder = make();
    decoder->push(garbage, Time(1), read);
    read.clear();
    for (const int arrived : {2, 3}) decoder->push(frame, Time(arrived), read);
    require(!read.empty()); // a line begun before may have taken the first one into it
    require(read.back().time == Time(3) && read.back().volts_V == 4.123 && read.back().flags.none());
    require(decoder->droppedBytes() <= garbage.size() + frame.size());
}

} // namespace stillwire
