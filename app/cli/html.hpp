// SPDX-License-Identifier: GPL-3.0-or-later
// The report as one HTML page to print: no script, nothing fetched, the trace as a drawing in it. In the language of
// whoever asks; what only people know (machine, complaint, part, torque) is left as lines to fill in by hand.
#pragma once

#include "app/shared/evaluate.hpp"
#include "core/trace/trace.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace stillwire {

using Sayer = std::function<std::string(const Sentence&)>; // a sentence in the reader's language

struct ReportInput {
    const Evaluation& evaluation;
    const TraceSnapshot& trace;
    const std::vector<Mark>& marks;
    std::string path;               // of the capture
    std::string hash;               // SHA-256 of its reading rows; empty: not a capture of ours
    std::optional<Findings> before; // as it was when the sensor was first turned; none: it was not turned
    std::string language = "en";    // as HTML names it
    Sayer say = [](const Sentence& s) { return s.english(); };
};
[[nodiscard]] std::string reportHtml(const ReportInput& input);

// The tables of the report: the job, how it was measured, levels before and after, what is left to fill in.
[[nodiscard]] std::string jobTable(const ReportInput& input);
[[nodiscard]] std::string measuredTable(const ReportInput& input);
[[nodiscard]] std::string levelsTable(const ReportInput& input);
[[nodiscard]] std::string closingTable(const ReportInput& input);

// `&`, `<`, `>` and quotes as entities.
[[nodiscard]] std::string escapeHtml(const std::string& text);

// The trace over the windows of the sheet, with dropouts as wedges and blind time hatched: readable in black and
// white.
[[nodiscard]] std::string traceSvg(const ReportInput& input);

} // namespace stillwire
