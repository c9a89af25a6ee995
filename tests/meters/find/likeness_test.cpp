// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/find/likeness.hpp"
#include "tests/meters/decode/frames.hpp"
#include "tests/support/uart.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using frames::Bytes;
using frames::bytes;

Heard packets(const Bytes& packet, int count, double interval_s = 0.4) {
    Heard heard;
    for (int i = 0; i < count; ++i) heard.add(packet, fromSeconds(interval_s * i));
    return heard;
}

Bytes lcdFrame() {
    return encodeFrame(frames::settings(FrameKind::segments), Reading{.volts_V = 4.123, .flags = {}}, 0.001);
}

} // namespace

TEST(Likeness, NothingCame) {
    EXPECT_EQ(likenessOf({}).shape, ByteShape::nothing);
    EXPECT_EQ(likenessSays(likenessOf({})).english(), "nothing came");
}

TEST(Likeness, KnowsTextLines) {
    const Likeness look = likenessOf(packets(bytes("+4.123 V DC\r\n"), 6));
    EXPECT_EQ(look.shape, ByteShape::textLines);
    EXPECT_EQ(look.printable, 1.0);
    EXPECT_EQ(look.line, "+4.123 V DC");
    EXPECT_EQ(look.lineLength, std::size_t{11});
    EXPECT_NEAR(look.interval_s, 0.4, 1e-9);
    EXPECT_EQ(likenessSays(look).english(), "text lines of 11 characters, such as \"+4.123 V DC\"");
    EXPECT_FALSE(look.parity);
}

TEST(Likeness, KnowsLcdFramesInOneGoOrInPieces) {
    EXPECT_EQ(likenessOf(packets(lcdFrame(), 3)).shape, ByteShape::lcdFrames);
    Heard pieces;
    for (int i = 0; i < 3; ++i)
        for (const std::uint8_t byte : lcdFrame()) pieces.add({&byte, 1}, fromSeconds(0.4 * i));
    EXPECT_EQ(likenessOf(pieces).shape, ByteShape::lcdFrames);
    EXPECT_NE(likenessOf(packets(lcdFrame(), 1)).shape, ByteShape::lcdFrames); // one may be an accident
}

// Seven bits and a parity bit, heard with eight bits: the parity shows, for the sender computes it for every byte.
TEST(Likeness, KnowsSevenBitTextByItsParity) {
    for (const Parity parity : {Parity::odd, Parity::even}) {
        const auto line = bytes("00Dj041234\r\n");
        const auto heard = test::receive(line, {4800, 7, parity, 1}, {4800, 8, Parity::none, 1});
        EXPECT_EQ(heard.size(), line.size());
        const Likeness look = likenessOf(packets(heard, 5));
        ASSERT_TRUE(look.parity);
        EXPECT_EQ(*look.parity, parity);
        EXPECT_EQ(look.shape, ByteShape::textLines);
        EXPECT_EQ(look.line, "00Dj041234");
        EXPECT_EQ(sevenBits(packets(heard, 1)).bytes, line);
    }
}

TEST(Likeness, TellsPacketsThatAreNoText) {
    const Likeness look = likenessOf(packets({0x02, 0x81, 0x00, 0xF0, 0x13, 0x99, 0x03, 0x80, 0xAA, 0x01, 0xFE}, 6));
    EXPECT_EQ(look.shape, ByteShape::packets);
    EXPECT_EQ(look.packetBytes, 11u);
    EXPECT_EQ(likenessSays(look).english(), "no text, but packets of 11 bytes each");
}

// A wrong baud rate is no text; the right one is.
TEST(Likeness, TellsTheRightRateFromTheWrongOnes) {
    const auto line = bytes("+4.123 V DC\r\n");
    for (const double baud : {600, 1200, 2400, 4800, 9600, 19200, 38400}) {
        const auto heard = test::receive(line, {4800, 8, Parity::none, 1}, {baud, 8, Parity::none, 1});
        EXPECT_FALSE(heard.empty()) << baud;
        const bool text = likenessOf(packets(heard, 6)).shape == ByteShape::textLines;
        EXPECT_EQ(text, baud == 4800) << baud;
    }
}

TEST(Likeness, WritesARowOfBytes) {
    EXPECT_EQ(hexRow(bytes("+0.8\r")), "2b 30 2e 38 0d                                   +0.8.           ");
    EXPECT_EQ(hexRow(Bytes(20, 0x41)).size(), hexRow({}).size());
}

TEST(Likeness, WritesTheFraming) {
    LinkSettings link;
    EXPECT_EQ(framingText(link), "8N1");
    link.bits = 7;
    link.parity = Parity::odd;
    link.stopBits = 2;
    EXPECT_EQ(framingText(link), "7O2");
}

} // namespace stillwire
