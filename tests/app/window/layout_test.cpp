// SPDX-License-Identifier: GPL-3.0-or-later
// Every page in every language, and with words a third longer: nothing cut off, nothing over another. Sizes are in
// the window's own pixels; a second run under QT_SCALE_FACTOR=2 makes the first of them 2560x1600 on the screen.
#include "app/language/language.hpp"
#include "app/window/bench_page.hpp"
#include "app/window/bench_window.hpp"
#include "app/window/start/start_page.hpp"
#include "tests/app/support/fake_session.hpp"
#include "tests/app/support/room.hpp"
#include "tests/support/long_run.hpp"

#include <functional>
#include <set>

#include <QCoreApplication>
#include <QSettings>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

struct Page {
    std::string name;
    std::function<void(BenchWindow&)> turnTo;
};

void show(BenchWindow& window, std::shared_ptr<SessionSnapshot> snapshot) {
    const bool guided = snapshot->guided;
    Opened opened;
    opened.session = std::make_unique<test::FakeSession>(std::move(snapshot));
    opened.sheet = test::leverSheet();
    opened.name = QStringLiteral("Depth lever");
    window.attach(std::move(opened), guided);
}

std::vector<Page> pages() {
    std::vector<Page> all;
    all.push_back({"start", [](BenchWindow& w) { w.leaveBench(); }});
    all.push_back({"start with trouble", [](BenchWindow& w) { w.open(w.start().captureWay("/tmp/broken.csv")); }});
    all.push_back({"start with captures", [](BenchWindow& w) {
                       w.leaveBench();
                       w.start().setRecents({"/tmp/monday.csv", "/tmp/tuesday.csv", "/tmp/wednesday.csv"});
                   }});
    all.push_back({"keys", [](BenchWindow& w) { w.press(KeyAction::keys); }});
    const std::pair<const char*, WireState> states[] = {
        {"silent", WireState::silent},   {"steady", WireState::steady}, {"moving", WireState::moving},
        {"dropped", WireState::dropped}, {"jumped", WireState::jumped}, {"blind", WireState::blind},
        {"over", WireState::overVoltage}};
    for (const auto& [name, state] : states)
        all.push_back({name, [state = state](BenchWindow& w) {
                           show(w, state == WireState::dropped ? test::wiggleMoment() : test::moment(state));
                       }});
    for (int i = 0; i < kStepCount; ++i) {
        const auto step = static_cast<Step>(i);
        all.push_back(
            {"step " + std::string(stepName(step)), [step](BenchWindow& w) { show(w, test::stepMoment(step)); }});
        all.push_back({"lead to " + std::string(stepName(step)),
                       [step](BenchWindow& w) { show(w, test::stepMoment(step, true)); }});
    }
    for (const test::Question question :
         {test::Question::supplyWires, test::Question::badReference, test::Question::badGround})
        all.push_back({"question " + std::to_string(static_cast<int>(question)),
                       [question](BenchWindow& w) { show(w, test::questionMoment(question)); }});
    all.push_back({"adjust", [](BenchWindow& w) { show(w, test::adjustMoment()); }});
    all.push_back({"disk full", [](BenchWindow& w) {
                       auto full = test::wiggleMoment();
                       full->recorderSays = Error{Error::Kind::badInput, "/media/stick/monday.csv", 0,
                                                  "the disk is full", "free some space or go on in another folder"}
                                                .sentence();
                       show(w, full);
                   }});
    all.push_back({"finished", [](BenchWindow& w) { show(w, test::finishedMoment()); }});
    all.push_back({"replay", [](BenchWindow& w) { show(w, test::replayMoment()); }});
    return all;
}

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
        BenchWindow window(std::make_unique<test::FakeDoors>());
        window.resize(size);
        window.show();
        // At the larger sizes everything grows alike: a few pages stand for all, unless there is time.
        const std::set<std::string> few{"start", "start with captures", "keys", "dropped", "step hook-up", "adjust",
                                        "replay"};
        for (const Page& page : pages()) {
            if (size.width() > 1280 && !test::longRun() && few.count(page.name) == 0) continue;
            page.turnTo(window);
            EXPECT_EQ(joined(test::cutOff(window, window.look())), "") << "cut off on page: " << page.name;
            EXPECT_EQ(joined(test::overlaps(window)), "") << "over another on page: " << page.name;
            if (page.name == "keys") window.press(KeyAction::keys);
        }
    }
    QCoreApplication::removeTranslator(&longer);
    speak(QStringLiteral("en"));
}

using Chosen = std::tuple<Words, QSize>;
std::string nameOfChosen(const ::testing::TestParamInfo<Chosen>& chosen) {
    return std::get<0>(chosen.param).name + std::to_string(std::get<1>(chosen.param).width());
}

INSTANTIATE_TEST_SUITE_P(
    Everywhere, Layout,
    ::testing::Combine(::testing::Values(Words{"english", "en", false}, Words{"spanish", "es", false},
                                         Words{"longer", "en", true}),
                       ::testing::Values(QSize(1280, 800), QSize(1920, 1080), QSize(2560, 1600))),
    nameOfChosen);

} // namespace
} // namespace stillwire
