// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/findings_rows.hpp"
#include "app/window/wire/band.hpp"
#include "app/window/words.hpp"
#include "tests/app/support/fake_session.hpp"

#include <cmath>
#include <set>

#include <gtest/gtest.h>

namespace stillwire {

TEST(NumberText, ShowsFourDigitsAtMost) {
    EXPECT_EQ(numberText(1.9836, 0.001), "1.984");
    EXPECT_EQ(numberText(12.3456, 0.001), "12.35");
    EXPECT_EQ(numberText(9.9996, 0.001), "10.00");
    EXPECT_EQ(numberText(-0.0124, 0.001), "-0.012");
    EXPECT_EQ(numberText(4.98, 0.01), "4.98");
    EXPECT_EQ(numberText(123.4, 0.001), "123.4");
    EXPECT_EQ(numberText(std::nan(""), 0.001), "----");
}

TEST(StateWord, ADropoutStaysOnShowForAMomentAfterItEnded) {
    auto snapshot = test::moment(WireState::steady);
    auto findings = std::make_shared<Findings>(*snapshot->findings);
    snapshot->findings = findings;
    snapshot->now = findings->excursions.back().to + fromSeconds(kDropoutStays_s - 0.1);
    EXPECT_EQ(stateWord(*snapshot).state, WireState::dropped);
    snapshot->now += fromSeconds(0.2);
    EXPECT_EQ(stateWord(*snapshot).state, WireState::steady);
}

TEST(StateWord, SaysTheDepthAsALowerBound) {
    EXPECT_EQ(stateWord(*test::wiggleMoment()).detail, "by at least 2.88 V");
}

TEST(StateWord, EveryStateHasItsOwnWordAndShape) {
    std::set<QString> words;
    std::set<Shape> shapes;
    for (WireState state : {WireState::silent, WireState::steady, WireState::moving, WireState::dropped,
                            WireState::jumped, WireState::blind, WireState::overVoltage}) {
        auto snapshot = test::moment(state);
        snapshot->now += fromSeconds(10);
        const StateWord word = stateWord(*snapshot);
        EXPECT_EQ(word.state, state);
        EXPECT_TRUE(words.insert(word.word).second) << word.word.toStdString();
        EXPECT_TRUE(shapes.insert(word.shape).second) << word.word.toStdString();
    }
}

TEST(Band, IsInWhatTheMeterShows) {
    const auto sheet = test::leverSheet();
    auto snapshot = test::wiggleMoment();
    // The formula of the outline turned round, by hand: 0.02 + 3.90 · (4.98 - 0.02) / 5 = 3.8888.
    EXPECT_NEAR(bandUnderTest(*sheet, *snapshot).shown_V.min_V, 3.8888, 1e-9);
    EXPECT_EQ(bandUnderTest(*sheet, *snapshot).name, "deep window");
}

TEST(Band, FollowsTheLastPositionMarkWhereNobodyLeads) {
    const auto sheet = test::leverSheet();
    auto snapshot = test::replayMoment();
    snapshot->marks = {{Time{0}, "step:full-press"}, {Time{5}, "position:lifted"}};
    EXPECT_EQ(bandUnderTest(*sheet, *snapshot).name, "lifted window");
    snapshot->marks.push_back({Time{9}, "step:ground"});
    EXPECT_EQ(bandUnderTest(*sheet, *snapshot).shown_V.max_V, 0.10);
    snapshot->marks.push_back({Time{12}, "step:end"});
    EXPECT_EQ(bandUnderTest(*sheet, *snapshot).name, "deep window");
}

TEST(Band, TellsWhenTheLeadIsAwayFromTheSignal) {
    const std::vector<Mark> marks = {{fromSeconds(1), "step:hook-up"},     {fromSeconds(5), "step:reference"},
                                     {fromSeconds(9), "step:end"},         {fromSeconds(12), "step:ground"},
                                     {fromSeconds(20), "step:cold-start"}, {fromSeconds(60), "step:wiggle-ground"}};
    const auto away = awayFromSignal(marks, fromSeconds(70));
    ASSERT_EQ(away.size(), 2U);
    EXPECT_EQ(away[0].from, fromSeconds(1));
    EXPECT_EQ(away[0].to, fromSeconds(20));
    EXPECT_EQ(away[1].from, fromSeconds(60));
    EXPECT_EQ(away[1].to, fromSeconds(70));
}

TEST(SummaryRows, PutFaultsFirstAndEventsInOrderOfTime) {
    const auto snapshot = test::wiggleMoment();
    const auto rows = summaryRows(*snapshot->findings);
    ASSERT_FALSE(rows.empty());
    EXPECT_EQ(rows.front().title, "6 dropouts in 20 poses");
    EXPECT_EQ(rows.front().detail, "4.24 V fell to 1.36 V or less");
    const auto events = eventRows(*snapshot->findings);
    ASSERT_EQ(events.size(), 7U); // six dropouts and the blind time
    for (std::size_t i = 1; i < events.size(); ++i) EXPECT_LE(*events[i - 1].at_s, *events[i].at_s);
}

} // namespace stillwire
