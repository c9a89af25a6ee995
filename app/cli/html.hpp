// SPDX-License-Identifier: GPL-3.0-or-later
// The report as one HTML page to print: no script, nothing fetched, the trace as a drawing in it.
#pragma once

#include "app/cli/evaluate.hpp"
#include "core/trace/trace.hpp"

#include <string>
#include <vector>

namespace stillwire {

struct ReportInput {
    const Evaluation& evaluation;
    const TraceSnapshot& trace;
    const std::vector<Mark>& marks;
    std::string path; // of the capture
    std::string hash; // SHA-256 of its reading rows
};
[[nodiscard]] std::string reportHtml(const ReportInput& input);

// `&`, `<`, `>` and quotes as entities.
[[nodiscard]] std::string escapeHtml(const std::string& text);

// The trace over the windows of the sheet, with dropouts as wedges and blind time hatched: readable in black and
// white.
[[nodiscard]] std::string traceSvg(const Findings& findings, const TraceSnapshot& trace,
                                   const std::vector<Mark>& marks);

} // namespace stillwire
