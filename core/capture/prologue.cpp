// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/prologue.hpp"

#include "core/capture/fields.hpp"
#include "core/capture/whole_seconds.hpp"
#include "core/text/number.hpp"

#include <algorithm>

namespace stillwire {

namespace {

constexpr std::size_t kSample = 65536;                   // bytes looked at behind the header
constexpr std::size_t kMostHead = std::size_t{20} << 20; // header and sample; a larger header is refused anyway
constexpr int kMostPreamble = 60;                        // lines before the columns of a foreign file
constexpr std::size_t kMostSampleRows = 200;

Error bad(const std::string& where, int line, Sentence what, Sentence mend) {
    return {Error::Kind::badInput, where, line, std::move(what), std::move(mend)};
}

// Walks lines; the last one may lack its end.
class Lines {
public:
    Lines(std::string_view bytes, std::size_t at) : bytes_(bytes), at_(at) {}
    [[nodiscard]] bool done() const { return at_ >= bytes_.size(); }
    [[nodiscard]] std::size_t at() const { return at_; }
    [[nodiscard]] bool endsHere() const { return bytes_.find('\n', at_) != std::string_view::npos; }
    std::string_view next() {
        const std::size_t end = bytes_.find('\n', at_);
        const std::string_view line = bytes_.substr(at_, end == std::string_view::npos ? end : end + 1 - at_);
        at_ += line.size();
        return withoutLineEnd(line);
    }

private:
    std::string_view bytes_;
    std::size_t at_ = 0;
};

std::size_t afterByteOrderMark(std::string_view bytes) { return bytes.substr(0, 3) == "\xEF\xBB\xBF" ? 3 : 0; }

std::size_t headerEnd(std::string_view bytes) {
    std::size_t at = afterByteOrderMark(bytes);
    while (at < bytes.size() && bytes[at] == '#') {
        const std::size_t end = bytes.find('\n', at);
        at = end == std::string_view::npos ? bytes.size() : end + 1;
    }
    return at;
}

std::optional<Error> notText(std::string_view bytes, const std::string& where) {
    if (bytes.empty()) return bad(where, 0, "the file is empty", "choose a capture or another CSV");
    const std::string_view sample = bytes.substr(0, kSample);
    const auto nulls = static_cast<std::size_t>(std::count(sample.begin(), sample.end(), '\0'));
    const std::string_view start = bytes.substr(0, 2);
    if (start == "\xFF\xFE" || start == "\xFE\xFF" ||
        (nulls * 5 > sample.size() * 2 && nulls * 5 < sample.size() * 3)) {
        return bad(where, 0, "the text is UTF-16", "save it as UTF-8");
    }
    const bool binary = std::any_of(sample.begin(), sample.end(), [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return byte < 0x20 && c != '\t' && c != '\n' && c != '\r';
    });
    if (binary) return bad(where, 0, "this is not a text file", "choose a capture or another CSV");
    return std::nullopt;
}

// A header that someone meant as one: prose behind hashes has neither tables nor keys.
bool looksLikeToml(std::string_view toml) {
    for (Lines lines(toml, 0); !lines.done();) {
        const std::string_view line = trimmed(lines.next());
        if (line.empty()) continue;
        const std::size_t equals = line.find('=');
        const std::string_view key = trimmed(line.substr(0, equals == std::string_view::npos ? 0 : equals));
        if ((line.front() == '[' && line.find(']') != std::string_view::npos) ||
            (!key.empty() && key.find_first_of(" \t") == std::string_view::npos)) {
            return true;
        }
    }
    return false;
}

void proseToNotes(const std::string& toml, Prologue& prologue) {
    if (trimmed(toml).empty()) return;
    prologue.header.notes = toml;
    while (!prologue.header.notes.empty() && prologue.header.notes.back() == '\n') prologue.header.notes.pop_back();
    prologue.warnings.push_back("the lines behind # are not a capture header and were taken as notes");
}

std::optional<Error> readHeader(const std::string& toml, const std::string& where, Prologue& prologue) {
    auto header = parseHeader(toml, where, 1);
    if (header) {
        prologue.header = std::move(*header);
        if (prologue.header.format > kCaptureFormat) {
            prologue.warnings.push_back(
                {"format %1 is newer than this program reads (%2); what it does not know was left out",
                 {std::to_string(prologue.header.format), std::to_string(kCaptureFormat)}});
        }
        return std::nullopt;
    }
    if (!prologue.layout.imported && looksLikeToml(toml)) return header.error();
    proseToNotes(toml, prologue);
    return std::nullopt;
}

// The line of columns, at the start of the rows or below a foreign preamble. True if found.
bool findColumns(std::string_view head, std::size_t headerAt, const ImportOptions& options, Prologue& prologue) {
    const bool told = !options.timeColumn.empty() || !options.voltsColumn.empty() || options.delimiter != '\0';
    Lines lines(head, headerAt);
    for (int looked = 0; looked < kMostPreamble && !lines.done(); ++looked) {
        const std::size_t at = lines.at();
        const bool complete = lines.endsHere();
        const std::string_view line = lines.next();
        ++prologue.lines;
        // No line of columns is that long, and splitting it into a field per byte would cost more than the file is
        // worth.
        if (line.size() > kSample || trimmed(line).empty()) continue;
        const bool ours = !told && recogniseCapture(line, prologue.layout);
        if (!ours && !recogniseForeign(line, options, prologue.layout)) continue;
        prologue.columnLine = std::string(line);
        prologue.rowsAt = lines.at();
        // Columns given by number have no names above them: such a line is the first row.
        std::vector<std::string> fields;
        const std::size_t count = splitRow(line, prologue.layout.delimiter, fields);
        const auto volts = static_cast<std::size_t>(prologue.layout.volts);
        if (!ours && volts < count && parseNumber(trimmed(fields[volts]))) {
            prologue.rowsAt = at;
            --prologue.lines;
        } else if (!complete) {
            prologue.warnings.push_back("the line of columns has no end; no row follows it");
        }
        return true;
    }
    return false;
}

Error noColumns(std::string_view head, std::size_t headerAt, const std::string& where, const ImportOptions& options) {
    Lines lines(head, headerAt);
    std::string_view first;
    while (first.empty() && !lines.done()) first = trimmed(lines.next());
    std::string seen(first.substr(0, 60));
    for (char& c : seen) {
        if (static_cast<unsigned char>(c) < 0x20) c = ' ';
    }
    const bool named = !options.timeColumn.empty() || !options.voltsColumn.empty();
    if (named)
        return bad(where, 0,
                   seen.empty() ? Sentence{"the columns that were named are not there"}
                                : Sentence{"the columns that were named are not there in \"%1\"", {seen}},
                   "check the names against the first line, or give the columns by number");
    return bad(where, 0,
               seen.empty() ? Sentence{"no time and volts columns found"}
                            : Sentence{"no time and volts columns found in \"%1\"", {seen}},
               "name the columns time_s and volts, or say which they are");
}

} // namespace

bool prologueFits(std::string_view head) {
    return head.size() >= kMostHead || headerEnd(head) + kSample <= head.size();
}

Result<Prologue> readPrologue(std::string_view head, bool whole, const std::string& where,
                              const ImportOptions& options) {
    if (auto error = notText(head, where)) return *error;
    Prologue prologue;
    std::size_t at = afterByteOrderMark(head);
    const std::size_t headerAt = headerEnd(head);
    std::string toml;
    for (Lines lines(head.substr(0, headerAt), at); !lines.done();) {
        std::string_view line = lines.next().substr(1);
        if (!line.empty() && line.front() == ' ') line.remove_prefix(1);
        toml += line;
        toml += '\n';
        ++prologue.lines;
    }
    if (auto error = notText(head.substr(std::min(headerAt, head.size() - 1)), where)) return *error;
    const int headerLines = prologue.lines;
    if (!findColumns(head, headerAt, options, prologue)) {
        // A header that is broken says more than columns that are missing behind it.
        if (headerAt >= head.size() && looksLikeToml(toml)) {
            if (auto header = parseHeader(toml, where, 1); !header) return header.error();
        }
        Error error = noColumns(head, headerAt, where, options);
        if (headerAt < head.size()) error.line = headerLines + 1;
        return error;
    }
    if (auto error = readHeader(toml, where, prologue)) return *error;
    if (prologue.layout.imported) {
        std::vector<std::string_view> rows;
        Lines lines(head, prologue.rowsAt);
        while (!lines.done() && rows.size() < kMostSampleRows && (whole || lines.endsHere())) {
            const std::string_view row = lines.next();
            if (!trimmed(row).empty()) rows.push_back(row);
        }
        learnCells(rows, options, prologue.layout);
    }
    const std::size_t sampleEnd = headerAt + kSample; // however much more of the file there is
    if (prologue.rowsAt < sampleEnd)
        prologue.sharedSeconds =
            sharesWholeSeconds(head.substr(prologue.rowsAt, sampleEnd - prologue.rowsAt), prologue);
    if (prologue.sharedSeconds)
        prologue.header.assumed.push_back("times are whole seconds: readings spread evenly within each");
    return prologue;
}

} // namespace stillwire
