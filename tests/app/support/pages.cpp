// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/support/pages.hpp"

#include "app/window/start/bench_doors.hpp"
#include "app/window/start/find_meter_box.hpp"
#include "app/window/start/start_page.hpp"
#include "core/procedure/texts.hpp"
#include "meters/session/link_watch.hpp"

#include <QComboBox>
#include <QFileInfo>
#include <QPushButton>
#include <QTest>

namespace stillwire::test {
namespace {

// A capture replayed to its end, by the real way.
void replay(Stage& stage, const QString& path) {
    Way way;
    way.kind = Way::Kind::capture;
    way.path = path;
    way.speed = 0;
    BenchDoors doors;
    auto opened = doors.open(way);
    if (!opened) return;
    Session* session = opened->session.get();
    stage.window->attach(std::move(*opened), false);
    if (!QTest::qWaitFor([&] { return session->snapshot()->link == LinkState::ended; }, 20000)) return;
    QTest::qWait(300); // the feed looks now and then
}

void fillRecents(Stage& stage, const QStringList& paths) {
    stage.window->start().setRecents(paths);
    for (const QString& path : paths) stage.window->start().recents().setGlance(glanceAt(path));
}

void startWithCaptures(Stage& stage, const QStringList& paths) {
    stage.start();
    fillRecents(stage, paths);
}

void choose(Stage& stage, const char* box, int at) {
    stage.window->start().findChild<QComboBox*>(QLatin1String(box))->setCurrentIndex(at);
}

PortFinding unreadable(const char* port) {
    PortFinding finding;
    finding.port = port;
    std::vector<std::uint8_t> bytes;
    for (int i = 0; i < 40; ++i) bytes.push_back(static_cast<std::uint8_t>(37 * i + 11));
    finding.heard.add(bytes, Time{0});
    finding.look = likenessOf(finding.heard);
    return finding;
}

void search(Stage& stage, std::vector<PortFinding> finds, bool endless) {
    stage.start();
    stage.doors->found = std::move(finds);
    stage.doors->endless = endless;
    for (QPushButton* button : stage.window->start().findChildren<QPushButton*>())
        if (button->text() == StartPage::tr("Which meter is it?")) button->click();
    QTest::qWait(100);
}

void addStart(std::vector<Page>& all) {
    const QString broken = QStringLiteral("/tmp/broken.csv");
    all.push_back({"start", [](Stage& s) { s.start(); }});
    all.push_back({"start-no-port", [](Stage& s) {
                       s.doors->portList.clear();
                       s.start();
                   }});
    all.push_back({"start-second-meter", [](Stage& s) {
                       s.doors->portList.push_back({"/dev/ttyUSB1", "ttyUSB1", "USB serial"});
                       s.start();
                       choose(s, "reference-port", 2);
                   }});
    all.push_back({"start-trouble", [broken](Stage& s) {
                       s.start();
                       s.window->open(s.window->start().captureWay(broken));
                   }});
    all.push_back({"start-captures", [](Stage& s) { startWithCaptures(s, demoCaptures()); }});
    all.push_back({"start-captures-gone", [](Stage& s) {
                       startWithCaptures(s, {"/tmp/monday.csv", "/tmp/tuesday.csv", "/tmp/wednesday.csv"});
                   }});
    all.push_back({"start-everything", [broken](Stage& s) {
                       s.start();
                       s.window->open(s.window->start().captureWay(broken));
                       fillRecents(s, demoCaptures());
                       s.window->start().setCutShort({QStringLiteral("/tmp/2026-02-03-0712-beach-cleaner.csv")});
                       choose(s, "reference-port", 1);
                   }});
    all.push_back({"start-busy", [](Stage& s) {
                       startWithCaptures(s, demoCaptures());
                       s.window->start().setBusy(
                           Opener::tr("%1: %2 %. Esc gives it up.")
                               .arg(Opener::tr("Reading %1, %2").arg(QStringLiteral("monday.csv"), "184 MB"))
                               .arg(41),
                           0.41);
                   }});
    all.push_back({"find-searching", [](Stage& s) { search(s, {}, true); }});
    all.push_back(
        {"find-one", [](Stage& s) {
             search(s, {foundMeter("/dev/ttyUSB0", "lcd-segment-meter", true), unreadable("/dev/ttyUSB1")}, false);
         }});
    all.push_back(
        {"find-other-settings", [](Stage& s) {
             search(s, {foundMeter("/dev/ttyUSB0", "text-line-logger", false), unreadable("/dev/ttyUSB1")}, false);
         }});
    all.push_back({"find-none", [](Stage& s) { search(s, {}, false); }});
    all.push_back({"settings", [](Stage& s) {
                       s.start();
                       s.window->press(KeyAction::settings);
                   }});
    all.push_back({"keys", [](Stage& s) { s.window->press(KeyAction::keys); }});
}

void addSteps(std::vector<Page>& all) {
    for (int i = 0; i < kStepCount; ++i) {
        const auto step = static_cast<Step>(i);
        const std::string name(stepName(step));
        all.push_back({name, [step](Stage& s) { s.show(step == Step::hookUp ? hookUpMoment() : stepMoment(step)); }});
        all.push_back({"lead-" + name, [step](Stage& s) { s.show(stepMoment(step, true)); }});
    }
    all.push_back({"question-reference", [](Stage& s) { s.show(questionMoment(Question::badReference)); }});
    all.push_back({"question-ground", [](Stage& s) { s.show(questionMoment(Question::badGround)); }});
    all.push_back({"turning", [](Stage& s) { s.show(adjustMoment()); }});
    all.push_back({"on-the-aim", [](Stage& s) {
                       auto there = adjustMoment();
                       there->lastVolts_V = 4.162;
                       there->prompt.instruction = Sentence{phrases::kTighten, {}};
                       there->prompt.wanted = {};
                       s.show(there);
                   }});
    all.push_back({"finished", [](Stage& s) { s.show(finishedMoment()); }});
}

void addWire(std::vector<Page>& all) {
    const std::pair<const char*, WireState> states[] = {
        {"silent", WireState::silent}, {"steady", WireState::steady}, {"moving", WireState::moving},
        {"jumped", WireState::jumped}, {"blind", WireState::blind},   {"over", WireState::overVoltage}};
    all.push_back({"dropped", [](Stage& s) { s.show(wiggleMoment()); }});
    for (const auto& [name, state] : states)
        all.push_back({name, [state = state](Stage& s) { s.show(moment(state)); }});
    all.push_back({"lost", [](Stage& s) {
                       auto lost = moment(WireState::silent);
                       LinkWatch watch("/dev/ttyUSB0", MeterDescription{});
                       watch.lost(lost->now);
                       lost->link = LinkState::lost;
                       lost->linkSays = watch.says(lost->now);
                       s.show(lost);
                   }});
    all.push_back({"disk-full", [](Stage& s) {
                       auto full = wiggleMoment();
                       full->recorderSays = Error{Error::Kind::badInput, "/media/stick/monday.csv", 0,
                                                  "the disk is full", "free some space or go on in another folder"}
                                                .sentence();
                       full->pendingBytes = 4096;
                       s.show(full);
                   }});
    for (const char* name : {"far-dropped", "far-steady", "far-hook-up", "far-cautions"})
        all.push_back({name, [is = std::string(name)](Stage& s) {
                           s.show(is == "far-dropped"    ? wiggleMoment()
                                  : is == "far-steady"   ? moment(WireState::steady)
                                  : is == "far-cautions" ? stepMoment(Step::wiggleHarness)
                                                         : hookUpMoment());
                           s.window->press(KeyAction::far);
                       }});
    all.push_back({"every-finding", [](Stage& s) {
                       s.show(wiggleMoment());
                       s.window->press(KeyAction::allFindings);
                   }});
    all.push_back({"leaving", [](Stage& s) {
                       s.show(moment(WireState::steady));
                       s.window->press(KeyAction::leave);
                   }});
    all.push_back({"leaving-disk-full", [](Stage& s) {
                       auto full = wiggleMoment();
                       full->pendingBytes = 4096;
                       full->capturePath = "/media/stick/monday.csv";
                       s.show(full);
                       s.window->close();
                   }});
}

void addReplays(std::vector<Page>& all) {
    all.push_back({"replay", [](Stage& s) { s.show(replayMoment()); }});
    all.push_back({"hidden", [](Stage& s) {
                       s.show(replayMoment());
                       s.window->press(KeyAction::hideVerdict);
                   }});
    for (const QString& path : demoCaptures())
        all.push_back(
            {"replay-" + QFileInfo(path).completeBaseName().toStdString(), [path](Stage& s) { replay(s, path); }});
}

} // namespace

Stage::Stage() {
    auto made = std::make_unique<FakeDoors>();
    doors = made.get();
    window = std::make_unique<BenchWindow>(std::move(made));
}

void Stage::start() {
    for (FindMeterBox* box : window->findChildren<FindMeterBox*>()) delete box;
    window->leaveBench();
    window->start().setTrouble({});
    window->start().setBusy({});
    window->start().setCutShort({});
    window->start().setRecents({});
    window->start().refresh();
    choose(*this, "reference-port", 0);
}

void Stage::show(std::shared_ptr<SessionSnapshot> snapshot) {
    for (FindMeterBox* box : window->findChildren<FindMeterBox*>()) delete box;
    const bool guided = snapshot->guided;
    Opened opened;
    opened.session = std::make_unique<FakeSession>(std::move(snapshot));
    opened.sheet = leverSheet();
    opened.name = sayName("Depth lever, fretting connector");
    window->attach(std::move(opened), guided);
}

std::vector<Page> pages() {
    std::vector<Page> all;
    addStart(all);
    addSteps(all);
    addWire(all);
    addReplays(all);
    return all;
}

} // namespace stillwire::test
