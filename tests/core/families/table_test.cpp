// SPDX-License-Identifier: GPL-3.0-or-later
// The table: every family through the analyser, a row each.
#include "tests/core/families/rows_of_families.hpp"

namespace stillwire::families {
namespace {

class FamilyTable : public testing::TestWithParam<RowAsked> {};

TEST_P(FamilyTable, PrintsARow) {
    const Score score = printedRow(GetParam());
    EXPECT_GT(score.readings, 0);
    EXPECT_GT(score.events(), 0);
}

INSTANTIATE_TEST_SUITE_P(All, FamilyTable, testing::ValuesIn(rowsAsked()), rowName);

} // namespace
} // namespace stillwire::families
