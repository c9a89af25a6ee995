// SPDX-License-Identifier: GPL-3.0-or-later
// Every family reaches every mark, with windows on its levels and off them.
#include "tests/core/families/marks.hpp"
#include "tests/core/families/rows_of_families.hpp"

namespace stillwire::families {
namespace {

class FamilyMarks : public testing::TestWithParam<RowAsked> {};

TEST_P(FamilyMarks, AreReached) { EXPECT_EQ(shortOf(PassMarks{}, printedRow(GetParam())), ""); }

INSTANTIATE_TEST_SUITE_P(All, FamilyMarks, testing::ValuesIn(rowsAsked()), rowName);

} // namespace
} // namespace stillwire::families
