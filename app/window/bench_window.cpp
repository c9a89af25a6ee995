// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/bench_window.hpp"

#include "app/window/bench_page.hpp"
#include "app/window/keys_page.hpp"
#include "app/window/start_page.hpp"
#include "app/window/trace_view.hpp"

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

constexpr int kRecents = 12;
constexpr int kSoundAfter_ms = 700; // asking for an audio device can take long
const QString kRecentKey = QStringLiteral("recent");

void rememberCapture(const QString& path) {
    if (path.isEmpty()) return;
    QSettings settings;
    QStringList recent = settings.value(kRecentKey).toStringList();
    recent.removeAll(path);
    recent.prepend(path);
    settings.setValue(kRecentKey, QStringList(recent.mid(0, kRecents)));
}

} // namespace

BenchWindow::BenchWindow(std::unique_ptr<Doors> doors, QWidget* parent) : QWidget(parent), doors_(std::move(doors)) {
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
    connect(&glances_, &GlanceTaker::taken, &start_->recents(), &RecentsModel::setGlance);
    connect(bench_, &BenchPage::keyPressed, this, &BenchWindow::press);
    connect(keys_, &KeysPage::done, this, [this] { turnTo(before_ ? before_ : start_); });
    connect(&feed_, &Feed::changed, this, [this](const Scene& scene) {
        const std::optional<Tone> tone = tones_.hear(scene);
        if (tone && !muted_) speaker_.play(*tone);
    });
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
    QStringList paths = QSettings().value(kRecentKey).toStringList();
    for (const QString& demo : demos_)
        if (!paths.contains(demo)) paths << demo;
    start_->setRecents(paths);
    start_->refresh();
    glances_.take(paths);
}

void BenchWindow::open(const Way& way) {
    Result<Opened> opened = doors_->open(way);
    if (!opened) {
        turnTo(start_);
        start_->setTrouble(QString::fromStdString(opened.error().text()));
        return;
    }
    start_->setTrouble({});
    start_->remember();
    if (way.kind == Way::Kind::capture) rememberCapture(way.path);
    attach(std::move(*opened), way.kind != Way::Kind::capture);
}

void BenchWindow::attach(Opened opened, bool guided) {
    tones_.reset();
    turnTo(bench_);
    bench_->begin(opened.name, opened.notes, guided);
    feed_.attach(std::move(opened.session), std::move(opened.sheet));
    if (!guided) bench_->trace().showAll();
}

void BenchWindow::leaveBench() {
    if (Session* session = feed_.session()) {
        session->stop();
        rememberCapture(QString::fromStdString(session->snapshot()->capturePath));
    }
    feed_.detach();
    turnTo(start_);
}

void BenchWindow::leaveAsked() {
    if (page() == keys_) return turnTo(before_ ? before_ : start_);
    if (page() != bench_) return;
    const bool guidedRun = feed_.session() && feed_.session()->running() && feed_.scene().snapshot->guided &&
                           !feed_.scene().snapshot->prompt.finished;
    if (guidedRun && !leaving_) {
        leaving_ = true;
        bench_->say(tr("Press Esc once more to end this run. What was recorded is kept."));
        QTimer::singleShot(4000, this, [this] {
            leaving_ = false;
            if (page() == bench_) bench_->say({});
        });
        return;
    }
    leaveBench();
}

void BenchWindow::toggleMute() {
    if (!speaker_.available())
        return bench_->say(tr("This computer has no sound output. Everything that would sound is shown."));
    muted_ = !muted_;
    QSettings().setValue(QStringLiteral("mute"), muted_);
    bench_->say(muted_ ? tr("Muted. M sounds again.") : tr("Sound is on: dropouts and poses."));
    QTimer::singleShot(4000, this, [this] {
        if (page() == bench_ && !leaving_) bench_->say({});
    });
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
    case KeyAction::mute:
        if (page() == bench_) toggleMute();
        return;
    case KeyAction::quit: close(); return;
    default: break;
    }
    if (page() == bench_) bench_->handle(action);
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
    if (!path.isEmpty()) feed_.session()->saveTo(path.toStdString());
}

void BenchWindow::restoreHabits() {
    QSettings settings;
    look_.setNight(settings.value(QStringLiteral("night"), false).toBool());
    muted_ = settings.value(QStringLiteral("mute"), false).toBool();
    const QByteArray geometry = settings.value(QStringLiteral("geometry")).toByteArray();
    if (!geometry.isEmpty()) restoreGeometry(geometry);
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
    QTimer::singleShot(kSoundAfter_ms, this, [this] { speaker_.load(); });
}

void BenchWindow::closeEvent(QCloseEvent* event) {
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
    if (feed_.session()) leaveBench();
    open(start_->captureWay(path));
}

} // namespace stillwire
