// SPDX-License-Identifier: GPL-3.0-or-later
// Rows out of bytes that come in blocks, to a sink. Holds one batch of readings and nothing else.
#pragma once

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

    // `raw` may be null. The sink gets the rows, not the header.
    RowParser(const Prologue& prologue, std::string where, RowSink& sink, RawRows* raw);

    // Takes as many whole rows as `bytes` holds; returns how many bytes those were. `last`: nothing follows, and what
    // is left is torn.
    [[nodiscard]] Result<std::size_t> consume(std::string_view bytes, bool last);

    [[nodiscard]] std::size_t rows() const { return rows_; }
    [[nodiscard]] std::vector<Sentence>& warnings() { return warnings_; }

private:
    [[nodiscard]] const char* plainRows(const char* p, const char* end);
    [[nodiscard]] Status slowRow(std::string_view raw);
    [[nodiscard]] Status inOrder(Reading& reading, bool timeOfDay);
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
    Time base_{0}, midnights_{0}; // imports: the first row's time, the days gone by in times of day
    int line_;
    std::size_t rows_ = 0;
    std::size_t batched_ = 0;
    std::array<Reading, 256> batch_;
    std::vector<std::string> fields_;
    std::vector<Sentence> warnings_;
};

} // namespace stillwire
