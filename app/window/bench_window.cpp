// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/bench_window.hpp"

#include "app/window/bench_page.hpp"
#include "app/window/habits.hpp"
#include "app/window/keys_page.hpp"
#include "app/window/start/start_page.hpp"
#include "app/window/wire/trace_view.hpp"
#include "app/window/words.hpp"

#include <QApplication>
#include <QDragEnterEvent>
#include <QFileDialog>
#include <QMimeData>
#include <QSettings>
#include <QShortcut>
#include <QStackedLayout>
#include <QTimer>
#include <QUrl>

namespace stillwire {
namespace {

constexpr int kSoundAfter_ms = 700; // asking for an audio device can take long
constexpr int kNotice_ms = 4000;

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
    bench_ = new BenchPage(look_, feed_, this);
    keys_ = new KeysPage(look_, this);
    for (QWidget* page : std::initializer_list<QWidget*>{start_, bench_, keys_}) pages_->addWidget(page);
    connect(start_, &StartPage::chosen, this, &BenchWindow::open);
    connect(start_, &StartPage::openAsked, this, &BenchWindow::askForFile);
    connect(start_, &StartPage::languageChosen, this, &BenchWindow::languageChosen);
    connect(&glances_, &GlanceTaker::taken, &start_->recents(), &RecentsModel::setGlance);
    connect(bench_, &BenchPage::keyPressed, this, &BenchWindow::press);
    connect(keys_, &KeysPage::done, this, [this] { turnTo(before_ ? before_ : start_); });
    connect(start_, &StartPage::givenUp, this, &BenchWindow::leaveAsked);
    connect(&opener_, &Opener::going, start_, &StartPage::setBusy);
    connect(&opener_, &Opener::opened, this, [this](const std::shared_ptr<Result<Opened>>& opened, const Way& way) {
        start_->setBusy({});
        arrive(*opened, way);
    });
    connect(&feed_, &Feed::changed, this, &BenchWindow::follow);
    buildKeys();
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
            shortcuts_.emplace_back(shortcut, entry.group);
        }
    }
}

QWidget* BenchWindow::page() const { return pages_->currentWidget(); }

void BenchWindow::turnTo(QWidget* page) {
    pages_->setCurrentWidget(page);
    leaving_ = false;
    // On the other pages Space and the letters belong to the widget that has the keyboard.
    for (const auto& [shortcut, group] : shortcuts_)
        shortcut->setEnabled(group == KeyGroup::window || page == bench_);
    if (page == start_ && shown_) refreshStart();
}

void BenchWindow::refreshStart() {
    for (const QString& path : doors_->takeUnfinished()) {
        start_->setCutShort(path); // the newest; the others stand among the recent ones
        habits::rememberCapture(path);
    }
    QStringList paths = habits::recentCaptures();
    for (const QString& demo : demos_)
        if (!paths.contains(demo)) paths << demo;
    start_->setRecents(paths);
    start_->refresh();
    glances_.take(paths);
}

void BenchWindow::open(const Way& way) {
    if (Opener::isLong(way)) {
        turnTo(start_);
        start_->setTrouble({});
        return opener_.open(way);
    }
    Result<Opened> opened = doors_->open(way);
    arrive(opened, way);
}

void BenchWindow::arrive(Result<Opened>& opened, const Way& way) {
    if (!opened) {
        turnTo(start_);
        start_->setTrouble(say(opened.error().sentence()));
        return;
    }
    start_->setTrouble({});
    start_->setCutShort({});
    start_->remember();
    const bool capture = way.kind == Way::Kind::capture;
    if (capture) habits::rememberCapture(way.path);
    onBench_ = capture ? way.path : QString();
    attach(std::move(*opened), !capture);
}

void BenchWindow::attach(Opened opened, bool guided) {
    strike_ = opened.strike;
    turnTo(bench_);
    bench_->begin(opened.name, opened.notes, guided, opened.length_s);
    sounds_.begin();
    feed_.attach(std::move(opened.session), std::move(opened.sheet));
    if (!guided) bench_->trace().showAll();
    if (!opened.warning.isEmpty()) bench_->say(opened.warning);
}

// What the window itself does about each change of the session.
void BenchWindow::follow(const Scene& scene) {
    sounds_.hear(scene);
    const QString path = QString::fromStdString(scene.snapshot->capturePath);
    if (path.isEmpty() || path == onBench_) return;
    onBench_ = path;
    if (path != savingTo_) return;
    savingTo_.clear();
    sayForAWhile(tr("The whole run is in %1 now, and goes on there.").arg(path));
}

void BenchWindow::leaveBench() {
    if (Session* session = feed_.session()) {
        session->stop();
        habits::rememberCapture(QString::fromStdString(session->snapshot()->capturePath));
    }
    sounds_.end();
    feed_.detach();
    strike_ = {};
    onBench_.clear();
    turnTo(start_);
}

void BenchWindow::leaveAsked() {
    if (page() == keys_) return turnTo(before_ ? before_ : start_);
    if (opener_.busy()) {
        opener_.giveUp();
        return start_->setBusy({});
    }
    if (page() != bench_) return;
    const SessionSnapshot& now = *feed_.scene().snapshot;
    const bool guidedRun = feed_.session() && feed_.session()->running() && now.guided && !now.prompt.finished;
    if ((guidedRun || now.pendingBytes > 0) && !leaving_) {
        leaving_ = true;
        sayForAWhile(
            now.pendingBytes > 0
                ? tr("Part of this run is in memory only: Ctrl+S saves it elsewhere, Esc once more gives it up.")
                : tr("Press Esc once more to end this run. What was recorded is kept."));
        return;
    }
    leaveBench();
}

void BenchWindow::sayForAWhile(const QString& notice) {
    bench_->say(notice);
    QTimer::singleShot(kNotice_ms, this, [this] {
        leaving_ = closing_ = false;
        if (page() == bench_) bench_->say({});
    });
}

void BenchWindow::strike() {
    if (strike_) strike_();
    sayForAWhile(strike_ ? tr("A dropout is made on the simulated meter.")
                         : tr("Only the simulated meter can be given a dropout."));
}

void BenchWindow::press(KeyAction action) {
    switch (action) {
    case KeyAction::keys:
        if (page() == keys_) return turnTo(before_ ? before_ : start_);
        before_ = page();
        return turnTo(keys_);
    case KeyAction::open: return askForFile();
    case KeyAction::night:
        look_.setNight(!look_.night());
        QSettings().setValue(QStringLiteral("night"), look_.night());
        return;
    case KeyAction::fullScreen: return setWindowState(windowState() ^ Qt::WindowFullScreen);
    case KeyAction::saveElsewhere: return saveElsewhere();
    case KeyAction::leave: return leaveAsked();
    case KeyAction::quit: close(); return;
    default: break;
    }
    if (page() != bench_) return;
    switch (action) {
    case KeyAction::mute: return sayForAWhile(sounds_.toggleMute());
    case KeyAction::hum: return sayForAWhile(sounds_.toggleHum());
    case KeyAction::aloud: return sayForAWhile(sounds_.toggleVoice());
    case KeyAction::strike: return strike();
    default: bench_->handle(action);
    }
}

void BenchWindow::askForFile() {
    const QString folder = QSettings().value(QStringLiteral("folder")).toString();
    const QString path =
        QFileDialog::getOpenFileName(this, tr("Open a capture"), folder, tr("Captures (*.csv);;All files (*)"));
    if (path.isEmpty()) return;
    QSettings().setValue(QStringLiteral("folder"), QFileInfo(path).path());
    if (feed_.session()) leaveBench();
    open(start_->captureWay(path));
}

void BenchWindow::saveElsewhere() {
    if (page() != bench_ || !feed_.session() || feed_.scene().snapshot->capturePath.empty()) return;
    const QString path =
        QFileDialog::getSaveFileName(this, tr("Save the capture elsewhere"), {}, tr("Captures (*.csv)"));
    if (path.isEmpty()) return;
    savingTo_ = path;
    feed_.session()->saveTo(path.toStdString());
}

void BenchWindow::restoreHabits() {
    QSettings settings;
    look_.setNight(settings.value(QStringLiteral("night"), false).toBool());
    sounds_.restore();
    const QByteArray geometry = settings.value(QStringLiteral("geometry")).toByteArray();
    if (!geometry.isEmpty()) restoreGeometry(geometry);
}

void BenchWindow::restoreSession() {
    const QString path = habits::keptOpen();
    if (!path.isEmpty()) open(start_->captureWay(path));
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
    if (shown_) return;
    shown_ = true;
    // Looking for ports and sheets may take a while: first the window, then what is in it.
    QTimer::singleShot(0, this, &BenchWindow::refreshStart);
    QTimer::singleShot(kSoundAfter_ms, this, [this] { sounds_.load(); });
}

void BenchWindow::closeEvent(QCloseEvent* event) {
    if (feed_.scene().snapshot->pendingBytes > 0 && !closing_) {
        event->ignore();
        sayForAWhile(
            tr("Part of this run is in memory only: Ctrl+S saves it elsewhere, closing once more gives it up."));
        closing_ = true;
        return;
    }
    QSettings().setValue(QStringLiteral("geometry"), saveGeometry());
    habits::keepOpen(page() == bench_ ? onBench_ : QString());
    if (feed_.session()) leaveBench();
    QWidget::closeEvent(event);
}

void BenchWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (event->mimeData()->hasUrls() && event->mimeData()->urls().front().isLocalFile())
        event->acceptProposedAction();
}

void BenchWindow::dropEvent(QDropEvent* event) {
    const QString path = event->mimeData()->urls().front().toLocalFile();
    if (feed_.session()) leaveBench();
    open(start_->captureWay(path));
}

} // namespace stillwire
