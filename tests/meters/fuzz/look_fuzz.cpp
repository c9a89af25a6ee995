// SPDX-License-Identifier: GPL-3.0-or-later
// What bytes look like and which kind of frame fits, for any bytes in any pieces.
#include "meters/find/fit.hpp"
#include "meters/find/likeness.hpp"
#include "tests/meters/decode/frames.hpp"
#include "tests/meters/fuzz/decoder_laws.hpp"

#include <algorithm>

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) return 0;
    const std::size_t piece = data[0] % 23 + 1u;
    const std::span<const std::uint8_t> bytes(data + 1, size - 1);
    Heard heard;
    for (std::size_t at = 0; at < bytes.size(); at += piece)
        heard.add(bytes.subspan(at, std::min(piece, bytes.size() - at)), Time(static_cast<Time::rep>(at) * 5000));
    const Likeness look = likenessOf(heard);
    require(look.bytes == bytes.size());
    require(look.printable >= 0 && look.printable <= 1);
    require((look.shape == ByteShape::nothing) == bytes.empty());
    require(look.line.empty() || look.shape == ByteShape::textLines);
    require(!look.lineLength || *look.lineLength == look.line.size());
    require(look.packetBytes <= bytes.size() && look.interval_s >= 0);
    require(!likenessSays(look).english().empty() && likenessSays(look).english().size() < 200);
    for (const std::uint8_t byte : sevenBits(heard).bytes) require(byte < 0x80);
    require(hexRow(bytes).size() == hexRow({}).size());
    for (const FrameKind kind : frames::kKinds) {
        MeterDescription description;
        description.frame = frames::settings(kind);
        const Fit fit = fitOf(description, heard);
        require(fit.dropped <= fit.bytes && fit.volts <= fit.readings);
        require(fit.newest.has_value() == (fit.readings > 0));
        require(fit.sureness == Sureness::none || fit.readings > 0);
        require(!fitsBetter(fit, fit));
    }
    return 0;
}
