// SPDX-License-Identifier: GPL-3.0-or-later
// Every page in every language, and with words a third longer: nothing cut off, nothing over another. Sizes are in
// the window's own pixels; a second run under QT_SCALE_FACTOR=2 makes the first of them 2560x1600 on the screen.
#include "app/language/language.hpp"
#include "tests/app/support/pages.hpp"
#include "tests/app/support/room.hpp"
#include "tests/support/long_run.hpp"

#include <set>

#include <QCoreApplication>
#include <QSettings>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

std::string joined(const QStringList& list) { return list.join(QStringLiteral(" | ")).toStdString(); }

struct Words {
    const char* name;
    const char* language;
    bool longer;
};

class Layout : public ::testing::TestWithParam<std::tuple<Words, QSize>> {};

TEST_P(Layout, EveryPageHasRoom) {
    const auto& [words, size] = GetParam();
    QSettings().clear();
    speak(QString::fromLatin1(words.language));
    test::LongerWords longer;
    if (words.longer) QCoreApplication::installTranslator(&longer);
    {
        test::Stage stage;
        BenchWindow& window = *stage.window;
        window.resize(size);
        window.show();
        // At the larger sizes everything grows alike: a few pages stand for all, unless there is time.
        const std::set<std::string> few{"start",   "start-captures", "keys",   "settings", "dropped",
                                        "hook-up", "turning",        "replay", "lost"};
        for (const test::Page& page : test::pages()) {
            if (size.width() > 1280 && !test::longRun() && few.count(page.name) == 0) continue;
            page.turnTo(stage);
            EXPECT_EQ(joined(test::cutOff(window, window.look())), "") << "cut off on page: " << page.name;
            EXPECT_EQ(joined(test::overlaps(window)), "") << "over another on page: " << page.name;
            if (page.name == "keys") window.press(KeyAction::keys);
            if (page.name == "settings") window.press(KeyAction::settings);
        }
    }
    QCoreApplication::removeTranslator(&longer);
    speak(QStringLiteral("en"));
}

using Chosen = std::tuple<Words, QSize>;
std::string nameOfChosen(const ::testing::TestParamInfo<Chosen>& chosen) {
    return std::get<0>(chosen.param).name + std::to_string(std::get<1>(chosen.param).width()) + "x" +
           std::to_string(std::get<1>(chosen.param).height());
}

INSTANTIATE_TEST_SUITE_P(Everywhere, Layout,
                         ::testing::Combine(::testing::Values(Words{"english", "en", false},
                                                              Words{"spanish", "es", false},
                                                              Words{"longer", "en", true}),
                                            ::testing::Values(QSize(1280, 720), QSize(1366, 768), QSize(1280, 800),
                                                              QSize(1920, 1080), QSize(2560, 1600))),
                         nameOfChosen);
// The least the window can be is for the languages that there are.
INSTANTIATE_TEST_SUITE_P(Smallest, Layout,
                         ::testing::Combine(::testing::Values(Words{"english", "en", false},
                                                              Words{"spanish", "es", false}),
                                            ::testing::Values(QSize(960, 600))),
                         nameOfChosen);

} // namespace
} // namespace stillwire
