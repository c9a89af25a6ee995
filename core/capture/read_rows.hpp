// SPDX-License-Identifier: GPL-3.0-or-later
// The reader with the raw rows on tap, for hashing and rewriting.
#pragma once

#include "core/capture/row_parser.hpp"

namespace stillwire {

// `raw` may be null; `prologue` may be null, else it is filled before the first row.
[[nodiscard]] Result<ReadSummary> readRows(const std::string& path, RowSink& sink, const ImportOptions& options,
                                           RawRows* raw, Prologue* prologue);

} // namespace stillwire
