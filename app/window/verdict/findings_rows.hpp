// SPDX-License-Identifier: GPL-3.0-or-later
// Findings as rows to show: the few that sum up a session, and every event with its place in time.
#pragma once

#include "app/window/look/paint.hpp"
#include "core/findings/findings.hpp"

#include <optional>
#include <vector>

#include <QString>

namespace stillwire {

struct FindingRow {
    Shape shape = Shape::none;
    Role colour = Role::ink;
    QString title, detail;
    std::optional<double> at_s; // where to look in the trace
    friend bool operator==(const FindingRow&, const FindingRow&) = default;
};

// What weighs most comes first.
[[nodiscard]] std::vector<FindingRow> summaryRows(const Findings& findings);
// Dropouts, jumps, play and blind time, in order of time.
[[nodiscard]] std::vector<FindingRow> eventRows(const Findings& findings);

} // namespace stillwire
