// SPDX-License-Identifier: GPL-3.0-or-later
// Rows out of bytes that come in blocks, to a sink. Holds one batch of readings and nothing else.
#pragma once

#include "core/capture/foreign_cells.hpp"
#include "core/capture/prologue.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

enum class RowKind { reading, mark, other };

// Who wants the bytes of the rows as well: hashing, rewriting. `raw` has its line end.
class RawRows {
public:
    virtual ~RawRows() = default;
    virtual void row(std::string_view raw, RowKind kind, Time time) = 0;
};

class RowParser {
public:
    static constexpr std::size_t kLongestRow = 65536;

    // `raw` may be null. The sink gets the rows, not the header. `lastLine`: what is behind it is no reading; 0: all
    // that comes is one.
    RowParser(const Prologue& prologue, std::string where, RowSink& sink, RawRows* raw,
              std::optional<int> lastLine = std::nullopt);
    RowParser(const RowParser&) = delete; // what reads the cells looks at the layout
    RowParser& operator=(const RowParser&) = delete;

    // Takes as many whole rows as `bytes` holds; returns how many bytes those were. `last`: nothing follows, and what
    // is left is torn.
    [[nodiscard]] Result<std::size_t> consume(std::string_view bytes, bool last);

    [[nodiscard]] std::size_t rows() const { return rows_; }
    [[nodiscard]] std::vector<Sentence>& warnings() { return warnings_; }
    [[nodiscard]] const ForeignCells& foreign() const { return foreign_; }

private:
    [[nodiscard]] const char* plainRows(const char* p, const char* end);
    [[nodiscard]] Status slowRow(std::string_view raw);
    [[nodiscard]] Status captureRow(std::string_view raw, std::size_t count);
    [[nodiscard]] Status foreignRow(std::string_view row, std::size_t count);
    [[nodiscard]] Status belongs(std::string_view time, Time at);
    [[nodiscard]] Status below();
    [[nodiscard]] Status inOrder(Time time);
    [[nodiscard]] Status torn(std::string_view rest);
    [[nodiscard]] Error bad(Sentence what, Sentence mend) const;
    void add(const Reading& reading);
    void flush();

    const Layout layout_;
    const std::string where_;
    RowSink& sink_;
    RawRows* raw_;
    int plainCommas_ = -1; // behind the volts of a plain row; -1: this layout has none
    Time last_{0};
    bool any_ = false;
    int line_;
    std::size_t rows_ = 0;
    std::size_t batched_ = 0;
    std::array<Reading, 256> batch_;
    std::vector<std::string> fields_;
    std::vector<Sentence> warnings_;

    // Imports: what may stand below the readings without being one.
    ForeignCells foreign_;
    const std::string columnLine_;
    const std::optional<int> lastLine_;
    std::optional<Error> unread_; // a row of words: an error if readings follow
    int unreadFrom_ = 0;
    bool blank_ = false, spaced_ = false; // an empty line stood before this one; they stand between all rows
    int decimals_ = -1;                   // of the times, as long as all have as many; -1: they have not
    Time step_{0};                        // the last one
    std::optional<Error> odd_;            // the last row, if it is not written as the others are
};

} // namespace stillwire
