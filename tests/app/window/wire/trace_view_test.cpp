// SPDX-License-Identifier: GPL-3.0-or-later
// A trace of which only the end was painted again looks like one that was painted whole.
#include "app/window/wire/trace_change.hpp"
#include "app/window/wire/trace_view.hpp"
#include "tests/app/support/moments.hpp"

#include <cstdlib>

#include <QPaintEvent>
#include <QScreen>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

constexpr double kInterval_s = 0.25;

class Growing {
public:
    Growing() : sheet(test::leverSheet()) {}
    Scene next() {
        const double at_s = kInterval_s * ++readings;
        trace.append({fromSeconds(at_s), 0.82 + (readings % 40 < 3 ? 0.3 * (readings % 40) : 0)});
        return scene();
    }
    [[nodiscard]] Scene scene() const {
        auto snapshot = std::make_shared<SessionSnapshot>();
        auto found = std::make_shared<Findings>(findings);
        found->readings = static_cast<std::size_t>(readings);
        found->meter.interval_s = kInterval_s;
        snapshot->now = fromSeconds(kInterval_s * readings);
        found->phases = {{PhaseKind::quiet, Time(0), snapshot->now, 0.82, 0.001}};
        found->machine.points = {{Time(0), 0.2}};
        snapshot->findings = found;
        snapshot->trace = trace.snapshot();
        snapshot->lastVolts_V = 0.82;
        snapshot->link = LinkState::live;
        return {snapshot, sheet};
    }
    std::shared_ptr<const Sheet> sheet;
    Trace trace;
    Findings findings;
    int readings = 0;
};

// What was painted, as parts of the whole.
class Painted : public QObject {
public:
    bool eventFilter(QObject* view, QEvent* event) override {
        if (event->type() == QEvent::Paint) {
            double area = 0;
            for (const QRect& r : static_cast<QPaintEvent*>(event)->region()) area += r.width() * r.height();
            const QSize all = static_cast<QWidget*>(view)->size();
            shares.push_back(area / (all.width() * all.height()));
        }
        return false;
    }
    std::vector<double> shares;
};

class TraceViews : public ::testing::Test {
protected:
    void SetUp() override {
        look.fitTo({1280, 800});
        view.resize(820, 420);
        view.setVisible(true);
        view.show(growing.next());
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&view));
        view.installEventFilter(&painted);
    }
    void paint() {
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
    }
    Look look;
    TraceView view{look};
    Growing growing;
    Painted painted;
};

TEST_F(TraceViews, AGrowingTracePaintsItsEndAndLooksAsIfPaintedWhole) {
    int small = 0;
    for (int i = 0; i < 400; ++i) {
        view.show(growing.next());
        paint();
        if (i % 50 != 49) continue;
        const QImage shown = view.screen()->grabWindow(view.winId()).toImage().convertToFormat(QImage::Format_RGB32);
        const QImage whole = view.grab().toImage().convertToFormat(QImage::Format_RGB32);
        ASSERT_EQ(shown.size(), whole.size());
        int unlike = 0;
        for (int y = 0; y < whole.height(); ++y)
            for (int x = 0; x < whole.width(); ++x)
                if (std::abs(qGray(shown.pixel(x, y)) - qGray(whole.pixel(x, y))) > 40) ++unlike;
        EXPECT_LE(unlike, 2) << "after " << i << " readings";
        painted.shares.pop_back(); // of the whole picture
    }
    for (const double share : painted.shares) small += share < 0.15 ? 1 : 0;
    EXPECT_GT(small, 360) << "of " << painted.shares.size();
}

TEST_F(TraceViews, WhatChangesFurtherBackIsPaintedWhole) {
    for (int i = 0; i < 30; ++i) view.show(growing.next());
    paint();
    Excursion dropout;
    dropout.from = fromSeconds(2);
    dropout.to = fromSeconds(2.5);
    growing.findings.excursions = {dropout};
    view.show(growing.next());
    paint();
    EXPECT_GT(painted.shares.back(), 0.99);
    view.show(growing.next());
    paint();
    EXPECT_LT(painted.shares.back(), 0.15);
    growing.findings.excursions.front().to = fromSeconds(3);
    view.show(growing.next());
    paint();
    EXPECT_GT(painted.shares.back(), 0.99);
}

TEST(TraceChange, TellsWhatGrewFromWhatChanged) {
    Growing growing;
    const Scene before = growing.next();
    EXPECT_TRUE(onlyGrew(*before.snapshot, *growing.next().snapshot));
    auto other = std::make_shared<SessionSnapshot>(*growing.next().snapshot);
    other->marks.push_back({fromSeconds(0.3), "step:cold-start"});
    EXPECT_FALSE(onlyGrew(*before.snapshot, *other));
    growing.findings.blind = {{Time(0), fromSeconds(0.2), BlindCause::gap}};
    EXPECT_FALSE(onlyGrew(*before.snapshot, *growing.scene().snapshot));
    growing.findings.blind.clear();
    growing.findings.jumps.resize(1);
    EXPECT_FALSE(onlyGrew(*before.snapshot, *growing.scene().snapshot));
}

} // namespace
} // namespace stillwire
