// SPDX-License-Identifier: GPL-3.0-or-later
// The header of a capture: one TOML document behind `# `.
#pragma once

#include "core/base/result.hpp"
#include "core/domain/wire.hpp"
#include "core/sheet/meter_traits.hpp"
#include "core/sheet/sheet.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

enum class BlackLead { batteryNegative, sensorGround };

struct CaptureHeader {
    int format = 1;
    std::string started; // offset date-time, RFC 3339
    std::string notes;
    ProbeSide probe = ProbeSide::sensorSide;
    BlackLead black = BlackLead::batteryNegative;
    std::vector<std::string> sections; // of the harness, from the sensor; empty: not named
    std::optional<Sheet> sheet;
    std::optional<MeterTraits> meter;
    std::optional<MeterTraits> referenceMeter; // of the readings flagged `ref`; [reference_meter]
    std::string other;                         // unknown keys and old marks, TOML text, kept as they were
    std::vector<Sentence> assumed{};           // not in the file: what its reader took for granted of the rows
};

inline constexpr int kCaptureFormat = 1;

// `toml` is the header with "# " taken off; `where` names the file. A newer format is not an error here: the caller
// warns. A broken sheet or meter is an error, with the line in the file (the header starts at `firstLine`).
[[nodiscard]] Result<CaptureHeader> parseHeader(std::string_view toml, const std::string& where, int firstLine = 1);

// Every line behind "# ", newline at the end; all keys written.
[[nodiscard]] std::string formatHeader(const CaptureHeader& header);

} // namespace stillwire
