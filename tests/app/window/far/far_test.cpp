// SPDX-License-Identifier: GPL-3.0-or-later
// Read from three metres: large enough on every common screen in both languages, there by one key and by itself, and
// a dropout turns the whole head.
#include "app/language/language.hpp"
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/far/far_view.hpp"
#include "app/window/start/start_page.hpp"
#include "app/window/wire/readout_view.hpp"
#include "app/window/words.hpp"
#include "tests/app/support/fake_session.hpp"

#include <QSettings>
#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Far : public ::testing::Test {
protected:
    void SetUp() override {
        QSettings().clear();
        window = std::make_unique<BenchWindow>(std::make_unique<test::FakeDoors>());
        window->resize(1366, 768);
        window->show();
        QTest::qWait(20);
    }
    test::FakeSession* show(std::shared_ptr<SessionSnapshot> snapshot) {
        test::FakeSession* session = test::attachTo(*window, std::move(snapshot));
        QTest::qWait(10);
        return session;
    }
    FarView& far() { return window->bench().far(); }
    std::unique_ptr<BenchWindow> window;
};

std::vector<Prompt> everyPrompt() {
    std::vector<Prompt> all;
    for (int i = 0; i < kStepCount; ++i)
        for (const bool moving : {false, true}) all.push_back(test::stepMoment(static_cast<Step>(i), moving)->prompt);
    for (const Question question : {Question::badReference, Question::badGround, Question::finish}) {
        Prompt prompt = test::stepMoment(Step::reference)->prompt;
        prompt.question = question;
        all.push_back(prompt);
    }
    return all;
}

TEST(FarWords, HoldInTwoLinesOfTwentyEightLettersInEveryLanguage) {
    for (const char* language : {"en", "es"}) {
        speak(QString::fromLatin1(language));
        for (const Prompt& prompt : everyPrompt()) {
            const QStringList lines = farInstruction(prompt);
            EXPECT_GE(lines.size(), 1) << prompt.title.english();
            EXPECT_LE(lines.size(), kFarLines) << prompt.title.english();
            for (const QString& line : lines) EXPECT_LE(line.size(), kFarLetters) << line.toStdString();
        }
    }
    speak("en");
}

TEST_F(Far, EverythingToBeReadIsATwentiethOfTheWindowHighAndNothingIsCut) {
    for (const char* language : {"en", "es"}) {
        speak(QString::fromLatin1(language));
        for (const QSize size : {QSize(1280, 720), QSize(1366, 768), QSize(1920, 1080)}) {
            SetUp();
            window->resize(size);
            for (int i = 0; i < kStepCount; ++i) {
                show(test::stepMoment(static_cast<Step>(i)));
                window->press(KeyAction::far);
                ASSERT_TRUE(far().isVisible());
                const QFontMetricsF capitals(window->look().digits(far().capitals()));
                EXPECT_GE(capitals.tightBoundingRect("H").height(), 0.05 * window->height());
                far().grab();
                EXPECT_EQ(far().property("cutOff").toStringList().join("|").toStdString(), "")
                    << language << size.width() << " " << stepName(static_cast<Step>(i));
                const auto* head = far().findChild<ReadoutView*>();
                EXPECT_EQ(head->property("cutOff").toStringList().join("|").toStdString(), "");
            }
        }
    }
    speak("en");
}

TEST_F(Far, ComesByOneKeyAndGoesByItAndByAClick) {
    show(test::wiggleMoment());
    EXPECT_FALSE(far().isVisible());
    QTest::keyClick(window.get(), Qt::Key_A);
    EXPECT_TRUE(far().isVisible());
    EXPECT_EQ(far().geometry(), window->bench().rect());
    QTest::keyClick(window.get(), Qt::Key_A);
    EXPECT_FALSE(far().isVisible());
    QTest::keyClick(window.get(), Qt::Key_A);
    QTest::mouseClick(&far(), Qt::LeftButton);
    EXPECT_FALSE(far().isVisible());
}

TEST_F(Far, ComesByItselfOnceTheHandsAreBusyUnlessThatIsNotWanted) {
    window->bench().setHandsBusyAfter(0);
    show(test::wiggleMoment());
    EXPECT_TRUE(far().isVisible());
    QTest::keyClick(window.get(), Qt::Key_A); // not now
    EXPECT_FALSE(far().isVisible());
    show(test::hookUpMoment()); // there is more to read before a lead is on
    EXPECT_FALSE(far().isVisible());
    show(test::adjustMoment()); // the aim is the thing to see
    EXPECT_FALSE(far().isVisible());
    show(test::stepMoment(Step::reference, true)); // the lead is on its way: the drawing shows where
    EXPECT_FALSE(far().isVisible());
    window->settings().setFarByItself(false);
    show(test::wiggleMoment());
    EXPECT_FALSE(far().isVisible());
}

TEST_F(Far, SaysTheCautionsLargeWhereTheyAreNewAndFoldedAfterwards) {
    auto session = show(test::stepMoment(Step::wiggleShaft));
    window->press(KeyAction::far);
    const QImage fresh = far().grab().toImage();
    auto next = test::stepMoment(Step::wiggleHarness);
    next->prompt.cautions = session->snapshot()->prompt.cautions;
    session->show(next);
    window->feed().poll();
    QTest::qWait(300);
    window->feed().poll();
    // A ground of cautions over a good part of the picture, and next to nothing of it.
    const auto share = [&](const QImage& picture) {
        const QRgb ground = window->look()(Role::cautionBack).rgb();
        int found = 0, all = 0;
        for (int y = 0; y < picture.height(); y += 4)
            for (int x = 0; x < picture.width(); x += 4, ++all) found += picture.pixel(x, y) == ground;
        return static_cast<double>(found) / all;
    };
    EXPECT_GT(share(fresh), 0.05);
    EXPECT_LT(share(far().grab().toImage()), 0.001);
    EXPECT_TRUE(far().accessibleDescription().contains(say(next->prompt.cautions.front())));
}

// By lightness: most of the head is as far from the page as can be, in day and night, near and far; and by shape.
TEST_F(Far, ADropoutTurnsTheWholeHeadForTwoSeconds) {
    for (const bool night : {false, true}) {
        window->settings().setNight(night ? Settings::Follow::yes : Settings::Follow::no);
        for (const bool fromAfar : {false, true}) {
            const auto headOf = [&](const std::shared_ptr<SessionSnapshot>& moment) {
                show(moment);
                if (fromAfar) window->press(KeyAction::far);
                auto* head = fromAfar ? far().findChild<ReadoutView*>() : &window->bench().readout();
                return head->grab().toImage();
            };
            const auto turned = [&](const QImage& a, const QImage& b) {
                int far = 0, all = 0;
                for (int y = 0; y < a.height(); y += 3)
                    for (int x = 0; x < a.width(); x += 3, ++all)
                        far += std::abs(a.pixelColor(x, y).lightness() - b.pixelColor(x, y).lightness()) > 120;
                return static_cast<double>(far) / all;
            };
            const QImage steady = headOf(test::moment(WireState::steady)), dropped = headOf(test::wiggleMoment());
            // Less than all of it only where digits of one lie on the ground of the other.
            EXPECT_GT(turned(steady, dropped), 0.4) << night << fromAfar;
            auto justOver = test::wiggleMoment();
            justOver->findings = [&] {
                auto findings = std::make_shared<Findings>(*justOver->findings);
                findings->state = WireState::steady;
                findings->excursions.back().open = false;
                return findings;
            }();
            const Time end = justOver->findings->excursions.back().to;
            justOver->now = end + fromSeconds(1.9);
            EXPECT_EQ(stateWord(*justOver).state, WireState::dropped);
            justOver->now = end + fromSeconds(2.1);
            EXPECT_EQ(stateWord(*justOver).state, WireState::steady);
        }
    }
}

} // namespace
} // namespace stillwire
