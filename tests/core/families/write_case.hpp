// SPDX-License-Identifier: GPL-3.0-or-later
// A trace as files, so that the program itself can be scored by whoever reads them: NAME.csv, NAME.sheet.toml,
// NAME.meter.toml, NAME.truth.json.
#pragma once

#include "tests/core/families/trace.hpp"

namespace stillwire::families {

// False if a file could not be written.
[[nodiscard]] bool writeCase(const Trace& trace, const std::string& folder);

} // namespace stillwire::families
