// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/reader.hpp"

#include "core/capture/file_bytes.hpp"
#include "core/capture/read_rows.hpp"
#include "core/capture/text_encoding.hpp"
#include "core/capture/whole_seconds.hpp"

#include <algorithm>
#include <cstring>

namespace stillwire {

namespace {

constexpr std::size_t kBlock = std::size_t{1} << 18; // stays in the second-level cache while it is parsed

ImportTaken takenOf(const Prologue& prologue, const RowParser& parser, const TextEncoding& encoding) {
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
    taken.encoding = encoding.name();
    taken.delimiter = layout.delimiter;
    const ForeignCells& cells = parser.foreign();
    taken.decimal = cells.numbers().certain();
    if (layout.time != Layout::kNone) taken.timeAs = cells.times().as();
    taken.dateOrder = cells.times().order();
    const int exponent = layout.volts.exponent;
    taken.voltsUnit = exponent == -3 ? "mV" : exponent == -6 ? "µV" : exponent == 3 ? "kV" : "V";
    taken.timeUnitAssumed = cells.times().unitAssumed();
    taken.voltsUnitAssumed = !layout.volts.unitGiven;
    taken.withoutNumber = cells.withoutNumber();
    return taken;
}

ReadSummary summaryOf(const Prologue& prologue, RowParser& parser, const TextEncoding& encoding) {
    ReadSummary summary;
    summary.rows = parser.rows();
    summary.imported = prologue.layout.imported;
    if (summary.imported) summary.taken = takenOf(prologue, parser, encoding);
    summary.warnings = prologue.warnings;
    for (Sentence& warning : parser.warnings()) summary.warnings.push_back(std::move(warning));
    return summary;
}

} // namespace

Result<ReadSummary> readCaptureText(std::string_view bytes, const std::string& where, RowSink& sink,
                                    const ImportOptions& options) {
    TextEncoding encoding(bytes);
    std::string decoded;
    if (!encoding.untouched()) {
        encoding.decode(bytes, decoded);
        bytes = decoded;
    }
    auto prologue = readPrologue(bytes, true, where, options);
    if (!prologue) return prologue.error();
    if (auto status = sink.header(prologue->header); !status) return status.error();
    SecondSpreader spreader(sink, prologue->layout.imported);
    RowParser parser(*prologue, where, prologue->sharedSeconds ? spreader : sink, nullptr, options.lastLine);
    if (auto used = parser.consume(bytes.substr(prologue->rowsAt), true); !used) return used.error();
    spreader.finish();
    return summaryOf(*prologue, parser, encoding);
}

namespace {

// A file in blocks, its bytes as UTF-8 with LF ends.
class Blocks {
public:
    Blocks(FileBytes file, const std::string& path, const ImportOptions& options)
        : file_(std::move(file)), path_(path), options_(options), buffer_(2 * kBlock) {}

    // Enough to tell how the file is encoded, then a block at a time. ended() once nothing more came.
    [[nodiscard]] Status more() {
        if (!told_) {
            do {
                if (auto status = read(); !status) return status;
            } while (!ended_ && filled_ < TextEncoding::kSample);
            told_ = true;
            encoding_ = TextEncoding(view());
            if (!encoding_.untouched()) decodeFrom(0);
            return Done{};
        }
        const std::size_t before = filled_;
        if (auto status = read(); !status) return status;
        if (!encoding_.untouched()) decodeFrom(before);
        return Done{};
    }
    void drop(std::size_t bytes) {
        filled_ -= bytes;
        std::memmove(buffer_.data(), buffer_.data() + bytes, filled_);
    }
    [[nodiscard]] std::string_view view() const { return {buffer_.data(), filled_}; }
    [[nodiscard]] bool ended() const { return ended_; }
    [[nodiscard]] const TextEncoding& encoding() const { return encoding_; }

private:
    Status read() {
        makeRoom(kBlock);
        auto n = file_.read(buffer_.data() + filled_, kBlock);
        if (!n) return n.error();
        filled_ += *n;
        read_ += *n;
        ended_ = *n == 0;
        if (options_.told && !options_.told(read_))
            return Error{Error::Kind::badInput, path_, 0, "reading it was given up", "open it again"};
        return Done{};
    }
    // Grows for a long header or preamble only: what a block leaves over is less than one row of the longest.
    void makeRoom(std::size_t bytes) {
        while (buffer_.size() - filled_ < bytes) buffer_.resize(2 * buffer_.size());
    }
    void decodeFrom(std::size_t at) {
        decoded_.clear();
        encoding_.decode(view().substr(at), decoded_);
        filled_ = at;
        makeRoom(decoded_.size());
        std::copy(decoded_.begin(), decoded_.end(), buffer_.begin() + static_cast<std::ptrdiff_t>(at));
        filled_ += decoded_.size();
    }

    FileBytes file_;
    const std::string& path_;
    const ImportOptions& options_;
    std::vector<char> buffer_;
    std::string decoded_;
    TextEncoding encoding_;
    std::size_t filled_ = 0;
    std::uint64_t read_ = 0;
    bool ended_ = false, told_ = false;
};

} // namespace

Result<ReadSummary> readRows(const std::string& path, RowSink& sink, const ImportOptions& options, RawRows* raw,
                             Prologue* prologueOut) {
    auto file = FileBytes::open(path);
    if (!file) return file.error();
    Blocks blocks(std::move(*file), path, options);
    std::size_t looked = 0;
    do {
        if (auto status = blocks.more(); !status) return status.error();
    } while (!blocks.ended() && !prologueFits(blocks.view(), options, looked));

    auto prologue = readPrologue(blocks.view(), blocks.ended(), path, options);
    if (!prologue) return prologue.error();
    if (prologueOut) *prologueOut = *prologue;
    if (auto status = sink.header(prologue->header); !status) return status.error();
    SecondSpreader spreader(sink, prologue->layout.imported);
    // Who wants the bytes of the rows wants their times as written.
    RowParser parser(*prologue, path, prologue->sharedSeconds && !raw ? spreader : sink, raw, options.lastLine);
    std::size_t done = prologue->rowsAt;
    for (;;) {
        auto used = parser.consume(blocks.view().substr(done), blocks.ended());
        if (!used) return used.error();
        if (blocks.ended()) {
            spreader.finish();
            return summaryOf(*prologue, parser, blocks.encoding());
        }
        blocks.drop(done + *used);
        done = 0;
        if (auto status = blocks.more(); !status) return status.error();
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
