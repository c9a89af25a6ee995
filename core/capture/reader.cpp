// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/reader.hpp"

#include "core/capture/file_bytes.hpp"
#include "core/capture/read_rows.hpp"
#include "core/capture/whole_seconds.hpp"

#include <cstring>

namespace stillwire {

namespace {

constexpr std::size_t kBlock = std::size_t{1} << 18; // stays in the second-level cache while it is parsed

ImportTaken takenOf(const Prologue& prologue, const RowParser& parser) {
    const Layout& layout = prologue.layout;
    const auto name = [&](int column) {
        return column == Layout::kNone ? std::string() : layout.names[static_cast<std::size_t>(column)];
    };
    ImportTaken taken;
    taken.timeColumn = name(layout.time);
    taken.dateColumn = name(layout.date);
    taken.voltsColumn = name(layout.volts.column);
    taken.referenceColumn = name(layout.reference.column);
    taken.columnsLine = prologue.columnsLine;
    taken.delimiter = layout.delimiter;
    const ForeignCells& cells = parser.foreign();
    if (const auto sign = cells.numbers().certain()) taken.decimal = *sign == DecimalSign::point ? "point" : "comma";
    if (layout.time != Layout::kNone) taken.timeAs = nameOf(cells.times().as());
    if (const auto order = cells.times().order()) taken.dateOrder = nameOf(*order);
    const int exponent = layout.volts.exponent;
    taken.voltsUnit = exponent == -3 ? "mV" : exponent == -6 ? "µV" : exponent == 3 ? "kV" : "V";
    taken.timeUnitAssumed = cells.times().unitAssumed();
    taken.voltsUnitAssumed = !layout.volts.unitGiven;
    taken.withoutNumber = cells.withoutNumber();
    return taken;
}

ReadSummary summaryOf(const Prologue& prologue, RowParser& parser) {
    ReadSummary summary;
    summary.rows = parser.rows();
    summary.imported = prologue.layout.imported;
    if (summary.imported) summary.taken = takenOf(prologue, parser);
    summary.warnings = prologue.warnings;
    for (Sentence& warning : parser.warnings()) summary.warnings.push_back(std::move(warning));
    return summary;
}

} // namespace

Result<ReadSummary> readCaptureText(std::string_view bytes, const std::string& where, RowSink& sink,
                                    const ImportOptions& options) {
    auto prologue = readPrologue(bytes, true, where, options);
    if (!prologue) return prologue.error();
    if (auto status = sink.header(prologue->header); !status) return status.error();
    SecondSpreader spreader(sink, prologue->layout.imported);
    RowParser parser(*prologue, where, prologue->sharedSeconds ? spreader : sink, nullptr, options.lastLine);
    if (auto used = parser.consume(bytes.substr(prologue->rowsAt), true); !used) return used.error();
    spreader.finish();
    return summaryOf(*prologue, parser);
}

Result<ReadSummary> readRows(const std::string& path, RowSink& sink, const ImportOptions& options, RawRows* raw,
                             Prologue* prologueOut) {
    auto file = FileBytes::open(path);
    if (!file) return file.error();
    // Grows for a long header only: what a block leaves over is less than one row of the longest.
    std::vector<char> buffer(2 * kBlock);
    std::size_t filled = 0;
    std::uint64_t read = 0;
    bool ended = false;
    const auto more = [&]() -> Status {
        if (buffer.size() - filled < kBlock) buffer.resize(2 * buffer.size());
        auto n = file->read(buffer.data() + filled, kBlock);
        if (!n) return n.error();
        filled += *n;
        read += *n;
        ended = *n == 0;
        if (options.told && !options.told(read))
            return Error{Error::Kind::badInput, path, 0, "reading it was given up", "open it again"};
        return Done{};
    };
    const auto view = [&] { return std::string_view(buffer.data(), filled); };
    std::size_t looked = 0;
    do {
        if (auto status = more(); !status) return status.error();
    } while (!ended && !prologueFits(view(), options, looked));

    auto prologue = readPrologue(view(), ended, path, options);
    if (!prologue) return prologue.error();
    if (prologueOut) *prologueOut = *prologue;
    if (auto status = sink.header(prologue->header); !status) return status.error();
    SecondSpreader spreader(sink, prologue->layout.imported);
    // Who wants the bytes of the rows wants their times as written.
    RowParser parser(*prologue, path, prologue->sharedSeconds && !raw ? spreader : sink, raw, options.lastLine);
    std::size_t done = prologue->rowsAt;
    for (;;) {
        auto used = parser.consume(view().substr(done), ended);
        if (!used) return used.error();
        if (ended) {
            spreader.finish();
            return summaryOf(*prologue, parser);
        }
        done += *used;
        filled -= done;
        std::memmove(buffer.data(), buffer.data() + done, filled);
        done = 0;
        if (auto status = more(); !status) return status.error();
    }
}

Result<ReadSummary> readCapture(const std::string& path, RowSink& sink, const ImportOptions& options) {
    return readRows(path, sink, options, nullptr, nullptr);
}

Result<Capture> loadCapture(const std::string& path, const ImportOptions& options) {
    struct Loader : RowSink {
        Capture capture;
        Status header(const CaptureHeader& read) override {
            capture.header = read;
            return Done{};
        }
        void reading(const Reading& read) override { capture.add(read); }
        void mark(const Mark& read) override { capture.add(read); }
    } loader;
    auto summary = readCapture(path, loader, options);
    if (!summary) return summary.error();
    loader.capture.summary = std::move(*summary);
    return std::move(loader.capture);
}

} // namespace stillwire
