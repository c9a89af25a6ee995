// SPDX-License-Identifier: GPL-3.0-or-later
// "Which meter is it?" by keys alone: what it says, what Enter takes, how it stops.
#include "app/window/look/look.hpp"
#include "app/window/start/find_meter_box.hpp"
#include "tests/app/support/fake_session.hpp"

#include <QListWidget>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class FindMeterTest : public ::testing::Test {
protected:
    Look look;
    test::FakeDoors doors;
    std::unique_ptr<FindMeterBox> box;

    void open() {
        box = std::make_unique<FindMeterBox>(look, doors);
        box->show();
        box->search();
    }
    QListWidget* list() { return box->findChild<QListWidget*>(); }
    QPushButton* button(const QString& name) {
        for (QPushButton* b : box->findChildren<QPushButton*>())
            if (b->text() == name) return b;
        return nullptr;
    }
};

} // namespace

TEST_F(FindMeterTest, EnterTakesWhatFits) {
    doors.found = {test::foundMeter("/dev/ttyUSB0", "lcd-segment-meter", true)};
    open();
    QSignalSpy chosen(box.get(), &FindMeterBox::chosen);
    ASSERT_TRUE(QTest::qWaitFor([&] { return list()->count() == 1; }, 30'000));
    EXPECT_TRUE(list()->item(0)->text().contains("lcd-segment-meter fits, that is sure: 6 readings from 84 bytes"))
        << list()->item(0)->text().toStdString();
    EXPECT_TRUE(list()->item(0)->text().contains("It shows 0.812 V now."));
    QTest::keyClick(list(), Qt::Key_Return);
    ASSERT_EQ(chosen.count(), 1);
    EXPECT_EQ(chosen.at(0).at(0).toString(), "/dev/ttyUSB0");
    EXPECT_EQ(chosen.at(0).at(1).toString(), "lcd-segment-meter");
    EXPECT_FALSE(box->isVisible());
}

TEST_F(FindMeterTest, WhatFitsOnlyWithOtherSettingsIsToldAndNotTaken) {
    doors.found = {test::foundMeter("/dev/ttyUSB0", "lcd-segment-meter", false)};
    open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return list()->count() == 1; }, 30'000));
    EXPECT_TRUE(list()->item(0)->text().contains("baud = 2400, bits = 8, parity = \"none\", dtr = true"))
        << list()->item(0)->text().toStdString();
    EXPECT_FALSE(button("Use this meter")->isEnabled());
}

TEST_F(FindMeterTest, EscStopsTheSearchThenCloses) {
    doors.endless = true;
    open();
    QTest::qWait(20);
    ASSERT_TRUE(button("Stop"));
    QTest::keyClick(box.get(), Qt::Key_Escape);
    ASSERT_TRUE(QTest::qWaitFor([&] { return button("Look again")->isEnabled(); }, 30'000));
    EXPECT_TRUE(box->isVisible());
    QTest::keyClick(box.get(), Qt::Key_Escape);
    EXPECT_FALSE(box->isVisible());
}

TEST_F(FindMeterTest, ClosedInTheMiddleItLeavesNothingRunning) {
    doors.endless = true;
    open();
    QTest::qWait(20);
    box.reset(); // waits for the search, which heeds its stop: else this test never ends
}

} // namespace stillwire
