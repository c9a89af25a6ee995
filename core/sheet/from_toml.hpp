// SPDX-License-Identifier: GPL-3.0-or-later
// Sheets and meters out of a parsed tree, for texts of their own and for the header of a capture.
#pragma once

#include "core/sheet/meter_traits.hpp"
#include "core/sheet/sheet.hpp"
#include "core/text/keys.hpp"

#include <string>

namespace stillwire {

// `toml` of the result stays empty: the caller knows the text.
[[nodiscard]] Result<Sheet> sheetFromToml(const TomlNode& root, const TomlOrigin& origin);
[[nodiscard]] Result<MeterTraits> meterTraitsFromToml(const TomlNode& root, const TomlOrigin& origin);

// The keys of a sheet or a meter that was made in code and has no text.
[[nodiscard]] std::string describe(const Sheet& sheet);
[[nodiscard]] std::string describe(const MeterTraits& meter);

} // namespace stillwire
