// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/findings_rows.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

Excursion dropoutIn(Step step, double held_V, double extreme_V) {
    Excursion e;
    e.held_V = held_V;
    e.extreme_V = extreme_V;
    e.direction = extreme_V > held_V ? Direction::up : Direction::down;
    e.step = step;
    return e;
}

TEST(SummaryRows, DropoutsOfTheReferenceAndTheGroundStandApartFromTheSignals) {
    Findings f;
    f.excursions = {dropoutIn(Step::wiggleShaft, 4.12, 2.0), dropoutIn(Step::wiggleHarness, 4.12, 1.5),
                    dropoutIn(Step::wiggleReference, 5.0, 0.4), dropoutIn(Step::wiggleGround, 0.02, 1.2)};
    StepCoverage shaft, harness, reference;
    shaft.step = Step::wiggleShaft;
    shaft.poses = 20;
    harness.step = Step::wiggleHarness;
    harness.poses = 10;
    reference.step = Step::wiggleReference;
    reference.poses = 6;
    f.steps = {shaft, harness, reference};
    const std::vector<FindingRow> rows = summaryRows(f);
    ASSERT_EQ(rows.size(), 3u);
    EXPECT_EQ(rows[0].title.toStdString(), "2 dropouts in 30 poses");
    EXPECT_EQ(rows[0].detail.toStdString(), "4.12 V fell to 1.50 V or less");
    EXPECT_EQ(rows[1].title.toStdString(), "1 dropout in 6 poses");
    EXPECT_EQ(rows[1].detail.toStdString(), "reference: 5.00 V fell to 0.40 V or less");
    EXPECT_EQ(rows[2].title.toStdString(), "1 dropout");
    EXPECT_EQ(rows[2].detail.toStdString(), "ground: 0.02 V leapt to 1.20 V or more");
}

TEST(SummaryRows, ADropoutOnTheGroundIsNoneOnTheSignal) {
    Findings f;
    f.excursions = {dropoutIn(Step::ground, 0.02, 1.2)};
    f.wiggle.poses = 29;
    f.wiggle.shortestVisible_s = 0.4;
    const std::vector<FindingRow> rows = summaryRows(f);
    ASSERT_EQ(rows.size(), 2u);
    EXPECT_EQ(rows[0].detail.toStdString(), "ground: 0.02 V leapt to 1.20 V or more");
    EXPECT_EQ(rows[1].title.toStdString(), "None of 0.4 s or longer");
}

} // namespace
} // namespace stillwire
