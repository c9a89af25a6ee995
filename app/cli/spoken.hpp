// SPDX-License-Identifier: GPL-3.0-or-later
// Findings as sentences that a mechanic can read aloud. Depths are "at least", for the meter averages.
#pragma once

#include "app/shared/evaluate.hpp"

#include <string>
#include <vector>

namespace stillwire {

[[nodiscard]] Sentence decisionSentence(Decision decision);     // "Replace the sensor."
[[nodiscard]] Sentence verdictSentence(const Verdict& verdict); // and on which condition
[[nodiscard]] std::string clockTime(Time time);                 // "6 min 50 s", "12.4 s"

// One section of the report: a heading and its lines, each of one or more sentences; none said if there are none.
using Line = std::vector<Sentence>;
struct Section {
    Sentence heading;
    std::vector<Line> lines;
};
[[nodiscard]] std::vector<Section> reportSections(const Evaluation& evaluation, const std::string& path);
[[nodiscard]] std::string spokenReport(const Evaluation& evaluation, const std::string& path);
// Levels, and the last sections: verdict, causes, not tested, next.
[[nodiscard]] std::string spokenVerdict(const Findings& findings, const Sheet& sheet);

} // namespace stillwire
