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

} // namespace

RowParser::RowParser(const Prologue& prologue, std::string where, RowSink& sink, RawRows* raw)
    : layout_(prologue.layout), where_(std::move(where)), sink_(sink), raw_(raw), line_(prologue.lines) {
    // Behind the volts only flags and mark: both empty is what makes a row plain.
    if (!layout_.imported && layout_.time == 0 && layout_.volts == 1) plainCommas_ = layout_.columns - 2;
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
    const auto tell = [&](RowKind kind, Time time) {
        if (raw_) raw_->row(raw, kind, time);
        line_ += moreLines;
    };
    if (trimmed(row).empty() || row.front() == '#') {
        tell(RowKind::other, last_);
        return Done{};
    }
    const std::size_t count = splitRow(row, layout_.delimiter, fields_);
    for (std::size_t i = static_cast<std::size_t>(layout_.columns); i < count; ++i) {
        if (!trimmed(fields_[i]).empty()) {
            return bad("the row has more fields than there are columns",
                       layout_.imported ? Sentence{"put decimal commas in quotes or use another delimiter"}
                                        : Sentence{"correct the row or remove it"});
        }
    }
    const auto cell = [&](int column) {
        const auto index = static_cast<std::size_t>(column);
        return column >= 0 && index < count ? trimmed(fields_[index]) : std::string_view();
    };
    CellText cells{cell(layout_.time), cell(layout_.volts), cell(layout_.flags), cell(layout_.date),
                   cell(layout_.unit)};
    const bool isMark = !cell(layout_.mark).empty();
    if (isMark) cells.volts = {};
    if (layout_.imported && cells.time.empty() && cells.volts.empty() && !isMark) {
        tell(RowKind::other, last_);
        return Done{};
    }
    Reading reading;
    bool timeOfDay = false;
    if (auto error = readCells(cells, layout_, reading, timeOfDay))
        return bad(std::move(error->what), std::move(error->mend));
    if (auto status = inOrder(reading, timeOfDay); !status) return status;
    if (isMark) {
        flush();
        sink_.mark(Mark{reading.time, fields_[static_cast<std::size_t>(layout_.mark)]});
    } else {
        add(reading);
    }
    ++rows_;
    tell(isMark ? RowKind::mark : RowKind::reading, reading.time);
    return Done{};
}

Status RowParser::inOrder(Reading& reading, bool timeOfDay) {
    constexpr Time kHalfDay = std::chrono::hours(12), kDay = std::chrono::hours(24);
    if (layout_.imported) {
        if (!any_) base_ = reading.time;
        reading.time += midnights_ - base_;
        if (timeOfDay && any_ && reading.time < last_ - kHalfDay) {
            midnights_ += kDay;
            reading.time += kDay;
        }
    }
    if (reading.time < Time(0) && !any_)
        return bad("the time is negative", "count times from the start of the capture");
    if (any_ && reading.time < last_) {
        return bad({"times go back from %1 s to %2 s", {formatTime(last_), formatTime(reading.time)}},
                   "remove the row or split the file there");
    }
    last_ = reading.time;
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
