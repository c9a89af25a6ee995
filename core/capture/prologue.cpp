// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/prologue.hpp"

#include "core/capture/cell_error.hpp"
#include "core/capture/fields.hpp"
#include "core/capture/whole_seconds.hpp"
#include "core/text/number.hpp"

#include <algorithm>

namespace stillwire {

namespace {

constexpr std::size_t kSample = 65536;                   // bytes looked at behind the header
constexpr std::size_t kMostHead = std::size_t{20} << 20; // header and sample; a larger header is refused anyway
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

// The rows behind `at`, as many as are looked at to learn how they are written.
std::vector<std::string_view> sampleRows(std::string_view head, std::size_t at, bool whole) {
    std::vector<std::string_view> rows;
    // However much more of the file there is: a file reads the same in blocks of any size.
    whole = whole && at + kSample >= head.size();
    for (Lines lines(head.substr(0, std::min(at + kSample, head.size())), at);
         !lines.done() && rows.size() < kMostSampleRows && (whole || lines.endsHere());) {
        const std::string_view row = lines.next();
        if (!trimmed(row).empty() && row.front() != '#') rows.push_back(row);
    }
    return rows;
}

// The line of columns, at the start of the rows or below a foreign preamble.
struct Found {
    bool any = false, ours = false;
    Recognised as;
    std::string_view line;
    std::size_t at = 0, after = 0;
    int number = 0; // of the line
};

// The line that says most of both columns, to be shown where no line says enough.
struct Nearest {
    std::string_view line;
    int number = 0, known = -1;
    bool hasTime = false, hasVolts = false;
};

Found findColumns(std::string_view head, std::size_t headerAt, int headerLines, bool whole,
                  const ImportOptions& options, Nearest& nearest) {
    const bool told = !options.timeColumn.empty() || !options.voltsColumn.empty() || options.delimiter != '\0';
    Found best;
    int number = headerLines;
    for (Lines lines(head, headerAt); !lines.done();) {
        const std::size_t at = lines.at();
        const std::string_view line = lines.next();
        ++number;
        // No line of columns is that long, and splitting it into a field per byte would cost more than the file is
        // worth.
        if (line.size() > kSample || trimmed(line).empty()) continue;
        Found found{true, false, {}, line, at, lines.at(), number};
        if (!told && recogniseCapture(line, found.as.layout)) {
            found.ours = true;
            return found;
        }
        found.as = recogniseForeign(line, sampleRows(head, lines.at(), whole), options);
        const int known = int{found.as.hasTime} + int{found.as.hasVolts};
        if (known > nearest.known) nearest = {line, number, known, found.as.hasTime, found.as.hasVolts};
        if (known < 2) continue;
        // Names of which no row below has a value may be a sentence of the preamble.
        if (!best.any || found.as.rowsFit) best = found;
        if (found.as.rowsFit) return best;
    }
    return best;
}

Error noColumns(const Nearest& nearest, const std::string& where, const ImportOptions& options) {
    const std::string seen = quotedCell(trimmed(nearest.line));
    const bool empty = trimmed(nearest.line).empty();
    const auto say = [&](Sentence what, Sentence mend) {
        return bad(where, nearest.number, std::move(what), std::move(mend));
    };
    if (!options.timeColumn.empty() || !options.voltsColumn.empty() || !options.referenceColumn.empty())
        return say(empty ? Sentence{"the columns that were named are not there"}
                         : Sentence{"the columns that were named are not there in %1", {seen}},
                   "check the names against the line of columns, or give the columns by number");
    if (nearest.hasTime)
        return say({"no volts column is found in %1", {seen}},
                   "give it with --volts-column, by its name or its number from 1");
    if (nearest.hasVolts)
        return say(
            {"no time column is found in %1", {seen}},
            "give it with --time-column, by its name or its number from 1, or the seconds between the rows with "
            "--interval");
    return say(empty ? Sentence{"no time and volts columns found"}
                     : Sentence{"no time and volts columns found in %1", {seen}},
               "give them with --time-column and --volts-column, by their names or their numbers from 1");
}

void takeColumns(const Found& found, Prologue& prologue) {
    prologue.layout = found.as.layout;
    prologue.columnLine = std::string(found.line);
    prologue.rowsAt = found.after;
    prologue.lines = prologue.columnsLine = found.number;
    if (found.as.namesAreARow) {
        prologue.rowsAt = found.at;
        --prologue.lines;
        prologue.columnsLine = 0;
        prologue.columnLine.clear();
    }
}

} // namespace

bool prologueFits(std::string_view head, const ImportOptions& options, std::size_t& looked) {
    if (head.size() >= kMostHead) return true;
    const std::size_t at = headerEnd(head);
    if (at + kSample > head.size() || head.size() < 2 * looked) return false;
    looked = head.size();
    Nearest nearest;
    const Found found = findColumns(head, at, 0, false, options, nearest);
    return found.any && found.after + kSample <= head.size();
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
    Nearest nearest;
    const Found found = findColumns(head, headerAt, prologue.lines, whole, options, nearest);
    if (!found.any) {
        // A header that is broken says more than columns that are missing behind it.
        if (headerAt >= head.size() && looksLikeToml(toml)) {
            if (auto header = parseHeader(toml, where, 1); !header) return header.error();
        }
        return noColumns(nearest, where, options);
    }
    const auto asked = [&](const CellError& question, int line) {
        return bad(where, line, question.what, question.mend);
    };
    if (found.as.question) return asked(*found.as.question, found.number);
    takeColumns(found, prologue);
    if (!found.as.namesAreARow && head.find('\n', found.at) == std::string_view::npos)
        prologue.warnings.push_back("the line of columns has no end; no row follows it");
    if (auto error = readHeader(toml, where, prologue)) return *error;
    if (prologue.layout.imported) {
        Lines lines(head, prologue.rowsAt);
        while (found.as.unitsBelow && !lines.done()) {
            const bool blank = trimmed(lines.next()).empty();
            ++prologue.lines;
            prologue.rowsAt = lines.at();
            if (!blank) break;
        }
        const auto rows = sampleRows(head, prologue.rowsAt, whole);
        if (const auto question = learnCells(rows, options, prologue.layout))
            return asked(*question, prologue.lines + 1);
        if (prologue.layout.times.unitAssumed())
            prologue.header.assumed.push_back("times without a unit are seconds");
        if (!prologue.layout.volts.unitGiven && prologue.layout.volts.unitColumn == Layout::kNone)
            prologue.header.assumed.push_back("values without a unit are volts");
        if (options.interval)
            prologue.header.assumed.push_back({"the readings are %1 apart", {seconds(toSeconds(*options.interval))}});
    }
    const std::size_t sampleEnd = std::min(prologue.rowsAt + kSample, head.size());
    if (prologue.rowsAt < sampleEnd && !options.interval) {
        const SharedTimes shared = sharedTimes(head.substr(prologue.rowsAt, sampleEnd - prologue.rowsAt), prologue);
        if (shared == SharedTimes::minutes)
            return bad(where, prologue.lines + 1, "times are whole minutes, with several readings on each",
                       "save them with seconds, or give the seconds between the readings with --interval");
        if (shared == SharedTimes::all)
            return bad(where, prologue.lines + 1, "the time stands still",
                       "give the column of the times with --time-column, or the seconds between the readings with "
                       "--interval");
        prologue.sharedSeconds = shared == SharedTimes::seconds;
    }
    if (prologue.sharedSeconds)
        prologue.header.assumed.push_back("times are whole seconds: readings spread evenly within each");
    return prologue;
}

} // namespace stillwire
