// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/wire/axes.hpp"
#include "app/window/wire/time_window.hpp"

#include <gtest/gtest.h>

namespace stillwire {

TEST(TimeAxis, PlacesTimesAndReadsThemBack) {
    const TimeAxis axis{10, 20, 100, 300};
    EXPECT_DOUBLE_EQ(axis.x(10), 100);
    EXPECT_DOUBLE_EQ(axis.x(15), 200);
    EXPECT_DOUBLE_EQ(axis.time_s(axis.x(17.25)), 17.25);
}

TEST(Ticks, AreRoundAndFarEnoughApart) {
    EXPECT_DOUBLE_EQ(niceStep(0.3), 0.5);
    EXPECT_DOUBLE_EQ(niceStep(1.0), 1.0);
    EXPECT_DOUBLE_EQ(niceStep(2.1), 5.0);
    EXPECT_DOUBLE_EQ(niceSeconds(11), 15);
    EXPECT_DOUBLE_EQ(niceSeconds(4000), 7200);
    EXPECT_EQ(ticks(0, 5.25, 1).size(), 6U);
    EXPECT_EQ(ticks(0.2, 0.9, 0.5), std::vector<double>{0.5});
}

TEST(TimeWindow, FollowsTheEndUntilSomebodyLooksBack) {
    TimeWindow window;
    window.setEnd(20);
    EXPECT_DOUBLE_EQ(window.from_s(), 0); // fills from the left first
    window.setEnd(100);
    EXPECT_DOUBLE_EQ(window.to_s(), 100);
    window.scroll(-0.5);
    EXPECT_FALSE(window.following());
    const double from = window.from_s();
    window.setEnd(130);
    EXPECT_DOUBLE_EQ(window.from_s(), from);
    window.follow();
    EXPECT_DOUBLE_EQ(window.to_s(), 130);
}

TEST(TimeWindow, ScrollingToTheEndFollowsAgain) {
    TimeWindow window;
    window.setEnd(200);
    window.scroll(-1);
    window.scroll(5);
    EXPECT_TRUE(window.following());
    EXPECT_DOUBLE_EQ(window.to_s(), 200);
}

TEST(TimeWindow, TheWholeStaysWholeWhileTheSessionGrows) {
    TimeWindow window;
    window.setEnd(3);
    window.showAll();
    window.setEnd(240); // a capture that was read on after it was shown
    EXPECT_DOUBLE_EQ(window.from_s(), 0);
    EXPECT_DOUBLE_EQ(window.to_s(), 240);
    window.lookAt(100);
    window.setEnd(300);
    EXPECT_DOUBLE_EQ(window.span_s(), 240); // where somebody looks nothing moves
    window.showAll();
    EXPECT_DOUBLE_EQ(window.to_s(), 300);
}

TEST(TimeWindow, TheWholeOfACaptureOfKnownLengthIsItsLength) {
    TimeWindow window;
    window.expect(240);
    window.setEnd(3);
    window.showAll();
    EXPECT_DOUBLE_EQ(window.to_s(), 240);
}

TEST(TimeWindow, NeverLeavesTheSession) {
    TimeWindow window;
    window.setEnd(200);
    window.lookAt(1);
    EXPECT_DOUBLE_EQ(window.from_s(), 0);
    window.lookAt(199.9);
    EXPECT_DOUBLE_EQ(window.to_s(), 200);
    for (int i = 0; i < 20; ++i) window.zoom(0.5);
    EXPECT_DOUBLE_EQ(window.span_s(), TimeWindow::kShortest_s);
    for (int i = 0; i < 20; ++i) window.zoom(2);
    EXPECT_DOUBLE_EQ(window.span_s(), 200);
}

} // namespace stillwire
