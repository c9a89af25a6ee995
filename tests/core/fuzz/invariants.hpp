// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for any input; a broken promise ends the program, which is what a fuzzer looks for.
#pragma once

#include "core/capture/row_parser.hpp"
#include "core/capture/text_encoding.hpp"
#include "core/capture/whole_seconds.hpp"
#include "core/capture/writer.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

namespace stillwire {

inline void require(bool holds, const char* promise) {
    if (holds) return;
    std::fprintf(stderr, "broken promise: %s\n", promise);
    std::abort();
}

// Writes down its rows as a capture, and checks each.
struct CheckingSink : RowSink {
    std::string rows;
    Time last{0};
    void check(Time time) {
        require(time >= last, "times never decrease");
        last = time;
    }
    void reading(const Reading& r) override {
        check(r.time);
        require(r.hasNumber() ? std::isfinite(r.volts_V) && std::abs(r.volts_V) <= 1e6 : !r.flags.none(),
                "a reading has a number, or says why not");
        rows += formatRow(r);
    }
    void mark(const Mark& m) override {
        check(m.time);
        require(!m.text().empty(), "a mark has a text");
        rows += formatRow(m);
    }
};

inline void checkError(const Error& error) {
    require(!error.where.empty() && !error.what.empty() && !error.mend.empty(),
            "an error names place, fault and mend");
}

// The same bytes in blocks: where they are cut must not matter.
inline std::string readInBlocks(std::string_view raw, std::size_t block, const ImportOptions& options) {
    CheckingSink sink;
    // Encoded text, too, is cut anywhere.
    TextEncoding encoding(raw);
    std::string bytes;
    for (std::size_t at = 0; at < raw.size(); at += block) encoding.decode(raw.substr(at, block), bytes);
    auto prologue = readPrologue(bytes, true, "blocks", options);
    if (!prologue) return {};
    SecondSpreader spreader(sink, prologue->layout.imported);
    RowParser parser(*prologue, "blocks", prologue->sharedSeconds ? spreader : static_cast<RowSink&>(sink), nullptr,
                     options.lastLine);
    std::string pending;
    for (std::size_t at = prologue->rowsAt; at < bytes.size(); at += block) {
        pending += std::string_view(bytes).substr(at, block);
        auto used = parser.consume(pending, at + block >= bytes.size());
        if (!used) return sink.rows;
        pending.erase(0, *used);
    }
    spreader.finish();
    return sink.rows;
}

inline void checkReading(std::string_view bytes, const ImportOptions& options) {
    CheckingSink sink;
    auto summary = readCaptureText(bytes, "fuzz", sink, options);
    if (!summary) checkError(summary.error());
    require(readInBlocks(bytes, 1 + bytes.size() / 3, options) == sink.rows, "blocks read as the whole");
    // What was read can be written, and reads back the same.
    CheckingSink again;
    auto second = readCaptureText(std::string(kColumns) + sink.rows, "again", again);
    require(second.ok() && again.rows == sink.rows, "what is written reads back the same");
}

} // namespace stillwire
