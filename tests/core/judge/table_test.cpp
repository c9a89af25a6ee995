// SPDX-License-Identifier: GPL-3.0-or-later
// The judgement table as data: every finding of the trade's table (common practice, no source) has its rows, or says
// why it is out of reach; and no row stands without a name of its own.
#include "core/judge/judgement.hpp"
#include "tests/support/trade_findings.hpp"

#include <algorithm>
#include <iterator>
#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

bool isRow(const std::string& name) {
    const auto rows = judgementTable();
    return std::any_of(rows.begin(), rows.end(), [&](const JudgementRow& row) { return row.name == name; });
}

TEST(JudgementTable, EveryRowHasANameOfItsOwn) {
    std::set<std::string> names;
    for (const JudgementRow& row : judgementTable()) EXPECT_TRUE(names.insert(row.name).second) << row.name;
    EXPECT_EQ(std::string(judgementTable().back().name), "keep");
}

TEST(JudgementTable, KeepsTheRankOfTheDesign) {
    // Reference, ground, harness, shaft, both, hangs, span, adjust, not enough, keep.
    const std::vector<std::string> rank{"reference outside", "ground drop", "harness", "shaft",
                                        "shaft and harness", "hangs",       "span",    "wants adjustment",
                                        "not enough seen",   "keep"};
    std::size_t next = 0;
    for (const JudgementRow& row : judgementTable())
        if (next < rank.size() && row.name == rank[next]) ++next;
    EXPECT_EQ(next, rank.size());
}

// The sixteen rows of the trade's table, in its order.
TEST(JudgementTable, CoversTheTradesTable) {
    const std::vector<std::string> findings{"spike at one shaft position",
                                            "jumps on connector touch",
                                            "jumps on one harness span",
                                            "low end up, high end nearly the same",
                                            "both ends by the same percentage",
                                            "whole trace shifted, same span",
                                            "rest level scattered, no spikes",
                                            "up and down gap, repeatable",
                                            "span short, ends smooth",
                                            "stuck near 0",
                                            "stuck near 5",
                                            "over 5.5 V",
                                            "several sensors low",
                                            "good at sensor, bad at controller",
                                            "all good, code stays",
                                            "bad cold, good warm"};
    const auto& table = test::kTradeFindings;
    ASSERT_EQ(std::size(table), findings.size());
    for (std::size_t i = 0; i < std::size(table); ++i) {
        EXPECT_EQ(table[i].finding, findings[i]);
        EXPECT_TRUE(table[i].rows[0] || table[i].outOfReach) << findings[i];
        for (const char* row : table[i].rows) EXPECT_TRUE(!row || isRow(row)) << findings[i] << ": " << row;
    }
}

} // namespace
} // namespace stillwire
