// SPDX-License-Identifier: GPL-3.0-or-later
// A link that plays a script with a clock of its own, and headers for sessions on it.
#pragma once

#include "core/capture/header.hpp"
#include "meters/decode/encode.hpp"
#include "meters/describe/description.hpp"
#include "meters/link/link.hpp"
#include "tests/support/pedal_sheet.hpp"
#include "tests/support/source_folder.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <string>
#include <unistd.h>
#include <vector>

#include <gtest/gtest.h>

namespace stillwire {

struct ScriptLine {
    Time at{0};
    LinkEvent::Kind kind = LinkEvent::Kind::bytes;
    std::vector<std::uint8_t> bytes;
};

class ScriptLink final : public Link {
public:
    explicit ScriptLink(std::vector<ScriptLine> script) : script_(std::move(script)) {}

    Status open() override { return Done{}; }
    int descriptor() const override { return -1; }
    LinkEvent read(std::span<std::uint8_t> buffer) override {
        if (next_ == script_.size()) return {.kind = LinkEvent::Kind::ended, .bytes = 0, .arrived = now_};
        const ScriptLine& line = script_[next_++];
        now_ = line.at;
        std::copy(line.bytes.begin(), line.bytes.end(), buffer.begin());
        return {line.kind, line.bytes.size(), now_};
    }
    Status write(std::span<const std::uint8_t> bytes) override {
        written.append(bytes.begin(), bytes.end());
        return Done{};
    }
    Time now() const override { return now_; }
    Time nextDue() const override { return Time(0); }
    std::string name() const override { return "scripted meter"; }

    std::string written;

private:
    std::vector<ScriptLine> script_;
    std::size_t next_ = 0;
    Time now_{0};
};

inline std::string fileText(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

inline MeterDescription shippedMeter(const std::string& name) {
    const std::string path = test::sourceFile("resources/meters/" + name + ".toml");
    auto parsed = parseMeterDescription(fileText(path), path);
    EXPECT_TRUE(parsed) << parsed.error().text();
    return parsed ? std::move(parsed.value()) : MeterDescription{};
}

inline CaptureHeader headerFor(const MeterDescription& meter) {
    CaptureHeader header;
    header.started = "2026-01-15T08:00:00+01:00";
    auto sheet = parseSheet(test::kPedalSheet, "sheet.toml");
    EXPECT_TRUE(sheet) << sheet.error().text();
    header.sheet = sheet.value();
    header.meter = meter.traits;
    return header;
}

inline std::string capturePath(const std::string& name) {
    const std::string path = ::testing::TempDir() + "stillwire_" + name + "_" + std::to_string(getpid()) + ".csv";
    std::remove(path.c_str());
    return path;
}

inline Reading number(double volts_V) {
    Reading out;
    out.volts_V = volts_V;
    return out;
}

} // namespace stillwire
