// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/find/fit.hpp"
#include "tests/meters/decode/frames.hpp"
#include "tests/support/source_folder.hpp"
#include "tests/support/uart.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using frames::Bytes;
using frames::bytes;

std::map<std::string, MeterDescription> shipped() {
    std::map<std::string, MeterDescription> out;
    for (const auto& entry : std::filesystem::directory_iterator(test::sourceFile("resources/meters"))) {
        std::ifstream file(entry.path());
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        auto parsed = parseMeterDescription(text, entry.path().string());
        EXPECT_TRUE(parsed);
        if (parsed) out.emplace(entry.path().stem().string(), std::move(parsed.value()));
    }
    return out;
}

// Ten readings of a meter, torn at the start.
Heard heardFrom(const MeterDescription& meter) {
    Heard heard;
    for (int i = 0; i < 10; ++i) {
        auto frame = encodeFrame(meter.frame, Reading{.volts_V = 0.812 + 0.001 * i, .flags = {}}, 0.001);
        if (i == 0) frame.erase(frame.begin(), frame.begin() + 5);
        heard.add(frame, fromSeconds(0.5 * i));
    }
    return heard;
}

} // namespace

TEST(Fit, EveryDescriptionFitsItsOwnMeter) {
    for (const auto& [name, meter] : shipped()) {
        const bool scpi = meter.frame.kind == FrameKind::scpi;
        const Fit fit = fitOf(meter, heardFrom(meter), scpi);
        EXPECT_EQ(fit.sureness, Sureness::sure) << name;
        EXPECT_GE(fit.readings, 9u) << name;
        EXPECT_EQ(fit.volts, fit.readings) << name;
        ASSERT_TRUE(fit.newest) << name;
        EXPECT_NEAR(fit.newest->volts_V, 0.821, 1e-9) << name;
        EXPECT_NEAR(fit.interval_s, 0.5, 1e-6) << name;
        // A bare number is anybody's, unless the instrument said who it is.
        EXPECT_EQ(fitOf(meter, heardFrom(meter)).sureness, scpi ? Sureness::likely : Sureness::sure) << name;
    }
}

// Across kinds: none that fits as well as the true one. (Text and polled text are one kind of frame.)
TEST(Fit, NoDescriptionOfAnotherKindFitsAsWell) {
    const auto all = shipped();
    const auto isText = [](FrameKind kind) { return kind == FrameKind::text || kind == FrameKind::polled; };
    for (const auto& [name, meter] : all) {
        const bool scpi = meter.frame.kind == FrameKind::scpi;
        const Fit own = fitOf(meter, heardFrom(meter), scpi);
        for (const auto& [otherName, other] : all) {
            if (other.frame.kind == meter.frame.kind || (isText(other.frame.kind) && isText(meter.frame.kind)))
                continue;
            const Fit fit = fitOf(other, heardFrom(meter));
            EXPECT_TRUE(fitsBetter(own, fit)) << otherName << " on " << name;
            EXPECT_LT(fit.sureness, Sureness::sure) << otherName << " on " << name;
        }
    }
}

// At a wrong rate nothing is sure, whatever the garbage spells.
TEST(Fit, NothingIsSureAtAWrongRate) {
    for (const auto& [name, meter] : shipped()) {
        const test::UartSettings sender{static_cast<double>(meter.link.baud), meter.link.bits, meter.link.parity,
                                        meter.link.stopBits};
        for (const double factor : {0.25, 0.5, 2.0, 4.0}) {
            Heard garbled;
            const Heard heard = heardFrom(meter);
            std::size_t at = 0;
            for (const Heard::Arrival& arrival : heard.arrivals) {
                const auto part = std::span(heard.bytes).subspan(at, arrival.bytes);
                garbled.add(test::receive(part, sender, {sender.baud * factor, 8, Parity::none, 1}), arrival.at);
                at += arrival.bytes;
            }
            for (const auto& [otherName, other] : shipped())
                EXPECT_LT(fitOf(other, garbled).sureness, Sureness::likely)
                    << otherName << " on " << name << " at " << factor;
        }
    }
}

TEST(Fit, OneReadingIsAPossibilityAndAnotherFunctionIsNoVolts) {
    const MeterDescription text;
    Heard heard;
    heard.add(bytes("0.812 V\r\n"), Time(0));
    EXPECT_EQ(fitOf(text, heard).sureness, Sureness::possible);
    Heard ohms;
    for (int i = 0; i < 5; ++i) ohms.add(bytes("1.234 kOhm V\r\n"), Time(i));
    const Fit fit = fitOf(text, ohms);
    EXPECT_EQ(fit.readings, 5u);
    EXPECT_EQ(fit.volts, 0u);
}

TEST(Fit, WhatIsDroppedCountsAgainstIt) {
    const MeterDescription text;
    Heard heard;
    for (int i = 0; i < 10; ++i) {
        heard.add(bytes("0.812 V\r\n"), Time(2 * i));
        heard.add(bytes("no number here\r\n"), Time(2 * i + 1));
    }
    EXPECT_EQ(fitOf(text, heard).sureness, Sureness::none);
}

} // namespace stillwire
