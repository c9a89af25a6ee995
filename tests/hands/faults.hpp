// SPDX-License-Identifier: GPL-3.0-or-later
// What may be wrong with sensor, wiring, supply or linkage, and what the contract says of it when all was looked at.
#pragma once

#include "core/findings/findings.hpp"

#include <array>
#include <string_view>
#include <vector>

namespace stillwire::hands {

enum class Fault {
    none,
    shaft,
    harness,
    connector,
    referenceLow,
    referenceDrops,
    ground,
    stuckAtZero,
    stuckAtReference,
    leadOnSignal,
    adjust,
    span,
    hangOnStop,
    hangOffStop
};

struct FaultRow {
    Fault fault;
    std::string_view name;
    std::string_view says;
    std::vector<Decision> right;
};

[[nodiscard]] const std::vector<FaultRow>& faultTable();
[[nodiscard]] const FaultRow& row(Fault fault);

} // namespace stillwire::hands
