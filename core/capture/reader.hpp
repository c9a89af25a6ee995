// SPDX-License-Identifier: GPL-3.0-or-later
// Reads a capture, or any CSV with a time and a volts column, and hands on its rows in order. One pass, constant
// memory but for what the sink keeps.
#pragma once

#include "core/base/result.hpp"
#include "core/capture/header.hpp"
#include "core/capture/time_column.hpp"
#include "core/domain/mark.hpp"
#include "core/domain/reading.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace stillwire {

// Said by the person when a foreign CSV cannot be recognised; empty members are found out.
struct ImportOptions {
    std::string timeColumn;
    std::string voltsColumn;
    std::string referenceColumn; // a second channel, on the reference wire
    char delimiter = '\0';
    std::optional<bool> decimalComma;
    std::optional<TimeAs> timeAs;
    std::optional<DateOrder> dateOrder;
    std::optional<int> voltsExponent; // -3: millivolts, of a column that does not say
    std::optional<Time> interval;     // the file has no times: its rows are so far apart
    std::optional<int> lastLine;      // that holds a reading; 0: the file's last
    // Told after each block with the bytes of the file read so far; false gives the reading up, which is an error.
    std::function<bool(std::uint64_t bytes)> told{};
};

// Who takes the rows. header() comes once, before any row.
class RowSink {
public:
    virtual ~RowSink() = default;
    virtual Status header(const CaptureHeader&) { return Done{}; }
    virtual void reading(const Reading& reading) = 0;
    // Readings that follow each other with no mark between; override it where a call per reading costs too much. The
    // reader calls only this one.
    virtual void readings(const Reading* first, std::size_t count) {
        for (std::size_t i = 0; i < count; ++i) reading(first[i]);
    }
    virtual void mark(const Mark& mark) = 0;
};

// How a foreign CSV was read, for whoever has to trust it. Empty members: it has no such column, or nothing told.
struct ImportTaken {
    std::string timeColumn, dateColumn, voltsColumn, referenceColumn; // names as written, or numbers from 1
    int columnsLine = 0;                                              // 0: the columns have no names
    std::string encoding;                                             // "UTF-8", "UTF-16LE" …
    char delimiter = '\0';
    std::optional<DecimalSign> decimal;
    std::optional<TimeAs> timeAs; // nothing if the interval was given
    std::optional<DateOrder> dateOrder;
    std::string voltsUnit; // "V", "mV", "µV", "kV": of the column; a cell's own goes before it
    bool timeUnitAssumed = false, voltsUnitAssumed = false;
    std::size_t withoutNumber = 0; // rows in which the meter showed none
};

struct ReadSummary {
    std::size_t rows = 0;
    bool imported = false;          // a foreign CSV, times counted from its first row
    ImportTaken taken;              // of an import
    std::vector<Sentence> warnings; // a torn last line, a newer format: one sentence each
};

// Errors: cannot be opened, empty of known columns, binary, a time that goes back, a volts field that is no number,
// each with file, line and mend. Columns without rows are fine.
[[nodiscard]] Result<ReadSummary> readCapture(const std::string& path, RowSink& sink,
                                              const ImportOptions& options = {});
// The same from bytes in memory; `where` names them in errors.
[[nodiscard]] Result<ReadSummary> readCaptureText(std::string_view bytes, const std::string& where, RowSink& sink,
                                                  const ImportOptions& options = {});

// A whole capture in memory, for replay, edits and tests. Rows in file order.
struct Capture {
    struct Row {
        bool isMark = false;
        std::size_t index = 0; // into readings or marks
    };
    CaptureHeader header;
    std::vector<Reading> readings;
    std::vector<Mark> marks;
    std::vector<Row> rows;
    ReadSummary summary;

    void add(const Reading& reading) {
        rows.push_back({false, readings.size()});
        readings.push_back(reading);
    }
    void add(const Mark& mark) {
        rows.push_back({true, marks.size()});
        marks.push_back(mark);
    }
    // `take` gets each reading and each mark, in the order of the file.
    template <class Take> void eachRow(Take take) const {
        for (const Row& row : rows) {
            if (row.isMark)
                take(marks[row.index]);
            else
                take(readings[row.index]);
        }
    }
};
[[nodiscard]] Result<Capture> loadCapture(const std::string& path, const ImportOptions& options = {});

// SHA-256 over the bytes of all reading rows, LF ends, in order; lower-case hexadecimal.
[[nodiscard]] Result<std::string> captureHash(const std::string& path);

// Rewrites the marks beside the file and renames: reading rows stay byte for byte, old marks go into the header.
[[nodiscard]] Status rewriteMarks(const std::string& path, const std::vector<Mark>& marks);

} // namespace stillwire
