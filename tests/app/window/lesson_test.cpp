// SPDX-License-Identifier: GPL-3.0-or-later
// What an instructor uses: the verdict hidden and shown, the warm wiggle over the cold one, a dropout on demand.
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/start/start_page.hpp"
#include "app/window/wire/trace_view.hpp"
#include "tests/app/support/fake_session.hpp"

#include <QLabel>
#include <QSettings>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Lesson : public ::testing::Test {
protected:
    void show(std::shared_ptr<SessionSnapshot> snapshot, std::function<void()> strike = {}) {
        window.show();
        test::attachTo(window, std::move(snapshot), std::move(strike));
        QTest::qWait(20);
    }
    QString words() {
        QString all;
        for (const QWidget* widget : window.bench().findChildren<QWidget*>()) {
            if (!widget->isVisible()) continue;
            if (const auto* label = qobject_cast<const QLabel*>(widget)) all += label->text() + QLatin1Char('\n');
            all += widget->accessibleDescription() + QLatin1Char('\n');
        }
        return all;
    }
    BenchWindow window{std::make_unique<test::FakeDoors>()};
};

TEST_F(Lesson, TheVerdictIsHiddenAndShownByOneKey) {
    for (const auto& moment : {test::wiggleMoment(), test::finishedMoment(), test::replayMoment()}) {
        show(moment);
        EXPECT_TRUE(words().contains("replace the sensor"));
        QTest::keyClick(&window, Qt::Key_H);
        EXPECT_FALSE(words().contains("replace the sensor")) << words().toStdString();
        EXPECT_FALSE(words().contains("when the shaft is pushed")) << words().toStdString();
        QTest::keyClick(&window, Qt::Key_H);
        EXPECT_TRUE(words().contains("replace the sensor"));
    }
}

TEST_F(Lesson, TheWarmWiggleIsLaidOverTheColdOneAndTakenOffAgain) {
    auto moment = test::replayMoment();
    show(moment);
    QTest::keyClick(&window, Qt::Key_C);
    EXPECT_TRUE(words().contains("no warm wiggle"));
    moment->marks = {{fromSeconds(10), "step:wiggle-shaft"},
                     {fromSeconds(11), "pose:left"},
                     {fromSeconds(20), "step:warm-repeat"},
                     {fromSeconds(50), "pose:left"},
                     {fromSeconds(65), "step:end"}};
    show(moment);
    TraceView& trace = window.bench().trace();
    const QImage before = trace.grab().toImage();
    QTest::keyClick(&window, Qt::Key_C);
    EXPECT_NEAR(trace.time().from_s(), 9, 1e-9); // the cold poses, and a little around them
    EXPECT_NEAR(trace.time().to_s(), 11 + 15 + 2, 1e-9);
    EXPECT_NE(trace.grab().toImage(), before);
    QTest::keyClick(&window, Qt::Key_C);
    EXPECT_EQ(trace.grab().toImage(), before);
}

TEST_F(Lesson, ADropoutIsMadeOnTheSimulatedMeterOnly) {
    int struck = 0;
    show(test::wiggleMoment(), [&] { ++struck; });
    QTest::keyClick(&window, Qt::Key_F);
    EXPECT_EQ(struck, 1);
    show(test::wiggleMoment());
    QTest::keyClick(&window, Qt::Key_F);
    EXPECT_EQ(struck, 1);
    EXPECT_TRUE(words().contains("Only the simulated meter"));
}

} // namespace
} // namespace stillwire
