// SPDX-License-Identifier: GPL-3.0-or-later
// The judgement table: the rows of each purpose, in the order of rank, and what is left when none of them holds.
#include "core/judge/phrases.hpp"
#include "core/judge/rows.hpp"
#include "core/judge/within.hpp"

#include <array>
#include <vector>

namespace stillwire {

namespace {

const std::array kLast = {
    JudgementRow{"not enough seen", Decision::cannotTell, [](const Case& c) { return !c.missing.empty(); },
                 [](const Case& c) { return c.missing.front().says; },
                 [](const Case& c) { return c.missing.front().next; }},
    JudgementRow{"keep", Decision::keep, [](const Case&) { return true; },
                 [](const Case& c) {
                     const StepCoverage& w = c.findings->wiggle;
                     return Sentence{"Inside its windows at every end; of dropouts of %1 or longer, none in %2.",
                                     {secondsAtMost(w.shortestVisible_s.value_or(0)), countedPoses(w.poses)}};
                 },
                 [](const Case&) { return Sentence{}; }}};

std::vector<JudgementRow> allRows() {
    std::vector<JudgementRow> all;
    const auto add = [&all](CauseKind kind, std::span<const JudgementRow> rows) {
        for (JudgementRow row : rows) {
            row.kind = kind;
            all.push_back(row);
        }
    };
    add(CauseKind::wires, rowsOfWires());
    add(CauseKind::dropouts, rowsOfDropouts());
    add(CauseKind::levels, rowsOfLevels());
    add(CauseKind::tooLittleSeen, {&kLast.front(), 1});
    add(CauseKind::allWell, {&kLast.back(), 1});
    return all;
}

} // namespace

std::span<const JudgementRow> judgementTable() {
    static const std::vector<JudgementRow> table = allRows();
    return table;
}

} // namespace stillwire
