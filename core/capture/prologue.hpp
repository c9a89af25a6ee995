// SPDX-License-Identifier: GPL-3.0-or-later
// What comes before the rows: a byte order mark, the header behind its hashes, the line of columns.
#pragma once

#include "core/base/result.hpp"
#include "core/capture/layout.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

struct Prologue {
    CaptureHeader header;
    Layout layout;
    std::string columnLine;     // as written, without its line end
    std::size_t rowsAt = 0;     // where the rows begin, in bytes
    int lines = 0;              // before the rows
    int columnsLine = 0;        // the number of that line; 0: the columns have no names
    bool sharedSeconds = false; // several readings have the same whole second: see whole_seconds.hpp
    std::vector<Sentence> warnings;
};

// True if `head` holds enough of the file for readPrologue: the header, any preamble, the columns, and 64 KiB behind
// them. `looked`, 0 at first: how much was there when a preamble was last looked through. It is again when there is
// twice as much.
[[nodiscard]] bool prologueFits(std::string_view head, const ImportOptions& options, std::size_t& looked);

// `head`: the first bytes of the file, or all of them if `whole`.
[[nodiscard]] Result<Prologue> readPrologue(std::string_view head, bool whole, const std::string& where,
                                            const ImportOptions& options);

} // namespace stillwire
