// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/row_parser.hpp"

#include "core/base/sentence.hpp"
#include "core/capture/cells.hpp"
#include "core/capture/fields.hpp"
#include "core/capture/plain_row.hpp"
#include "core/capture/writer.hpp"
#include "core/text/number.hpp"

#include <algorithm>

namespace stillwire {

namespace {

constexpr std::ptrdiff_t kMostTornLines = 20;

// The row without what stands in one of its fields; every other byte as it is.
std::string withoutField(std::string_view raw, int field) {
    std::string out;
    int at = 0;
    bool quoted = false;
    for (const char c : raw) {
        if (c == '"') quoted = !quoted;
        const bool end = !quoted && (c == ',' || c == '\n' || c == '\r');
        if (at != field || end) out += c;
        if (end && c == ',') ++at;
    }
    return out;
}

} // namespace

RowParser::RowParser(const Prologue& prologue, std::string where, RowSink& sink, RawRows* raw,
                     std::optional<int> lastLine)
    : layout_(prologue.layout), where_(std::move(where)), sink_(sink), raw_(raw), line_(prologue.lines),
      foreign_(layout_), columnLine_(prologue.columnLine), lastLine_(lastLine) {
    // Behind the volts only flags and mark: both empty is what makes a row plain.
    if (!layout_.imported && layout_.time == 0 && layout_.volts.column == 1) plainCommas_ = layout_.columns - 2;
    if (plainCommas_ > 2) plainCommas_ = -1;
}

Result<std::size_t> RowParser::consume(std::string_view bytes, bool last) {
    std::size_t at = 0;
    while (at < bytes.size()) {
        if (plainCommas_ >= 0 && !raw_) {
            const char* from = bytes.data() + at;
            at += static_cast<std::size_t>(plainRows(from, bytes.data() + bytes.size()) - from);
            if (at == bytes.size()) break;
        }
        const std::size_t end = rowEnd(bytes, at, layout_.delimiter);
        const std::size_t length = (end == std::string_view::npos ? bytes.size() : end + 1) - at;
        if (length > kLongestRow) {
            ++line_;
            flush();
            return bad("a row is longer than 64 KB, or a quote is never closed", "correct the row or remove it");
        }
        if (end == std::string_view::npos) break;
        if (auto status = slowRow(bytes.substr(at, length)); !status) {
            flush();
            return status.error();
        }
        at += length;
    }
    flush();
    if (last && at < bytes.size()) {
        if (auto status = torn(bytes.substr(at)); !status) return status.error();
        at = bytes.size();
    }
    if (last)
        if (auto status = below(); !status) return status.error();
    return at;
}

// The hot path: stops at the first row that is not plain, or too near the end for a look without bounds.
const char* RowParser::plainRows(const char* p, const char* end) {
    const int commas = plainCommas_;
    Time last = any_ ? last_ : Time(0);
    const std::size_t before = rows_;
    while (end - p >= plain_row::kLongest) {
        Reading& reading = batch_[batched_];
        const char* next = plain_row::parse(p, commas, reading.time, reading.volts_V);
        if (!next || reading.time < last) break;
        reading.flags = ReadingFlags();
        last = reading.time;
        p = next;
        ++rows_;
        if (++batched_ == batch_.size()) flush();
    }
    line_ += static_cast<int>(rows_ - before);
    any_ = any_ || rows_ != before;
    last_ = last;
    return p;
}

Status RowParser::slowRow(std::string_view raw) {
    const std::string_view row = withoutLineEnd(raw);
    ++line_;
    const auto moreLines = static_cast<int>(std::count(row.begin(), row.end(), '\n'));
    Status status = Done{};
    const bool blank = trimmed(row).empty();
    const bool beyond = lastLine_.value_or(0) > 0 && line_ > *lastLine_;
    if (blank || row.front() == '#' || beyond || (layout_.imported && row == columnLine_)) {
        blank_ = blank_ || (blank && any_);
        if (raw_) raw_->row(raw, RowKind::other, last_);
    } else {
        const std::size_t count = splitRow(row, layout_.delimiter, fields_);
        std::size_t used = count;
        while (used > static_cast<std::size_t>(layout_.columns) && trimmed(fields_[used - 1]).empty()) --used;
        if (used > static_cast<std::size_t>(layout_.columns))
            status = bad("the row has more fields than there are columns",
                         layout_.imported
                             ? Sentence{"put decimal commas in quotes or use another delimiter; what is below the "
                                        "readings --last-line leaves out"}
                             : Sentence{"correct the row or remove it"});
        else
            status = layout_.imported ? foreignRow(row, count) : captureRow(raw, count);
    }
    line_ += moreLines;
    return status;
}

// A mark may stand in a reading's own row: the reading is the first of what the mark opens.
Status RowParser::captureRow(std::string_view raw, std::size_t count) {
    const auto cell = [&](int column) {
        const auto index = static_cast<std::size_t>(column);
        return column >= 0 && index < count ? trimmed(fields_[index]) : std::string_view();
    };
    const bool isMark = !cell(layout_.mark).empty();
    const bool isReading = !isMark || !cell(layout_.volts.column).empty();
    Reading reading;
    if (auto error = readCells(cell(layout_.time), cell(layout_.volts.column), cell(layout_.flags), reading))
        return bad(std::move(error->what), std::move(error->mend));
    if (auto status = inOrder(reading.time); !status) return status;
    if (isMark) {
        flush();
        sink_.mark(Mark{reading.time, fields_[static_cast<std::size_t>(layout_.mark)]});
        if (raw_) raw_->row(raw, RowKind::mark, reading.time);
        ++rows_;
    }
    if (isReading) {
        add(reading);
        if (raw_) raw_->row(isMark ? withoutField(raw, layout_.mark) : raw, RowKind::reading, reading.time);
        ++rows_;
    }
    return Done{};
}

Status RowParser::foreignRow(std::string_view row, std::size_t count) {
    for (std::size_t i = count; i < fields_.size(); ++i) fields_[i].clear();
    const auto cell = [&](int column) {
        return column >= 0 && static_cast<std::size_t>(column) < count
                   ? trimmed(fields_[static_cast<std::size_t>(column)])
                   : std::string_view();
    };
    const std::string_view mark = cell(layout_.mark);
    const std::string_view time = cell(layout_.time);
    if (time.empty() && cell(layout_.volts.column).empty() && cell(layout_.reference.column).empty() && mark.empty())
        return Done{};
    ForeignCells::Row read;
    if (auto error = foreign_.readTime(fields_, read)) {
        Error bad = this->bad(std::move(error->what), std::move(error->mend));
        // A sum or a mean below the readings has words where a time stands, or nothing.
        const bool words = layout_.time != Layout::kNone && time.find_first_of("0123456789") != 0;
        if (!words || !any_) return bad;
        if (!unread_) {
            unread_ = std::move(bad);
            unreadFrom_ = line_;
        }
        return Done{};
    }
    if (unread_) return *unread_;
    if (auto status = belongs(time, read.time); !status) return status;
    if (auto error = foreign_.readVolts(fields_, read)) return bad(std::move(error->what), std::move(error->mend));
    if (auto status = inOrder(read.time); !status) return status;
    if (!mark.empty()) {
        flush();
        sink_.mark(Mark{read.time, std::string(mark)});
        ++rows_;
    }
    for (const auto& one : {read.reference, read.signal})
        if (one) {
            add(*one);
            ++rows_;
        }
    if (raw_) raw_->row(row, RowKind::reading, read.time);
    return Done{};
}

// Numbers below an empty line, or not written as all before them: readings, or a sum of them?
Status RowParser::belongs(std::string_view time, Time at) {
    if (lastLine_ || layout_.time == Layout::kNone) return Done{};
    const std::string mend = std::to_string(line_ - 1);
    if (blank_ && rows_ == 1) spaced_ = true;
    if (blank_ && !spaced_)
        return bad("below an empty line there are numbers again: readings, or a summary of them?",
                   {"say which with --last-line %1, or --last-line 0 for readings", {mend}});
    blank_ = false;
    const std::size_t sign = time.find_last_of(".,");
    const bool plain = time.find_first_not_of("0123456789.,") == std::string_view::npos;
    const int decimals = !plain ? -1 : sign == std::string_view::npos ? 0 : static_cast<int>(time.size() - sign - 1);
    const Time step = at - last_;
    constexpr std::size_t kEnoughRows = 5;
    if (rows_ == 0) decimals_ = decimals;
    if (odd_ || decimals != decimals_) {
        const bool leaps = rows_ >= kEnoughRows && decimals_ > 0 && 2 * step > 5 * step_;
        decimals_ = !odd_ && leaps ? decimals_ : -1;
        odd_ = decimals_ > 0
                   ? std::optional(bad("the last numbers are written otherwise than all before: a reading, "
                                       "or a summary of them?",
                                       {"say which with --last-line %1, or --last-line 0 for a reading", {mend}}))
                   : std::nullopt;
    }
    step_ = step;
    return Done{};
}

// At the end of the file.
Status RowParser::below() {
    if (odd_) return *odd_;
    if (unread_)
        warnings_.push_back(
            {"from line %1 on there are no readings; that is left out", {std::to_string(unreadFrom_)}});
    return Done{};
}

Status RowParser::inOrder(Time time) {
    if (time < Time(0) && !any_) return bad("the time is negative", "count times from the start of the capture");
    if (any_ && time < last_) {
        return bad({"times go back from %1 s to %2 s", {formatTime(last_), formatTime(time)}},
                   "remove the row or split the file there");
    }
    last_ = time;
    any_ = true;
    return Done{};
}

Status RowParser::torn(std::string_view rest) {
    if (rest.find_first_not_of(" \t\r\n") == std::string_view::npos) return Done{};
    ++line_;
    if (std::count(rest.begin(), rest.end(), '\n') > kMostTornLines) {
        return bad("a quote opens here that is never closed", "close it or remove it");
    }
    warnings_.push_back(
        {"line %1 is the last and has no end: it was torn off and left out", {std::to_string(line_)}});
    return Done{};
}

Error RowParser::bad(Sentence what, Sentence mend) const {
    return {Error::Kind::badInput, where_, line_, std::move(what), std::move(mend)};
}

void RowParser::add(const Reading& reading) {
    batch_[batched_] = reading;
    if (++batched_ == batch_.size()) flush();
}

void RowParser::flush() {
    if (batched_ > 0) sink_.readings(batch_.data(), batched_);
    batched_ = 0;
}

} // namespace stillwire
