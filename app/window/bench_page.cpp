// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/bench_page.hpp"

#include "app/window/announcer.hpp"
#include "app/window/far/far_view.hpp"
#include "app/window/hand/briefing_view.hpp"
#include "app/window/hand/hand_page.hpp"
#include "app/window/hand/path_view.hpp"
#include "app/window/key_hints.hpp"
#include "app/window/look/key_button.hpp"
#include "app/window/look/rows_list.hpp"
#include "app/window/replay_page.hpp"
#include "app/window/verdict/cards_view.hpp"
#include "app/window/verdict/row_delegate.hpp"
#include "app/window/verdict/trouble_card.hpp"
#include "app/window/verdict/verdict_bar.hpp"
#include "app/window/verdict/verdict_head.hpp"
#include "app/window/wire/aim_view.hpp"
#include "app/window/wire/readout_view.hpp"
#include "app/window/wire/stop_view.hpp"
#include "app/window/wire/trace_view.hpp"
#include "app/window/words.hpp"

#include <QCursor>
#include <QHBoxLayout>
#include <QPainter>
#include <QStackedLayout>
#include <QVBoxLayout>

namespace stillwire {
namespace {
// Of the left page; in a narrow window the wire needs what the hand can do without.
struct LeftWidths {
    double usual, reading, wide;
};
LeftWidths leftWidths(double across) { return across < 1100 ? LeftWidths{344, 372, 412} : LeftWidths{396, 440, 480}; }
} // namespace

BenchPage::BenchPage(const Look& look, const Settings& settings, Feed& feed, QWidget* parent)
    : QWidget(parent), look_(look), settings_(settings), feed_(feed) {
    setAttribute(Qt::WA_OpaquePaintEvent);
    left_ = new QWidget(this);
    right_ = new QWidget(this);
    auto* both = new QHBoxLayout(this);
    both->setContentsMargins(0, 0, 0, 0);
    both->setSpacing(0);
    both->addWidget(left_);
    both->addWidget(right_, 1);
    buildLeft();
    buildRight();
    far_ = new FarView(look, this);
    connect(far_, &FarView::near, this, [this] { handle(KeyAction::far); });
    announcer_ = new Announcer(*this);
    stop_ = new StopView(look, this);
    connect(stop_, &StopView::keyIsOff, this, [this] { handle(KeyAction::next); });
    connect(&look, &Look::changed, this, &BenchPage::restyle);
    connect(&feed, &Feed::changed, this, &BenchPage::show);
    restyle();
}

void BenchPage::buildLeft() {
    hand_ = new HandPage(look_, feed_, left_);
    replay_ = new ReplayPage(look_, left_);
    handHints_ = new KeyHints(look_,
                              {{KeyAction::next, tr("next")},
                               {KeyAction::back, tr("back")},
                               {KeyAction::skip, tr("skip")},
                               {KeyAction::far, tr("afar")},
                               {KeyAction::mute, tr("mute")},
                               {KeyAction::leave, tr("leave")},
                               {KeyAction::keys, tr("keys")}},
                              left_);
    turns_ = new KeyHints(
        look_, {{KeyAction::turnIn, tr("part-turn made")}, {KeyAction::turnOut, tr("the other way")}}, left_);
    turns_->hide();
    replayHints_ = new KeyHints(look_,
                                {{KeyAction::previousEvent, tr("before")},
                                 {KeyAction::nextEvent, tr("next finding")},
                                 {KeyAction::showAll, tr("whole")},
                                 {KeyAction::showFolder, tr("folder")},
                                 {KeyAction::open, tr("open")},
                                 {KeyAction::leave, tr("leave")},
                                 {KeyAction::keys, tr("keys")}},
                                left_);
    leftColumn_ = new QVBoxLayout(left_);
    auto* pages = new QWidget(left_);
    leftStack_ = new QStackedLayout(pages);
    leftStack_->addWidget(hand_);
    leftStack_->addWidget(replay_);
    leftColumn_->addWidget(pages, 1);
    leftColumn_->addWidget(turns_);
    leftColumn_->addWidget(handHints_);
    leftColumn_->addWidget(replayHints_);
    connect(hand_, &HandPage::asked, this, [this](Command command) {
        if (feed_.session()) feed_.session()->command(command);
    });
    for (KeyHints* hints : {handHints_, replayHints_, turns_})
        connect(hints, &KeyHints::pressed, this, &BenchPage::keyPressed);
}

void BenchPage::buildRight() {
    readout_ = new ReadoutView(look_, right_);
    head_ = new VerdictHead(look_, right_);
    aim_ = new AimView(look_, right_);
    briefing_ = new BriefingView(look_, right_);
    trace_ = new TraceView(look_, right_);
    trouble_ = new TroubleCard(look_, right_);
    cards_ = new CardsView(look_, summary_, right_);
    all_ = new WholeRows(right_);
    all_->setModel(&summary_);
    all_->setItemDelegate(new RowDelegate(look_, all_));
    all_->setAccessibleName(tr("Every finding"));
    all_->setTabKeyNavigation(false);
    more_ = new KeyButton(look_, TextSize::small, false, right_);
    connect(more_, &QPushButton::clicked, this, [this] { emit keyPressed(KeyAction::allFindings); });
    connect(cards_, &CardsView::lookAt, trace_, &TraceView::lookAt);
    connect(all_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& now) {
        if (now.data(TimeRole).isValid()) trace_->lookAt(now.data(TimeRole).toDouble());
    });
    verdict_ = new VerdictBar(look_, right_);
    path_ = new PathView(look_, right_);
    rightColumn_ = new QVBoxLayout(right_);
    rightColumn_->addWidget(readout_);
    rightColumn_->addWidget(head_);
    rightColumn_->addWidget(aim_);
    rightColumn_->addWidget(briefing_, 1);
    rightColumn_->addWidget(trace_, 1);
    rightColumn_->addWidget(trouble_);
    rightColumn_->addWidget(all_);
    cardsRow_ = new QHBoxLayout;
    cardsRow_->addWidget(cards_, 1);
    cardsRow_->addWidget(more_, 0, Qt::AlignVCenter | Qt::AlignRight);
    rightColumn_->addLayout(cardsRow_);
    rightColumn_->addWidget(verdict_);
    rightColumn_->addWidget(path_);
    connect(trouble_, &TroubleCard::saveElsewhereAsked, this, [this] { emit keyPressed(KeyAction::saveElsewhere); });
    connect(replay_, &ReplayPage::lookAt, trace_, &TraceView::lookAt);
}

void BenchPage::restyle() {
    roomMadeFor_.clear();
    left_->setFixedWidth(look_.ipx(leftWidth()));
    leftColumn_->setContentsMargins(look_.ipx(24), look_.ipx(14), look_.ipx(24), look_.ipx(10));
    leftColumn_->setSpacing(look_.ipx(6));
    rightColumn_->setContentsMargins(look_.ipx(28), look_.ipx(14), look_.ipx(26), look_.ipx(8));
    rightColumn_->setSpacing(look_.ipx(10));
    cardsRow_->setSpacing(look_.ipx(10));
    update();
}

// A step with little to say has its title large; one with many cautions has its sentences smaller and its lines
// closer, and if words run so long that this is not enough the left page wider, rather than words left out. The
// number beside it keeps its place as long as it can.
void BenchPage::makeRoom() {
    const QString takes = hand_->takesRoom() + QLatin1Char(turns_->isHidden() ? '0' : '1');
    if (takes == roomMadeFor_ && size() == roomMadeIn_) return;
    roomMadeFor_ = takes;
    roomMadeIn_ = size();
    const QMargins edge = leftColumn_->contentsMargins();
    const auto fits = [&](double design) {
        const int width = look_.ipx(design) - edge.left() - edge.right();
        int height = this->height() - edge.top() - edge.bottom();
        for (const KeyHints* hints : {handHints_, turns_})
            if (!hints->isHidden()) height -= hints->heightForWidth(width) + leftColumn_->spacing();
        return hand_->fits(width, height);
    };
    bool found = false;
    const LeftWidths widths = leftWidths(width() / look_.unit());
    using Room = HandPage::Room;
    const auto attempt = [&](double design, std::initializer_list<Room> rooms) {
        for (const Room room : rooms)
            for (const bool cautionsLarge : {true, false}) {
                if (found || (cautionsLarge && room > Room::usual)) continue;
                hand_->setRoom(room, cautionsLarge);
                wide_ = design == widths.wide;
                found = fits(design);
            }
    };
    attempt(widths.usual, {Room::ample, Room::usual, Room::less, Room::least});
    attempt(widths.wide, {Room::ample, Room::usual, Room::less, Room::least, Room::bare});
    left_->setFixedWidth(look_.ipx(leftWidth()));
}

double BenchPage::leftWidth() const {
    const LeftWidths widths = leftWidths(width() / look_.unit());
    if (leftStack_->currentWidget() == replay_) return widths.reading;
    return wide_ ? widths.wide : widths.usual;
}

void BenchPage::begin(const QString& name, const QString& notes, bool guided, double length_s) {
    guided_ = guided;
    turnLeft(guided);
    path_->setVisible(guided);
    replay_->begin(name, notes);
    replay_->setLength(length_s);
    summary_.setRows({});
    trace_->reset(length_s);
    announcer_->begin();
    allFindings_ = false;
    aim_->begin();
    hand_->begin();
    path_->begin();
    wantFar_ = Far::byItself;
    untouched_.invalidate();
    notice_.clear();
    trace_->setFocus();
}

void BenchPage::turnLeft(bool hand) {
    leftStack_->setCurrentWidget(hand ? static_cast<QWidget*>(hand_) : replay_);
    handHints_->setVisible(hand);
    replayHints_->setVisible(!hand);
    left_->setFixedWidth(look_.ipx(leftWidth()));
}

void BenchPage::show(const Scene& scene) {
    const SessionSnapshot& snapshot = *scene.snapshot;
    stop_->show(scene);
    // What stops the bench goes before what only informs.
    QStringList lines;
    for (const Sentence* says : {&snapshot.recorderSays, &snapshot.linkSays})
        if (lines.isEmpty() && !says->empty()) lines << stillwire::say(*says);
    if (!notice_.isEmpty()) lines << notice_;
    if (!lines.isEmpty()) lines.front()[0] = lines.front()[0].toUpper();
    trouble_->say(lines.join(QLatin1Char(' ')), !snapshot.recorderSays.empty());
    showWire(scene);
    showLeft(scene);
    path_->show(scene);
    lookFar(scene);
}

// By the key, or by itself once the hands are on the sensor and the mouse rests. Whoever moves the mouse is near.
void BenchPage::lookFar(const Scene& scene) {
    const Prompt& prompt = scene.snapshot->prompt;
    if (prompt.step != farStep_) {
        farStep_ = prompt.step;
        if (wantFar_ == Far::no) wantFar_ = Far::byItself;
    }
    if (const QPoint at = QCursor::pos(); at != mouse_ || !untouched_.isValid()) {
        mouse_ = at;
        untouched_.start();
    }
    const bool busy = guided_ && handsBusy(prompt) && untouched_.elapsed() >= busyAfter_ms_;
    const bool led = guided_ && prompt.step && !prompt.finished;
    const bool far = led && (wantFar_ == Far::yes || (wantFar_ == Far::byItself && settings_.farByItself() && busy));
    if (far) far_->show(scene, hand_->cautions(), trouble_->isHidden() ? QString() : trouble_->says(), hidden_);
    far_->setShown(far);
    if (!stop_->isHidden()) stop_->raise();
}

void BenchPage::showLeft(const Scene& scene) {
    const Prompt& prompt = scene.snapshot->prompt;
    // A run that is over is read like a replay: the hand has nothing more to do.
    if (guided_ && prompt.finished && leftStack_->currentWidget() == hand_) {
        turnLeft(false);
        trace_->showAll();
    }
    turns_->setVisible(guided_ && prompt.step == Step::adjust);
    if (leftStack_->currentWidget() == hand_) {
        hand_->show(scene);
        makeRoom();
    } else {
        replay_->show(scene);
    }
}

void BenchPage::showWire(const Scene& scene) {
    const SessionSnapshot& snapshot = *scene.snapshot;
    const bool over = snapshot.prompt.finished || snapshot.link == LinkState::ended;
    const bool told = over && !hidden_; // then the number has nothing more to say
    const bool briefing = guided_ && snapshot.prompt.step == Step::hookUp;
    if (briefing && trace_->hasFocus()) setFocus(); // else the keyboard would go to some button
    if (!briefing && trace_->isHidden()) trace_->setFocus();
    readout_->setVisible(!told);
    head_->setVisible(told);
    verdict_->setVisible(!told);
    briefing_->setVisible(briefing);
    trace_->setVisible(!briefing);
    if (briefing) briefing_->show(cautionWords(snapshot.prompt));
    if (told) head_->show(scene);
    readout_->show(scene);
    aim_->show(scene);
    trace_->show(scene);
    // While turning there is one thing to look at; and trouble stands where the findings do.
    summary_.setRows(summaryRows(*snapshot.findings));
    showFindings(aim_->isHidden() && !briefing && trouble_->isHidden());
    announcer_->hear(scene, hidden_);
    verdict_->show(scene);
}

// As cards, those that weigh most; or all of them, as a list.
void BenchPage::showFindings(bool room) {
    const int rows = summary_.rowCount(), high = look_.ipx(46);
    const bool list = room && allFindings_ && rows > 0;
    all_->setVisible(list);
    cards_->setVisible(room && !list);
    const bool more = room && (list || cards_->leavesOut() > 0);
    more_->setVisible(more);
    if (more)
        more_->say(keyName(KeyAction::allFindings), list ? tr("fewer") : tr("+%1 more").arg(cards_->leavesOut()));
    if (list) all_->setFixedHeight(high * std::min(rows, std::max(2, height() / 3 / high)) + look_.ipx(8));
}

void BenchPage::hideVerdict() {
    hidden_ = !hidden_;
    verdict_->hideWords(hidden_);
    replay_->hideVerdict(hidden_);
    show(feed_.scene());
}

void BenchPage::say(const QString& notice) {
    notice_ = notice;
    show(feed_.scene());
}

bool BenchPage::handle(KeyAction action) {
    Session* session = feed_.session();
    auto command = [&](Command c) {
        if (session) session->command(c);
        return true;
    };
    auto choice = [&](std::size_t at) {
        if (session && at < hand_->choices().size()) session->command(hand_->choices()[at].command);
        return true;
    };
    switch (action) {
    case KeyAction::next: return command(Command::next);
    case KeyAction::back: return command(Command::back);
    case KeyAction::skip: return command(Command::skip);
    case KeyAction::stop: return command(Command::stop);
    case KeyAction::turnIn: return command(Command::turnIn);
    case KeyAction::turnOut: return command(Command::turnOut);
    case KeyAction::choice1: return choice(0);
    case KeyAction::choice2: return choice(1);
    case KeyAction::choice3: return choice(2);
    case KeyAction::choice4: return choice(3);
    case KeyAction::zoomIn: trace_->zoom(0.5); return true;
    case KeyAction::zoomOut: trace_->zoom(2); return true;
    case KeyAction::scrollBack: trace_->scroll(-0.25); return true;
    case KeyAction::scrollOn: trace_->scroll(0.25); return true;
    case KeyAction::followEnd: trace_->followEnd(); return true;
    case KeyAction::showAll: trace_->showAll(); return true;
    case KeyAction::nextEvent: replay_->step(1); return true;
    case KeyAction::previousEvent: replay_->step(-1); return true;
    case KeyAction::hideVerdict: hideVerdict(); return true;
    case KeyAction::allFindings:
        allFindings_ = !allFindings_;
        show(feed_.scene());
        if (!all_->isHidden()) all_->setFocus();
        return true;
    case KeyAction::far:
        wantFar_ = far_->isHidden() ? Far::yes : Far::no;
        if (!guided_) say(tr("Large words are for a led run."));
        show(feed_.scene());
        return true;
    case KeyAction::coldWarm:
        say(trace_->layWarmOverCold() ? QString() : tr("There is no warm wiggle to lay over the cold one yet."));
        return true;
    default: return false;
    }
}

void BenchPage::resizeEvent(QResizeEvent*) {
    for (QWidget* over : std::initializer_list<QWidget*>{stop_, far_}) over->setGeometry(rect());
    left_->setFixedWidth(look_.ipx(leftWidth()));
    if (leftStack_->currentWidget() == hand_) makeRoom();
}

void BenchPage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(right_->geometry(), look_(Role::paper));
    painter.fillRect(left_->geometry(), look_(Role::page));
}

} // namespace stillwire
