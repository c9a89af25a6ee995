// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/choice_box.hpp"

#include <QAbstractItemView>
#include <QApplication>
#include <QFrame>
#include <QTest>
#include <QWheelEvent>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Choices : public ::testing::Test {
protected:
    void SetUp() override {
        page.resize(600, 600);
        page.setStyleSheet(look.styleSheet());
        for (const char* entry : {"Chafed harness", "Depth lever, fretting connector, and a long name", "Good pedal",
                                  "Sagging reference", "Two-way lever", "Wants turning", "Worn when cold", "Last"})
            box.addItem(QLatin1String(entry));
        box.setCurrentIndex(2);
        box.setFixedWidth(220);
        page.show();
    }
    Look look;
    QWidget page;
    ChoiceBox box{look, QStringLiteral("Scenario"), &page};
};

TEST_F(Choices, EveryEntryIsShownWholeWithNoArrowOverIt) {
    box.showPopup();
    QTest::qWait(30);
    const QAbstractItemView& list = *box.view();
    const QRect seen = list.viewport()->rect();
    for (int row = 0; row < box.count(); ++row) {
        const QRect place = list.visualRect(box.model()->index(row, 0));
        EXPECT_TRUE(seen.contains(place)) << row;
        EXPECT_GE(place.width(), QFontMetrics(look.font(TextSize::text, true)).horizontalAdvance(box.itemText(row)));
        EXPECT_GE(place.height(), 40) << "too low for a glove";
    }
    for (const QObject* part : list.parentWidget()->children()) // a scroller is the arrow that cut entries in half
        EXPECT_FALSE(QString::fromLatin1(part->metaObject()->className()).contains("Scroller") &&
                     static_cast<const QWidget*>(part)->isVisible());
    EXPECT_EQ(qobject_cast<QFrame*>(list.parentWidget())->frameShape(),
              QFrame::NoFrame); // the list draws the only one
}

TEST_F(Choices, TheChosenEntryLooksUnlikeTheOthersWithoutAnythingUnderTheMouse) {
    box.showPopup();
    QTest::qWait(30);
    QAbstractItemView& list = *box.view();
    list.setCurrentIndex(box.model()->index(7, 0)); // another has the keyboard
    list.viewport()->grab();
    const auto ink = [&](int row) {
        const QRect place = list.visualRect(box.model()->index(row, 0));
        const QImage mark = list.viewport()->grab(QRect(place.left(), place.top(), 40, place.height())).toImage();
        int dark = 0;
        for (int y = 0; y < mark.height(); ++y)
            for (int x = 0; x < mark.width(); ++x) dark += mark.pixelColor(x, y).lightness() < 120;
        return dark;
    };
    EXPECT_GT(ink(2), 20); // the tick
    EXPECT_EQ(ink(3), 0);
}

TEST_F(Choices, TheWheelOverAClosedOneChangesNothing) {
    box.setFocus();
    QWheelEvent wheel({10, 10}, box.mapToGlobal(QPoint(10, 10)), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(&box, &wheel);
    EXPECT_EQ(box.currentIndex(), 2);
    EXPECT_FALSE(wheel.isAccepted()); // the page under it may scroll
}

} // namespace
} // namespace stillwire
