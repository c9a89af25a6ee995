// SPDX-License-Identifier: GPL-3.0-or-later
// Whole runs in the real window, with the real session on the simulated meter: by keyboard alone, and by evidence
// alone. STILLWIRE_SHOTS=FOLDER keeps a picture of every page on the way.
#include "app/language/language.hpp"
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/hand/hand_page.hpp"
#include "app/window/start/start_page.hpp"
#include "app/window/verdict/verdict_bar.hpp"
#include "app/window/wire/stop_view.hpp"
#include "app/window/words.hpp"
#include "core/capture/reader.hpp"
#include "tests/app/support/person.hpp"

#include <algorithm>
#include <set>

#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QElapsedTimer>
#include <QLabel>
#include <QRegularExpression>
#include <QSettings>
#include <QTest>
#include <QWindow>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

using test::LedDoors;
using test::Person;

const std::vector<Step> kWholeRun{Step::hookUp,    Step::reference,   Step::ground,        Step::coldStart,
                                  Step::leadCheck, Step::wiggleShaft, Step::wiggleHarness, Step::fullPress,
                                  Step::sweep,     Step::release,     Step::lift,          Step::warmRepeat,
                                  Step::adjust,    Step::confirm,     Step::putBack};

class GuidedRun : public ::testing::Test {
protected:
    void begin(Person::Says says) {
        QSettings().clear();
        person = std::make_unique<Person>(says);
        auto made = std::make_unique<LedDoors>(*person);
        doors = made.get();
        window = std::make_unique<BenchWindow>(std::move(made));
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(window.get()));
        window->activateWindow();
        if (!QTest::qWaitForWindowActive(window.get(), 1000)) QApplication::setActiveWindow(window.get());
        QTest::qWait(50); // the start page fills after the first painted window
    }
    void TearDown() override {
        if (person) person->leave();
        window.reset();
    }

    void press(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(window->windowHandle(), static_cast<Qt::Key>(key), modifiers);
        QCoreApplication::processEvents();
        ++keys;
    }
    void tabTo(const QString& name) {
        for (int i = 0; i < 30; ++i) {
            if (QApplication::focusWidget() && QApplication::focusWidget()->accessibleName() == name) return;
            press(Qt::Key_Tab);
        }
        FAIL() << "Tab does not reach " << name.toStdString();
    }
    // From the start page onto the bench, by keys.
    void start(const QString& named) {
        const QString scenario = sayName(named.toStdString());
        tabTo(StartPage::tr("Scenario"));
        auto* box = qobject_cast<QComboBox*>(QApplication::focusWidget());
        ASSERT_NE(box, nullptr);
        for (int i = 0; i < box->count() && box->currentText() != scenario; ++i) press(Qt::Key_Down);
        for (int i = 0; i < box->count() && box->currentText() != scenario; ++i) press(Qt::Key_Up);
        ASSERT_EQ(box->currentText(), scenario);
        tabTo(StartPage::tr("Start the simulated meter"));
        press(Qt::Key_Return);
        ASSERT_EQ(window->page(), &window->bench());
    }

    // What the person would say, as the keys that say it.
    void say(Command command, const Prompt& prompt) {
        for (std::size_t i = 0; i < prompt.choices.size(); ++i)
            if (prompt.choices[i].command == command) return press(Qt::Key_1 + static_cast<int>(i));
        switch (command) {
        case Command::next: return press(Qt::Key_Space);
        case Command::back: return press(Qt::Key_Backspace);
        case Command::skip: return press(Qt::Key_S);
        case Command::turnIn: return press(Qt::Key_T);
        case Command::turnOut: return press(Qt::Key_T, Qt::ShiftModifier);
        default: FAIL() << "no key says " << static_cast<int>(command);
        }
    }

    [[nodiscard]] const SessionSnapshot& seen() { return *window->feed().scene().snapshot; }
    [[nodiscard]] QString words() const { // every word that stands on the page, painted ones by what they describe
        QString all;
        for (const QWidget* widget : window->bench().findChildren<QWidget*>()) {
            if (!widget->isVisible()) continue;
            if (const auto* label = qobject_cast<const QLabel*>(widget)) all += label->text() + QLatin1Char('\n');
            if (const auto* button = qobject_cast<const QAbstractButton*>(widget)) all += button->text();
            all += widget->accessibleDescription() + QLatin1Char('\n');
        }
        return all;
    }
    [[nodiscard]] QString verdict() const {
        for (const QWidget* widget : window->bench().findChildren<QWidget*>())
            if (widget->isVisible() && widget->accessibleName() == VerdictBar::tr("Verdict"))
                return widget->accessibleDescription();
        return {};
    }

    // The page says what the prompt says, and nothing is cut off.
    void look() {
        const Prompt& prompt = seen().prompt;
        const QString page = words();
        if (!prompt.finished) {
            EXPECT_TRUE(page.contains(stillwire::say(prompt.title))) << page.toStdString();
            EXPECT_TRUE(page.contains(stillwire::say(prompt.instruction)));
            EXPECT_TRUE(page.contains(stillwire::say(prompt.wanted)));
            for (const Sentence& caution : prompt.cautions) EXPECT_TRUE(page.contains(stillwire::say(caution)));
        }
        window->grab();
        for (const QWidget* widget : window->findChildren<QWidget*>()) {
            if (!widget->isVisible()) continue;
            EXPECT_EQ(widget->property("cutOff").toStringList().join('|').toStdString(), "");
        }
        for (const QString& line : (page + window->windowTitle()).split(QLatin1Char('\n')))
            if (languageSpoken() != QLatin1String("en") && english.match(line).hasMatch()) left.insert(line);
        const QString shots = qEnvironmentVariable("STILLWIRE_SHOTS");
        if (shots.isEmpty()) return;
        QDir().mkpath(shots);
        const auto name = prompt.finished ? "finished" : prompt.step ? stepName(*prompt.step) : "stop";
        window->grab().save(QStringLiteral("%1/%2-%3%4.png")
                                .arg(shots)
                                .arg(shot++, 2, 10, QLatin1Char('0'))
                                .arg(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())))
                                .arg(prompt.movingLead                   ? "-lead"
                                     : prompt.question == Question::none ? ""
                                                                         : "-offer"));
    }

    // Until the session is over: looks at every page the person comes to, and plays the person's keys.
    void run() {
        Session* session = window->feed().session();
        ASSERT_NE(session, nullptr);
        const int before = keys;
        QElapsedTimer limit;
        limit.start();
        while (session->running() && limit.elapsed() < 120'000) {
            const auto said = person->waiting();
            if (!said) {
                QTest::qWait(1);
                continue;
            }
            window->feed().poll();
            QCoreApplication::processEvents();
            const Prompt prompt = seen().prompt;
            if (prompt.step && !prompt.movingLead && (shown.empty() || shown.back() != *prompt.step)) {
                shown.push_back(*prompt.step);
                if (prompt.step == Step::adjust && languageSpoken() == QLatin1String("en")) atAdjust();
            }
            look();
            if (prompt.stopNow) atStop();
            for (const Command command : *said) say(command, prompt);
            person->answered();
        }
        ASSERT_FALSE(session->running()) << "stuck at " << seen().prompt.title.english();
        window->feed().poll();
        QTest::qWait(20);
        look();
        keysInRun = keys - before;
    }

    void atAdjust() {
        EXPECT_TRUE(verdict().contains(QLatin1String("adjust the sensor"))) << verdict().toStdString();
        const QString page = words();
        EXPECT_TRUE(page.contains(QLatin1String("pressed would be"))) << page.toStdString();
        EXPECT_TRUE(page.contains(QLatin1String("Down by"))) << page.toStdString();
    }

    void atStop() {
        sawStop = true;
        const auto* stop = window->findChild<StopView*>();
        ASSERT_NE(stop, nullptr);
        EXPECT_TRUE(stop->isVisible());
        EXPECT_EQ(QRect(stop->mapTo(window.get(), QPoint(0, 0)), stop->size()), window->rect());
        EXPECT_TRUE(stop->accessibleDescription().contains(QLatin1String("Key off now")));
    }

    [[nodiscard]] int marked(std::string_view start) {
        const auto& marks = seen().marks;
        return static_cast<int>(
            std::count_if(marks.begin(), marks.end(), [&](const Mark& m) { return m.text().rfind(start, 0) == 0; }));
    }

    std::unique_ptr<Person> person;
    LedDoors* doors = nullptr;
    std::unique_ptr<BenchWindow> window;
    bool sawStop = false;
    std::vector<Step> shown;
    int keys = 0, keysInRun = 0, shot = 0;
    // Words that stand in nearly every English sentence and in no Spanish one.
    const QRegularExpression english{
        QStringLiteral("\\b(the|of|and|is|are|was|were|with|from|it|its|not|or|by|to|on|at|which|this)\\b")};
    std::set<QString> left; // lines that were not translated
};

TEST_F(GuidedRun, ByKeyboardAloneFromTheStartPageToTheConfirmation) {
    begin(Person::Says::byKeys);
    start(QStringLiteral("Wants turning"));
    run();
    EXPECT_EQ(shown, kWholeRun);
    EXPECT_TRUE(seen().prompt.finished);
    EXPECT_GT(keysInRun, 5);
    EXPECT_GE(marked("turn:"), 2);
    EXPECT_EQ(marked("skip:"), 0);
    EXPECT_EQ(marked("arm:"), 1);
    EXPECT_TRUE(verdict().startsWith(QLatin1String("Verdict: keep the sensor"))) << verdict().toStdString();
    const QString path = QString::fromStdString(seen().capturePath);
    press(Qt::Key_Escape);
    EXPECT_EQ(window->page(), &window->start()); // a run that is over asks nothing
    ASSERT_GT(window->start().recents().rowCount(), 0);
    EXPECT_EQ(window->start().recents().rows().front().path, path);
    const auto capture = loadCapture(path.toStdString());
    ASSERT_TRUE(capture) << capture.error().text();
    EXPECT_GT(capture.value().readings.size(), 1000U);
}

TEST_F(GuidedRun, ByEvidenceAloneWithNoKeyBetweenTheSteps) {
    begin(Person::Says::nothing);
    start(QStringLiteral("Wants turning"));
    run();
    EXPECT_EQ(keysInRun, 0);
    EXPECT_EQ(shown, kWholeRun);
    EXPECT_TRUE(seen().prompt.finished);
    EXPECT_EQ(marked("skip:"), 1); // the lift is a question, and nobody answered it
    EXPECT_EQ(marked("skip:lift"), 1);
    EXPECT_TRUE(verdict().startsWith(QLatin1String("Verdict: keep the sensor"))) << verdict().toStdString();
}

TEST_F(GuidedRun, OverFiveAndAHalfVoltsTheWholeWindowSaysStop) {
    begin(Person::Says::byKeys);
    doors->batteryOnTheWire = true;
    start(QStringLiteral("Good pedal"));
    run();
    EXPECT_TRUE(sawStop);
    EXPECT_EQ(shown.back(), Step::wiggleHarness);
    EXPECT_TRUE(seen().prompt.finished);
    EXPECT_FALSE(window->findChild<StopView*>()->isVisible()); // the key is off
    EXPECT_GE(marked("key:off"), 1);
    EXPECT_FALSE(verdict().contains(QLatin1String("keep"))) << verdict().toStdString();
}

TEST_F(GuidedRun, InSpanishNothingIsSaidInEnglish) {
    speak(QStringLiteral("es"));
    begin(Person::Says::nothing);
    start(QStringLiteral("Wants turning"));
    run();
    EXPECT_EQ(shown, kWholeRun);
    EXPECT_TRUE(verdict().startsWith(QLatin1String("Dictamen: conserve el sensor"))) << verdict().toStdString();
    for (const QString& line : left) ADD_FAILURE() << line.toStdString();
    speak(QStringLiteral("en"));
}

} // namespace
} // namespace stillwire
