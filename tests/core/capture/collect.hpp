// SPDX-License-Identifier: GPL-3.0-or-later
// A sink that writes down what it got, so that a test reads as text against text.
#pragma once

#include "core/capture/reader.hpp"
#include "core/capture/writer.hpp"

namespace stillwire {

struct Collected : RowSink {
    CaptureHeader header_;
    std::string text; // "0.33 4.497 hold|0.5 step:end|"; "-" for no number
    Status header(const CaptureHeader& read) override {
        header_ = read;
        return Done{};
    }
    void reading(const Reading& r) override {
        text += formatTime(r.time) + " " + (r.hasNumber() ? formatVolts(r.volts_V) : "-");
        if (!r.flags.none()) text += " " + r.flags.text();
        text += "|";
    }
    void mark(const Mark& m) override { text += formatTime(m.time) + " " + m.text() + "|"; }
};

struct Read {
    CaptureHeader header;
    std::string text;
    ReadSummary summary;
    std::string error; // empty if it went well
};

inline Read collect(const std::string& bytes, const ImportOptions& options = {}) {
    Collected sink;
    Read read;
    auto summary = readCaptureText(bytes, "test.csv", sink, options);
    if (summary) {
        read.summary = std::move(*summary);
    } else {
        read.error = summary.error().text();
    }
    read.header = std::move(sink.header_);
    read.text = std::move(sink.text);
    return read;
}

} // namespace stillwire
