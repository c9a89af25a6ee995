// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/bench_window.hpp"

#include "app/window/bench_page.hpp"
#include "app/window/habits.hpp"
#include "app/window/keys_page.hpp"
#include "app/window/leave/ask_view.hpp"
#include "app/window/settings/opening.hpp"
#include "app/window/settings/settings_page.hpp"
#include "app/window/start/capture_place.hpp"
#include "app/window/start/start_page.hpp"
#include "app/window/wire/trace_view.hpp"
#include "app/window/words.hpp"

#include <QApplication>
#include <QDesktopServices>
#include <QDragEnterEvent>
#include <QFileDialog>
#include <QMimeData>
#include <QScreen>
#include <QSettings>
#include <QShortcut>
#include <QStackedLayout>
#include <QStandardPaths>
#include <QTimer>
#include <QUrl>

namespace stillwire {
namespace {

constexpr int kSoundAfter_ms = 700;                   // asking for an audio device can take long
constexpr int kNotice_ms = 4000, kTrouble_ms = 12000; // a mend takes longer to read

} // namespace

BenchWindow::BenchWindow(std::unique_ptr<Doors> doors, QWidget* parent)
    : QWidget(parent), doors_(std::move(doors)), opener_(*doors_) {
    // Before any view connects: a style sheet set after them would bring their old colours back.
    connect(&look_, &Look::changed, this, &BenchWindow::restyle);
    setWindowTitle(QStringLiteral("Stillwire"));
    setAcceptDrops(true);
    setMinimumSize(960, 600);
    resize(1280, 800);
    pages_ = new QStackedLayout(this);
    pages_->setContentsMargins(0, 0, 0, 0);
    start_ = new StartPage(look_, *doors_, this);
    bench_ = new BenchPage(look_, settings_, feed_, this);
    keys_ = new KeysPage(look_, this);
    settingsPage_ = new SettingsPage(look_, settings_, this);
    for (QWidget* page : std::initializer_list<QWidget*>{start_, bench_, keys_, settingsPage_})
        pages_->addWidget(page);
    ask_ = new AskView(look_, this);
    connect(ask_, &AskView::answered, this, [this] {
        enableKeys();
        if (page() == bench_) bench_->trace().setFocus();
    });
    connect(ask_, &AskView::saveElsewhereAsked, this, &BenchWindow::saveElsewhere);
    connect(start_, &StartPage::chosen, this, &BenchWindow::open);
    connect(start_, &StartPage::putAside, this, [this](const QString& path) {
        doors_->forgetUnfinished(path);
        refreshStart();
    });
    connect(start_, &StartPage::openAsked, this, &BenchWindow::askForFile);
    connect(start_, &StartPage::languageChosen, this, &BenchWindow::languageChosen);
    connect(&glances_, &GlanceTaker::taken, &start_->recents(), &RecentsModel::setGlance);
    connect(bench_, &BenchPage::keyPressed, this, &BenchWindow::press);
    connect(start_, &StartPage::settingsAsked, this, [this] { press(KeyAction::settings); });
    connect(keys_, &KeysPage::done, this, [this] { lookAside(keys_); });
    connect(settingsPage_, &SettingsPage::done, this, [this] { lookAside(settingsPage_); });
    connect(settingsPage_, &SettingsPage::languageChosen, this, &BenchWindow::languageChosen);
    connect(&settings_, &Settings::changed, this, &BenchWindow::followSettings);
    connect(&desktop_, &Desktop::changed, this, &BenchWindow::followSettings);
    connect(start_, &StartPage::givenUp, this, &BenchWindow::leaveAsked);
    connect(&opener_, &Opener::going, this, [this](const QString& says, double share) {
        start_->setBusy(says, share);
        if (page() == bench_) bench_->say(says);
    });
    connect(&opener_, &Opener::opened, this, [this](const std::shared_ptr<Result<Opened>>& opened, const Way& way) {
        start_->setBusy({});
        if (page() == bench_) bench_->say({});
        arrive(*opened, way);
    });
    connect(&feed_, &Feed::changed, this, &BenchWindow::follow);
    buildKeys();
    followSettings();
    restyle();
    turnTo(start_);
}

BenchWindow::~BenchWindow() = default;

void BenchWindow::buildKeys() {
    for (const KeyEntry& entry : keyTable()) {
        for (const QKeySequence& key : entry.keys) {
            auto* shortcut = new QShortcut(key, this);
            shortcut->setAutoRepeat(entry.group == KeyGroup::wire);
            connect(shortcut, &QShortcut::activated, this, [this, action = entry.action] { press(action); });
            shortcuts_.emplace_back(shortcut, entry);
        }
    }
}

QWidget* BenchWindow::page() const { return pages_->currentWidget(); }

void BenchWindow::turnTo(QWidget* page) {
    pages_->setCurrentWidget(page);
    enableKeys();
    if (page == start_ && painted_) refreshStart();
}

void BenchWindow::lookAside(QWidget* aside) {
    if (page() == aside) return turnTo(before_ ? before_ : start_);
    if (page() == start_ || page() == bench_) before_ = page();
    keys_->showFor(before_ == bench_);
    ask_->goOn();
    turnTo(aside);
}

void BenchWindow::followSettings() {
    const auto wanted = [](Settings::Follow follow, bool desktop) {
        return follow == Settings::Follow::desktop ? desktop : follow == Settings::Follow::yes;
    };
    look_.setNight(wanted(settings_.night(), desktop_.dark()));
    look_.setCalm(wanted(settings_.calm(), desktop_.calm()));
    look_.setType(settings_.type());
}

// On the other pages, and under the question, Space and the letters belong to the widget that has the keyboard.
void BenchWindow::enableKeys() {
    for (const auto& [shortcut, key] : shortcuts_)
        shortcut->setEnabled(key.group == KeyGroup::window ||
                             (page() == bench_ && (!ask_->asking() || key.action == KeyAction::stop)));
}

void BenchWindow::refreshStart() {
    const QStringList cutShort = doors_->unfinished();
    for (const QString& path : cutShort)
        if (!habits::recentCaptures().contains(path)) habits::rememberCapture(path);
    start_->setCutShort(cutShort);
    QStringList paths = habits::recentCaptures();
    for (const QString& demo : demos_)
        if (!paths.contains(demo)) paths << demo;
    start_->setRecents(paths);
    start_->refresh();
    glances_.take(paths);
}

// A run that goes on stays in front until what is opened can take its place.
void BenchWindow::open(const Way& way) {
    if (Opener::isLong(way)) {
        if (!feed_.session()) turnTo(start_);
        start_->setTrouble({});
        return opener_.open(way);
    }
    Result<Opened> opened = doors_->open(way);
    arrive(opened, way);
}

void BenchWindow::showTrouble(const QString& trouble) {
    if (feed_.session()) {
        turnTo(bench_);
        return sayForAWhile(trouble, kTrouble_ms);
    }
    turnTo(start_);
    start_->setTrouble(trouble);
}

void BenchWindow::arrive(Result<Opened>& opened, const Way& way) {
    if (!opened) return showTrouble(say(opened.error().sentence()));
    auto held = std::make_shared<Opened>(std::move(*opened));
    whenMayEnd(tr("Open %1 and end this run?").arg(held->name), [this, held, way] {
        if (feed_.session()) leaveBench();
        start_->setTrouble({});
        start_->remember();
        const bool capture = way.kind == Way::Kind::capture;
        if (capture) {
            habits::rememberCapture(way.path);
            doors_->forgetUnfinished(way.path); // it was taken up
        }
        onBench_ = capture ? way.path : QString();
        attach(std::move(*held), !capture);
    });
}

void BenchWindow::attach(Opened opened, bool guided) {
    shown_ = std::move(opened);
    guided_ = guided;
    turnTo(bench_);
    bench_->begin(shown_.name, shown_.notes, guided, shown_.length_s);
    sounds_.begin();
    feed_.attach(std::move(shown_.session), shown_.sheet);
    if (!guided) bench_->trace().showAll();
    if (!shown_.warning.isEmpty()) bench_->say(shown_.warning);
}

std::optional<Opened> BenchWindow::handOver() {
    if (!feed_.session()) return {};
    ask_->goOn();
    sounds_.end();
    shown_.session = feed_.detach();
    return std::exchange(shown_, {});
}

// What the window itself does about each change of the session.
void BenchWindow::follow(const Scene& scene) {
    sounds_.hear(scene);
    followQuestion(scene);
    const QString path = QString::fromStdString(scene.snapshot->capturePath);
    if (path.isEmpty() || path == onBench_) return;
    onBench_ = path;
    if (path != savingTo_) return;
    savingTo_.clear();
    sayForAWhile(tr("The whole run is in %1 now, and goes on there.").arg(path), kNotice_ms);
}

// A stop goes before every question; and one about a run that is over has nothing left to ask.
void BenchWindow::followQuestion(const Scene& scene) {
    const bool stops = scene.snapshot->guided && scene.snapshot->prompt.stopNow;
    const bool newStop = stops && !std::exchange(stopSeen_, stops);
    stopSeen_ = stops;
    if (!ask_->asking() || !feed_.session()) return;
    if (newStop || !atStake(*feed_.session())) ask_->goOn();
}

void BenchWindow::leaveBench() {
    ask_->goOn();
    if (Session* session = feed_.session()) {
        session->stop();
        habits::rememberCapture(QString::fromStdString(session->snapshot()->capturePath));
    }
    sounds_.end();
    feed_.detach();
    shown_ = {};
    onBench_.clear();
    turnTo(start_);
}

void BenchWindow::whenMayEnd(const QString& question, std::function<void()> then) {
    const std::optional<AtStake> stake = feed_.session() ? atStake(*feed_.session()) : std::nullopt;
    if (!stake) return then();
    turnTo(bench_);
    ask_->ask(question, *stake, std::move(then));
    enableKeys();
}

void BenchWindow::leaveAsked() {
    if (ask_->asking()) return ask_->goOn();
    if (page() == keys_ || page() == settingsPage_) return lookAside(page());
    if (opener_.busy()) {
        opener_.giveUp();
        if (page() == bench_) bench_->say({});
        return start_->setBusy({});
    }
    if (page() == bench_) whenMayEnd(tr("End this run?"), [this] { leaveBench(); });
}

void BenchWindow::sayForAWhile(const QString& notice, int for_ms) {
    bench_->say(notice);
    QTimer::singleShot(for_ms, this, [this, mine = ++notice_] {
        if (mine == notice_ && page() == bench_) bench_->say({});
    });
}

void BenchWindow::strike() {
    if (shown_.strike) shown_.strike();
    sayForAWhile(shown_.strike ? tr("A dropout is made on the simulated meter.")
                               : tr("Only the simulated meter can be given a dropout."),
                 kNotice_ms);
}

void BenchWindow::press(KeyAction action) {
    switch (action) {
    case KeyAction::keys: return lookAside(keys_);
    case KeyAction::settings: return lookAside(settingsPage_);
    case KeyAction::open: return askForFile();
    case KeyAction::night: return settings_.setNight(look_.night() ? Settings::Follow::no : Settings::Follow::yes);
    case KeyAction::fullScreen: return setWindowState(windowState() ^ Qt::WindowFullScreen);
    case KeyAction::saveElsewhere: return saveElsewhere();
    case KeyAction::leave: return leaveAsked();
    case KeyAction::quit: close(); return;
    default: break;
    }
    if (page() != bench_) return;
    switch (action) {
    case KeyAction::mute: return sayForAWhile(sounds_.toggleMute(), kNotice_ms);
    case KeyAction::hum: return sayForAWhile(sounds_.toggleHum(), kNotice_ms);
    case KeyAction::aloud: return sayForAWhile(sounds_.toggleVoice(), kNotice_ms);
    case KeyAction::strike: return strike();
    case KeyAction::showFolder: return showFolder();
    case KeyAction::next: bench_->handle(action); return sayWhatIsWanted();
    case KeyAction::stop:
        if (ask_->asking()) return ask_->end();
        return whenMayEnd(tr("End the run here?"), [this] { bench_->handle(KeyAction::stop); });
    default: bench_->handle(action);
    }
}

// Space ends no step short: it says what the step still wants, and which key leaves it out.
void BenchWindow::sayWhatIsWanted() {
    const Prompt& prompt = feed_.scene().snapshot->prompt;
    if (!feed_.scene().snapshot->guided || prompt.wanted.empty() || !prompt.choices.empty() || prompt.stopNow) return;
    sayForAWhile(tr("Still wanted: %1. %2 skips the step.").arg(say(prompt.wanted), keyName(KeyAction::skip)),
                 kNotice_ms);
}

void BenchWindow::showFolder() {
    if (onBench_.isEmpty()) return;
    QDesktopServices::openUrl(QUrl::fromLocalFile(QFileInfo(onBench_).absolutePath()));
}

void BenchWindow::askForFile() {
    const QString folder = QSettings().value(QStringLiteral("folder"), capturesFolder()).toString();
    const QString path =
        QFileDialog::getOpenFileName(this, tr("Open a capture"), folder, tr("Captures (*.csv);;All files (*)"));
    if (path.isEmpty()) return;
    QSettings().setValue(QStringLiteral("folder"), QFileInfo(path).path());
    open(start_->captureWay(path));
}

// The documents, for the captures' own folder is where it is already, or the disk that is full.
QString BenchWindow::savedAs() const {
    const QString name = QFileInfo(QString::fromStdString(feed_.scene().snapshot->capturePath)).fileName();
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation) + QLatin1Char('/') + name;
}

void BenchWindow::saveElsewhere() {
    if (page() != bench_ || !feed_.session() || feed_.scene().snapshot->capturePath.empty()) return;
    const QString path =
        QFileDialog::getSaveFileName(this, tr("Save the capture elsewhere"), savedAs(), tr("Captures (*.csv)"));
    if (path.isEmpty()) return;
    savingTo_ = path;
    feed_.session()->saveTo(path.toStdString());
}

void BenchWindow::restoreHabits() {
    desktop_.ask();
    const QByteArray geometry = QSettings().value(QStringLiteral("geometry")).toByteArray();
    if (restoreGeometry(geometry)) return; // which keeps to the screens that are there
    const Opening first = openingIn(screen()->availableGeometry());
    setGeometry(first.place);
    if (first.maximised) setWindowState(Qt::WindowMaximized);
}

void BenchWindow::restyle() {
    setPalette(look_.widgetPalette());
    setFont(look_.font(TextSize::text));
    setStyleSheet(look_.styleSheet());
}

void BenchWindow::resizeEvent(QResizeEvent* event) {
    look_.fitTo(event->size());
    QWidget::resizeEvent(event);
}

void BenchWindow::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (painted_) return;
    painted_ = true;
    // Looking for ports and sheets may take a while: first the window, then what is in it.
    QTimer::singleShot(0, this, &BenchWindow::refreshStart);
    QTimer::singleShot(kSoundAfter_ms, this, [this] { sounds_.load(); });
}

void BenchWindow::closeEvent(QCloseEvent* event) {
    if (!closing_ && feed_.session() && atStake(*feed_.session())) {
        event->ignore();
        return whenMayEnd(tr("Close the bench and end this run?"), [this] {
            closing_ = true;
            close();
        });
    }
    QSettings().setValue(QStringLiteral("geometry"), saveGeometry());
    if (feed_.session()) leaveBench();
    QWidget::closeEvent(event);
}

void BenchWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (event->mimeData()->hasUrls() && event->mimeData()->urls().front().isLocalFile())
        event->acceptProposedAction();
}

void BenchWindow::dropEvent(QDropEvent* event) {
    const QString path = event->mimeData()->urls().front().toLocalFile();
    open(start_->captureWay(path));
}

} // namespace stillwire
