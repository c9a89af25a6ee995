// SPDX-License-Identifier: GPL-3.0-or-later
// A second meter on the reference wire, from the start page to the capture: the real window and session, with two
// instruments behind two kernel terminals.
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/start/bench_doors.hpp"
#include "app/window/start/start_page.hpp"
#include "app/window/wire/readout_view.hpp"
#include "core/capture/reader.hpp"
#include "tests/app/support/room.hpp"
#include "tests/support/tty_run.hpp"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QSettings>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

constexpr int kLongest_ms = 30'000; // of a wait: what takes longer never comes

// The real doors, but for the list of ports: a pseudo-terminal is in none.
class TwoPorts : public BenchDoors {
public:
    std::vector<Listed> ports() override {
        return {{KernelTty::kPort, "first", KernelTty::kPort}, {SecondTty::kPort, "second", SecondTty::kPort}};
    }
};

class TwoMetersInTheWindow : public ::testing::Test {
protected:
    void SetUp() override {
        QSettings().clear();
        openWindow();
    }
    void openWindow() {
        window.reset();
        window = std::make_unique<BenchWindow>(std::make_unique<TwoPorts>());
        window->show();
        QTest::qWait(20); // the start page fills after the first painted window
    }
    QComboBox* box(const char* setting) { return window->start().findChild<QComboBox*>(QLatin1String(setting)); }
    void choose(const char* setting, const QString& id) {
        const int at = box(setting)->findData(id);
        ASSERT_GE(at, 0) << setting;
        box(setting)->setCurrentIndex(at);
    }
    void chooseBoth() {
        choose("sheet", "resurfacer-drive-pedal");
        choose("port", KernelTty::kPort);
        choose("meter", "text-line-logger");
        choose("reference-port", SecondTty::kPort);
        choose("reference-meter", "lcd-segment-meter");
    }
    void start() {
        for (QPushButton* button : window->start().findChildren<QPushButton*>())
            if (button->accessibleName() == StartPage::tr("Start with the meter on this port")) button->click();
    }
    void show(double signal_V, const Reading& reference) {
        const std::size_t before = seen().findings->readings;
        ASSERT_TRUE(second.send(encodeFrame(lcd.frame, reference, 0.001)));
        ASSERT_TRUE(tty.send(encodeFrame(line.frame, number(signal_V), 0.001)));
        EXPECT_TRUE(QTest::qWaitFor([&] { return seen().findings->readings >= before + 2; }, kLongest_ms));
    }
    [[nodiscard]] const SessionSnapshot& seen() { return *window->feed().scene().snapshot; }
    [[nodiscard]] QString readout() { return window->bench().readout().accessibleDescription(); }
    [[nodiscard]] bool pageSays(const QString& text) {
        return QTest::qWaitFor(
            [&] {
                for (const QLabel* label : window->bench().findChildren<QLabel*>())
                    if (label->isVisible() && label->text().contains(text)) return true;
                return false;
            },
            kLongest_ms);
    }

    KernelTty tty;
    SecondTty second;
    MeterDescription line = shippedMeter("text-line-logger"), lcd = shippedMeter("lcd-segment-meter");
    std::unique_ptr<BenchWindow> window;
};

TEST_F(TwoMetersInTheWindow, NoneIsTheDefaultAndTheChoiceIsRemembered) {
    EXPECT_EQ(box("reference-port")->currentText(), "none");
    EXPECT_EQ(window->start().portWay().referencePort, QString());
    EXPECT_FALSE(box("reference-meter")->isVisible()); // nobody needs to ask what it is
    EXPECT_FALSE(box("reference-port")->accessibleName().isEmpty());
    EXPECT_FALSE(box("reference-meter")->accessibleName().isEmpty());
    chooseBoth();
    EXPECT_TRUE(box("reference-meter")->isVisible());
    EXPECT_EQ(test::cutOff(*window, window->look()), QStringList());
    EXPECT_EQ(test::overlaps(*window), QStringList());
    window->start().remember();
    openWindow();
    const Way way = window->start().portWay();
    EXPECT_EQ(way.referencePort, SecondTty::kPort);
    EXPECT_EQ(way.referenceMeter, "lcd-segment-meter");
}

TEST_F(TwoMetersInTheWindow, TheReferenceStandsBesideTheNumberAndItsTroublesAreSaid) {
    chooseBoth();
    start();
    ASSERT_EQ(window->page(), &window->bench());
    QTest::qWait(60);               // what comes sooner might be torn
    window->press(KeyAction::next); // hooked up
    ASSERT_TRUE(QTest::qWaitFor([&] { return seen().prompt.step == Step::reference; }, kLongest_ms));
    for (int i = 0; i < 4; ++i) show(4.958, number(4.96));
    EXPECT_TRUE(QTest::qWaitFor([&] { return readout().contains("reference 4.960 V"); }, kLongest_ms))
        << readout().toStdString();
    for (const Step next : {Step::ground, Step::coldStart}) {
        window->press(KeyAction::skip);
        ASSERT_TRUE(QTest::qWaitFor([&] { return seen().prompt.step == next; }, kLongest_ms));
    }
    window->press(KeyAction::next); // the lead is there
    for (int i = 0; i < 20 && !readout().contains("level"); ++i) show(0.812, number(4.96));
    EXPECT_TRUE(readout().contains("reference 4.960 V · level ")) << readout().toStdString();

    Reading held = number(2.96);
    held.flags = Flag::hold;
    for (int i = 0; i < 3; ++i) show(0.812, held);
    EXPECT_TRUE(pageSays("On the reference: hold is on, so the number stands still: press the hold key"));
    EXPECT_FALSE(readout().contains("2.96"));
    show(0.812, number(4.96));
    EXPECT_TRUE(QTest::qWaitFor([&] { return !blindAsShown(seen().findings->referenceBlind).empty(); }, kLongest_ms));
    EXPECT_TRUE(blindAsShown(seen().findings->blind).empty());
    EXPECT_TRUE(seen().findings->referenceMoves.empty());

    const std::string path = seen().capturePath;
    window->leaveBench();
    auto capture = loadCapture(path);
    ASSERT_TRUE(capture) << capture.error().text();
    ASSERT_TRUE(capture->header.referenceMeter);
    EXPECT_EQ(capture->header.referenceMeter->name, lcd.traits.name);
}

TEST_F(TwoMetersInTheWindow, OneAndTheSamePortIsRefusedInPlace) {
    chooseBoth();
    choose("reference-port", KernelTty::kPort);
    start();
    EXPECT_EQ(window->page(), &window->start());
    bool said = false;
    for (const QLabel* label : window->start().findChildren<QLabel*>())
        said = said || (label->isVisible() && label->text().contains("both meters are on the same port"));
    EXPECT_TRUE(said);
}

} // namespace
} // namespace stillwire
