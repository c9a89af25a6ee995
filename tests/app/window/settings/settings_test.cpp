// SPDX-License-Identifier: GPL-3.0-or-later
// The place for settings: each holds at once and the next day; and what the desktop wishes, until told otherwise.
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/settings/desktop.hpp"
#include "app/window/settings/opening.hpp"
#include "app/window/settings/settings_page.hpp"
#include "app/window/start/capture_place.hpp"
#include "app/window/start/start_page.hpp"
#include "tests/app/support/fake_session.hpp"

#include <QComboBox>
#include <QDir>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class SettingsPlace : public ::testing::Test {
protected:
    void SetUp() override {
        QSettings().clear();
        window = std::make_unique<BenchWindow>(std::make_unique<test::FakeDoors>());
        window->resize(1280, 800);
        window->show();
        QTest::qWait(20); // until it has the keyboard
    }
    SettingsPage& page() { return *window->findChild<SettingsPage*>(); }
    // As a person does: the list opened, an entry taken.
    void choose(const char* row, const char* entry) {
        for (QComboBox* box : page().findChildren<QComboBox*>()) {
            if (box->accessibleName() != QLatin1String(row)) continue;
            const int at = box->findText(QString::fromUtf8(entry));
            ASSERT_GE(at, 0) << row << ": " << entry;
            box->setCurrentIndex(at);
            emit box->activated(at);
            return;
        }
        FAIL() << "no row " << row;
    }
    std::unique_ptr<BenchWindow> window;
};

TEST_F(SettingsPlace, IsReachedFromTheStartPageAndByOneKeyAndLeftByEsc) {
    for (QPushButton* button : window->start().findChildren<QPushButton*>())
        if (button->isVisible() && button->text() == QStringLiteral("Settings…")) button->click();
    EXPECT_EQ(window->page(), &page());
    QTest::keyClick(window.get(), Qt::Key_Escape);
    EXPECT_EQ(window->page(), &window->start());
    QTest::keyClick(window.get(), Qt::Key_Comma, Qt::ControlModifier);
    EXPECT_EQ(window->page(), &page());
    QTest::keyClick(window.get(), Qt::Key_Escape);
    EXPECT_EQ(window->page(), &window->start());
}

TEST_F(SettingsPlace, EachRowHoldsAtOnceAndTheNextDay) {
    const double before = window->look().font(TextSize::text).pixelSize();
    choose("Light", "night");
    choose("Size of the type", "large");
    choose("Sound", "muted");
    choose("Voice", "says nothing");
    choose("Tone that follows the voltage", "on");
    choose("Motion", "as little as can be");
    choose("Large words once the hands are busy", "only by the key");
    EXPECT_TRUE(window->look().night());
    EXPECT_TRUE(window->look().calm());
    EXPECT_GT(window->look().font(TextSize::text).pixelSize(), before);
    const Settings next;
    EXPECT_EQ(next.night(), Settings::Follow::yes);
    EXPECT_EQ(next.type(), Look::Type::large);
    EXPECT_TRUE(next.muted());
    EXPECT_FALSE(next.aloud());
    EXPECT_TRUE(next.hum());
    EXPECT_EQ(next.calm(), Settings::Follow::yes);
    EXPECT_FALSE(next.farByItself());
    choose("Light", "as the desktop");
    EXPECT_EQ(Settings().night(), Settings::Follow::desktop);
    EXPECT_FALSE(window->look().night());
}

TEST_F(SettingsPlace, ThreeSizesOfTypeAreThreeSizes) {
    std::vector<int> sizes;
    for (const char* size : {"usual", "large", "largest"}) {
        choose("Size of the type", size);
        sizes.push_back(window->look().font(TextSize::text).pixelSize());
    }
    EXPECT_LT(sizes[0], sizes[1]);
    EXPECT_LT(sizes[1], sizes[2]);
}

TEST_F(SettingsPlace, ALanguageIsAskedOfWhoeverOwnsTheWindow) {
    QSignalSpy asked(window.get(), &BenchWindow::languageChosen);
    choose("Language", "Español");
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(asked.at(0).at(0).toString(), "es");
}

TEST_F(SettingsPlace, CapturesGoIntoTheFolderThatWasChosen) {
    QTemporaryDir folder;
    Settings().setCaptures(folder.path());
    EXPECT_EQ(capturesFolder(), folder.path());
    EXPECT_TRUE(QString::fromStdString(newCapturePlace("pedal").path).startsWith(folder.path() + "/"));
    // One that is gone, on a stick that was pulled, is said and not fallen over.
    Settings().setCaptures("/proc/nowhere");
    const CapturePlace place = newCapturePlace("pedal");
    EXPECT_TRUE(place.warning.contains("/proc/nowhere")) << place.warning.toStdString();
    EXPECT_FALSE(QString::fromStdString(place.path).startsWith("/proc"));
}

TEST_F(SettingsPlace, ARunGoesOnBehindIt) {
    test::FakeSession* running = test::attachTo(*window, test::wiggleMoment());
    window->press(KeyAction::settings);
    choose("Light", "night");
    QTest::keyClick(window.get(), Qt::Key_Escape);
    EXPECT_EQ(window->page(), &window->bench());
    EXPECT_TRUE(running->running());
}

TEST(DesktopWishes, AreTakenAsThePortalTellsThem) {
    Desktop desktop;
    QSignalSpy changed(&desktop, &Desktop::changed);
    EXPECT_FALSE(desktop.dark());
    desktop.take("org.freedesktop.appearance", "color-scheme", 1U);
    EXPECT_TRUE(desktop.dark());
    desktop.take("org.freedesktop.appearance", "color-scheme", 2U);
    EXPECT_FALSE(desktop.dark());
    desktop.take("org.gnome.desktop.interface", "enable-animations", false);
    EXPECT_TRUE(desktop.calm());
    desktop.take("org.gnome.desktop.interface", "enable-animations", true);
    desktop.take("org.freedesktop.appearance", "reduced-motion", 1U);
    EXPECT_TRUE(desktop.calm());
    EXPECT_EQ(changed.count(), 5);
    desktop.take("org.example", "color-scheme", 1U);
    EXPECT_EQ(changed.count(), 5);
}

// The common screens, a panel of the desktop taken off.
TEST(FirstOpening, LiesWholeInsideWhatTheDesktopLeavesFree) {
    for (const QSize screen :
         {QSize(1280, 720), QSize(1366, 768), QSize(1920, 1080), QSize(3840, 2160), QSize(1024, 768)}) {
        const QRect free(0, 32, screen.width(), screen.height() - 32);
        const Opening opening = openingIn(free);
        EXPECT_TRUE(free.contains(opening.place.adjusted(-8, -40, 8, 8))) << screen.width();
        EXPECT_EQ(opening.maximised, screen.height() < 900) << screen.width();
        if (!opening.maximised) {
            EXPECT_EQ(opening.place.size(), QSize(1280, 800));
        }
    }
}

TEST(FirstOpening, TheWindowItselfKeepsToIt) {
    QSettings().clear();
    BenchWindow window(std::make_unique<test::FakeDoors>());
    window.restoreHabits();
    const QRect free = window.screen()->availableGeometry(); // 800x800 of this platform
    EXPECT_LE(window.height(), free.height());
    EXPECT_TRUE(window.isMaximized());
}

TEST(Remembered, SizeAndMaximisedComeBackAndALanguageChangesNeither) {
    QSettings().clear();
    {
        BenchWindow window(std::make_unique<test::FakeDoors>());
        window.setGeometry(20, 30, 1000, 640);
        window.showMaximized();
        window.close();
    }
    BenchWindow next(std::make_unique<test::FakeDoors>());
    next.restoreHabits();
    EXPECT_TRUE(next.isMaximized());
    BenchWindow other(std::make_unique<test::FakeDoors>()); // as another language makes one
    ASSERT_TRUE(other.restoreGeometry(next.saveGeometry()));
    EXPECT_TRUE(other.isMaximized());
    other.showNormal();
    EXPECT_EQ(other.normalGeometry().size(), next.normalGeometry().size());
}

TEST(TypeInAWindow, NeverShrinksAndLeavesEveryPageItsLeast) {
    Look look;
    const auto textAt = [&](QSize size) {
        look.fitTo(size);
        return look.font(TextSize::small).pixelSize();
    };
    const int usual = textAt({1280, 800});
    for (const QSize size : {QSize(960, 600), QSize(1280, 720), QSize(1366, 705), QSize(1366, 768)})
        EXPECT_EQ(textAt(size), usual) << size.width() << "x" << size.height();
    EXPECT_GT(textAt({1920, 1080}), usual);
    for (const Look::Type type : {Look::Type::usual, Look::Type::large, Look::Type::largest}) {
        look.setType(type);
        for (const QSize size : {QSize(960, 600), QSize(1366, 768), QSize(1920, 1080)}) {
            look.fitTo(size);
            EXPECT_GE(size.width() / look.unit(), 959.9);
            EXPECT_GE(size.height() / look.unit(), 599.9);
        }
    }
}

} // namespace
} // namespace stillwire
