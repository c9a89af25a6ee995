// SPDX-License-Identifier: GPL-3.0-or-later
// What the header of a capture, what the person gives over it and the first readings mean together: all that a trace
// is judged by. Live, replay, `analyse`, the report and the start page ask here, so they agree. Pure.
#pragma once

#include "core/capture/header.hpp"
#include "core/domain/reading.hpp"
#include "core/explain/tuning.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stillwire {

struct ExaminationSetup {
    Sheet sheet;
    MeterTraits meter;      // interval_s == 0 or no ranges: taken as 0.33 s, 1 mV
    bool meterKnown = true; // false: accuracy 1 % + 5 counts is assumed, and said
    ProbeSide probe = ProbeSide::sensorSide;
    BlackLead black = BlackLead::batteryNegative;
    std::vector<std::string> sections{};         // of the harness, from the sensor; empty: not named
    std::optional<MeterTraits> referenceMeter{}; // of the readings flagged `ref`; absent: one like `meter`
    std::vector<Sentence> assumed{};             // of the rows, by who read them
    bool meterLearnt = false; // from the trace, in part at least: readings up to kTeachingReadings may change it
    Tuning tuning{};          // another than this only to see how much hangs on a figure
};

// What the person gives over the header; what is absent is the header's.
struct SetupOverrides {
    std::optional<Sheet> sheet{};
    std::optional<MeterTraits> meter{};
};

// So many readings at most, those of a second meter counted too, teach what no description says of the meter.
inline constexpr std::size_t kTeachingReadings = 512;

// `first`: the first readings, or none as long as there are none. Error: neither gives a sheet; `where` names the
// capture in it.
[[nodiscard]] Result<ExaminationSetup> examinationSetup(const CaptureHeader& header, const SetupOverrides& given,
                                                        std::span<const Reading> first, const std::string& where);

} // namespace stillwire
