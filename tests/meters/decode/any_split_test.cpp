// SPDX-License-Identifier: GPL-3.0-or-later
// Laws of every decoder: any split of the bytes gives the same readings; what is encoded decodes to itself.
#include "tests/meters/decode/frames.hpp"

#include <random>

#include <gtest/gtest.h>

namespace stillwire {

namespace {

using frames::Bytes;

class EveryKind : public testing::TestWithParam<FrameKind> {};

bool same(const Reading& a, const Reading& b) {
    return a.flags == b.flags && a.hasNumber() == b.hasNumber() && (!a.hasNumber() || a.volts_V == b.volts_V);
}

Reading random(FrameKind kind, std::mt19937& random) {
    const auto chance = [&random](int of) { return std::uniform_int_distribution<>(0, of - 1)(random) == 0; };
    Reading out;
    const int count = std::uniform_int_distribution<>(-5999, 5999)(random);
    out.volts_V = count / 1000.0;
    if (kind == FrameKind::scpi) {
        if (chance(10)) out = Reading{.time = {}, .flags = chance(2) ? Flag::overload : Flag::unit};
        return out;
    }
    if (chance(10)) out = Reading{.time = {}, .flags = chance(2) ? Flag::overload : Flag::unit};
    if (chance(5)) out.flags |= Flag::hold;
    if (chance(5)) out.flags |= Flag::autorange;
    if (chance(5)) out.flags |= Flag::lowbat;
    return out;
}

} // namespace

TEST_P(EveryKind, DecodesWhatItEncodes) {
    std::mt19937 generator(1);
    for (int i = 0; i < 3000; ++i) {
        const Reading reading = random(GetParam(), generator);
        const auto out = frames::decode(GetParam(), encodeFrame(frames::settings(GetParam()), reading, 0.001));
        ASSERT_EQ(out.size(), 1u);
        ASSERT_TRUE(same(out[0], reading)) << reading.volts_V << " came back as " << out[0].volts_V;
    }
}

TEST_P(EveryKind, DecodesEveryCountOfTheDisplay) {
    for (int count = -5999; count <= 5999; ++count) {
        Reading reading;
        reading.volts_V = count / 1000.0;
        const auto out = frames::decode(GetParam(), encodeFrame(frames::settings(GetParam()), reading, 0.001));
        ASSERT_EQ(out.size(), 1u);
        ASSERT_EQ(out[0].volts_V, reading.volts_V);
    }
}

TEST_P(EveryKind, GivesTheSameReadingsForAnySplit) {
    std::mt19937 generator(2);
    for (int round = 0; round < 60; ++round) {
        Bytes stream;
        for (int i = 0; i < 40; ++i) {
            const Bytes frame = encodeFrame(frames::settings(GetParam()), random(GetParam(), generator), 0.001);
            stream.insert(stream.end(), frame.begin(), frame.end());
        }
        // In most rounds some bytes are wrong, lost or too many.
        for (int damage = 0; damage < round % 12; ++damage) {
            const auto at = static_cast<std::ptrdiff_t>(
                std::uniform_int_distribution<std::size_t>(0, stream.size() - 1)(generator));
            const auto byte = static_cast<std::uint8_t>(std::uniform_int_distribution<>(0, 255)(generator));
            if (damage % 3 == 0)
                stream[static_cast<std::size_t>(at)] = byte;
            else if (damage % 3 == 1)
                stream.erase(stream.begin() + at);
            else
                stream.insert(stream.begin() + at, byte);
        }
        const auto whole = frames::decoder(GetParam());
        const auto expected = frames::decode(*whole, stream);
        const auto pieces = frames::decoder(GetParam());
        std::vector<Reading> got;
        for (std::size_t at = 0; at < stream.size();) {
            const std::size_t length = std::min(
                stream.size() - at,
                std::uniform_int_distribution<std::size_t>(0, static_cast<std::size_t>(round % 7) + 1)(generator));
            pieces->push(std::span(stream).subspan(at, length), Time(7), got);
            at += length;
        }
        ASSERT_EQ(got.size(), expected.size());
        for (std::size_t i = 0; i < got.size(); ++i) ASSERT_TRUE(same(got[i], expected[i]));
        EXPECT_EQ(pieces->droppedBytes(), whole->droppedBytes());
    }
}

TEST_P(EveryKind, FindsTheNextFrameButOneAfterGarbage) {
    std::mt19937 generator(3);
    Reading reading;
    reading.volts_V = 4.123;
    const Bytes frame = encodeFrame(frames::settings(GetParam()), reading, 0.001);
    for (int round = 0; round < 200; ++round) {
        Bytes in(static_cast<std::size_t>(round), 0);
        for (auto& byte : in) byte = static_cast<std::uint8_t>(std::uniform_int_distribution<>(128, 255)(generator));
        for (int i = 0; i < 2; ++i) in.insert(in.end(), frame.begin(), frame.end());
        const auto out = frames::decode(GetParam(), in);
        ASSERT_FALSE(out.empty());
        EXPECT_EQ(out.back().volts_V, 4.123);
    }
}

TEST_P(EveryKind, ShowsANumberTooLargeWithFewerDecimalsOrNotAtAll) {
    for (const double volts_V : {12.345, 123.45, 99999.0, 1e12}) {
        Reading reading;
        reading.volts_V = volts_V;
        const auto out = frames::decode(GetParam(), encodeFrame(frames::settings(GetParam()), reading, 0.001));
        if (out.empty() || !out[0].hasNumber()) continue;
        EXPECT_NEAR(out[0].volts_V, volts_V, volts_V / 1000);
    }
}

std::string kindName(const testing::TestParamInfo<FrameKind>& kind) { return frameKindName(kind.param); }
INSTANTIATE_TEST_SUITE_P(Frames, EveryKind, testing::ValuesIn(frames::kKinds), kindName);

TEST(Encode, CountsDecimals) {
    EXPECT_EQ(decimalsOf(1), 0);
    EXPECT_EQ(decimalsOf(0.01), 2);
    EXPECT_EQ(decimalsOf(0.001), 3);
    EXPECT_EQ(decimalsOf(0.0001), 4);
    EXPECT_EQ(decimalsOf(0.0005), 4);
}

TEST(Encode, ShowsMillivoltsOnAFourDigitDisplay) {
    Reading reading;
    reading.volts_V = 0.4123;
    const auto out =
        frames::decode(FrameKind::segments, encodeFrame(frames::settings(FrameKind::segments), reading, 0.0001));
    ASSERT_EQ(out.size(), 1u);
    EXPECT_EQ(out[0].volts_V, 0.4123);
}

} // namespace stillwire
