// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/start_page.hpp"

#include "app/window/look/choice_box.hpp"
#include "app/window/look/text_label.hpp"
#include "app/window/start/find_meter_box.hpp"
#include "app/window/start/start_intro.hpp"
#include "app/window/start/start_news.hpp"
#include "app/window/start/start_panel.hpp"

#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QSettings>
#include <QVBoxLayout>

namespace stillwire {
namespace {
// Not by the accessible name: that one changes with the language.
QString settingOf(const QComboBox& box) { return QStringLiteral("start/") + box.objectName(); }
} // namespace

StartPage::StartPage(const Look& look, Doors& doors, QWidget* parent) : QWidget(parent), look_(look), doors_(doors) {
    left_ = new StartIntro(look, this);
    connect(left_, &StartIntro::languageChosen, this, &StartPage::languageChosen);
    connect(left_, &StartIntro::settingsAsked, this, &StartPage::settingsAsked);
    scroll_ = new QScrollArea(this);
    scroll_->setWidgetResizable(true);
    scroll_->setFocusPolicy(Qt::NoFocus); // what Tab reaches comes into view
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    right_ = new QWidget;
    scroll_->setWidget(right_);
    auto* both = new QHBoxLayout(this);
    both->setContentsMargins(0, 0, 0, 0);
    both->setSpacing(0);
    both->addWidget(left_);
    both->addWidget(scroll_, 1);
    buildRight();
    connect(&look, &Look::changed, this, &StartPage::restyle);
    restyle();
}

StartPanel* StartPage::panel(const QString& title, const QString& text) {
    auto* made = new StartPanel(look_, title, text, right_);
    column_->addWidget(made);
    panels_.push_back(made);
    return made;
}

ChoiceBox* StartPage::choice(const char* setting, const QString& name) {
    auto* made = new ChoiceBox(look_, name, right_);
    made->setObjectName(QLatin1String(setting));
    return made;
}

QPushButton* StartPage::button(const QString& words, const QString& name) {
    auto* made = new QPushButton(words, right_);
    made->setAccessibleName(name);
    made->setAutoDefault(true);
    return made;
}

void StartPage::buildRight() {
    column_ = new QVBoxLayout(right_);
    auto* title = new TextLabel(look_, TextSize::word, true, Role::ink, right_);
    title->say(tr("What is on the bench?"));
    column_->addWidget(title);
    news_ = new StartNews(look_, right_);
    connect(news_, &StartNews::givenUp, this, &StartPage::givenUp);
    connect(news_, &StartNews::putAside, this, &StartPage::putAside);
    connect(news_, &StartNews::openAsked, this, [this](const QString& path) { emit chosen(captureWay(path)); });
    column_->addWidget(news_);
    buildPort();
    buildSimulated();
    buildCaptures();
    const QSettings settings;
    for (QComboBox* box : {speed_, replaySpeed_})
        box->setCurrentIndex(
            std::max(0, box->findData(settings.value(settingOf(*box), box->itemData(0)).toDouble())));
}

// The search is the first door: who knows the port and the meter passes it by. Made in the order that Tab goes.
void StartPage::buildPort() {
    StartPanel* port = panel(tr("A meter on a port"), tr("The sheet holds the sensor's windows from the maker's "
                                                         "literature; the run is judged by it."));
    portSays_ = new TextLabel(look_, TextSize::text, true, Role::ink, right_);
    find_ = button(tr("Which meter is it?"), tr("Which meter is it?"));
    port_ = choice("port", tr("Port"));
    meter_ = choice("meter", tr("Meter on the port"));
    sheet_ = choice("sheet", tr("Sensor sheet"));
    referencePort_ = choice("reference-port", tr("Second meter, on the reference wire"));
    referenceMeter_ = choice("reference-meter", tr("Meter on the reference wire"));
    startPort_ = button(tr("Start"), tr("Start with the meter on this port"));
    port->addNote(portSays_);
    port->addRow(port_, meter_, find_);
    port->addRow(sheet_, referencePort_, startPort_);
    port->addRow(nullptr, referenceMeter_, nullptr);
    for (const auto& [first, second] :
         std::initializer_list<std::pair<QWidget*, QWidget*>>{{find_, port_},
                                                              {port_, meter_},
                                                              {meter_, sheet_},
                                                              {sheet_, referencePort_},
                                                              {referencePort_, referenceMeter_},
                                                              {referenceMeter_, startPort_}})
        setTabOrder(first, second);
    connect(referencePort_, &QComboBox::currentIndexChanged, this,
            [this, port](int at) { port->setRowVisible(referenceMeter_, at > 0); });
    connect(find_, &QPushButton::clicked, this, &StartPage::findMeter);
    connect(startPort_, &QPushButton::clicked, this, [this] { emit chosen(portWay()); });
}

void StartPage::buildSimulated() {
    StartPanel* simulated =
        panel(tr("The simulated meter"), tr("For learning and for trying out. A scenario brings its own sheet."));
    scenario_ = choice("scenario", tr("Scenario"));
    speed_ = choice("pace", tr("Pace"));
    speed_->addItem(tr("as fast as a hand"), 1.0);
    speed_->addItem(tr("four times as fast"), 4.0);
    speed_->addItem(tr("twenty times as fast"), 20.0);
    startSimulated_ = button(tr("Start"), tr("Start the simulated meter"));
    simulated->addRow(scenario_, speed_, startSimulated_);
    connect(startSimulated_, &QPushButton::clicked, this, [this] { emit chosen(simulatedWay()); });
}

void StartPage::buildCaptures() {
    StartPanel* captures = panel(tr("A capture"), tr("Drop a file, or take a recent one."));
    replaySpeed_ = choice("replay", tr("Replay"));
    replaySpeed_->addItem(tr("replay at once"), 0.0);
    replaySpeed_->addItem(tr("replay as it was"), 1.0);
    replaySpeed_->addItem(tr("replay ten times as fast"), 10.0);
    open_ = button(tr("Open a file…"), tr("Open a file…"));
    captures->addBeside(replaySpeed_, open_);
    recentList_ = new RecentsList(look_, recents_, right_);
    recentsSays_ = new TextLabel(look_, TextSize::text, false, Role::quietText, right_);
    captures->addWhole(recentList_);
    captures->addWhole(recentsSays_);
    column_->setStretchFactor(captures, 1);
    connect(open_, &QPushButton::clicked, this, &StartPage::openAsked);
    connect(recentList_, &RecentsList::chosen, this, [this](const QString& path) { emit chosen(captureWay(path)); });
    connect(recentList_, &RecentsList::troubled, this, &StartPage::setTrouble);
    auto sayRecents = [this] {
        recentList_->setVisible(recents_.rowCount() > 0);
        recentsSays_->say(recents_.rowCount() == 0
                              ? tr("No capture yet. The first run you make will stand here, with its verdict.")
                              : QString());
    };
    connect(&recents_, &QAbstractItemModel::modelReset, this, sayRecents);
    connect(&recents_, &QAbstractItemModel::rowsRemoved, this, sayRecents);
    sayRecents();
}

void StartPage::fillReference(const std::vector<Listed>& ports, const std::vector<Listed>& meters) {
    std::vector<Listed> items{{QString(), tr("none"), {}}};
    for (const Listed& port : ports) items.push_back(port);
    fill(referencePort_, items, {});
    fill(referenceMeter_, meters, tr("no meter found"));
    referencePort_->setEnabled(!ports.empty());
    emit referencePort_->currentIndexChanged(referencePort_->currentIndex());
}

void StartPage::fill(QComboBox* box, const std::vector<Listed>& items, const QString& none) {
    const QString kept =
        box->count() > 0 ? box->currentData().toString() : QSettings().value(settingOf(*box)).toString();
    box->clear();
    for (const Listed& item : items) {
        box->addItem(item.title, item.id);
        if (!item.detail.isEmpty()) box->setItemData(box->count() - 1, item.detail, Qt::ToolTipRole);
    }
    box->setEnabled(!items.empty());
    if (items.empty()) box->addItem(none, QString());
    box->setCurrentIndex(std::max(0, box->findData(kept)));
}

void StartPage::refresh() {
    fill(sheet_, doors_.sheets(), tr("no sheet found"));
    const std::vector<Listed> portList = doors_.ports(), meters = doors_.meters();
    fill(port_, portList, tr("no port found"));
    fill(meter_, meters, tr("no meter found"));
    fillReference(portList, meters);
    fill(scenario_, doors_.scenarios(), tr("none"));
    const bool ports = port_->isEnabled();
    startPort_->setEnabled(ports && sheet_->isEnabled() && meter_->isEnabled());
    startSimulated_->setEnabled(scenario_->isEnabled());
    if (!greeted_ && isVisible()) { // who has chosen before only presses Enter
        greeted_ = true;
        (startPort_->isEnabled() ? startPort_ : find_)->setFocus();
    }
    portSays_->say(ports ? QString()
                         : tr("No meter is on a port yet. Plug its lead in, switch it on, and let it be found here; "
                              "or try the simulated one."));
}

// What it finds is chosen here, and the Start button waits.
void StartPage::findMeter() {
    auto* box = new FindMeterBox(look_, doors_, this);
    box->setAttribute(Qt::WA_DeleteOnClose);
    connect(box, &FindMeterBox::chosen, this, [this](const QString& port, const QString& meter) {
        refresh();
        port_->setCurrentIndex(std::max(0, port_->findData(port, Qt::ToolTipRole)));
        meter_->setCurrentIndex(std::max(0, meter_->findData(meter)));
        startPort_->setFocus();
    });
    box->open();
    box->search();
}

void StartPage::remember() {
    QSettings settings;
    for (const QComboBox* box :
         {sheet_, port_, meter_, referencePort_, referenceMeter_, scenario_, speed_, replaySpeed_})
        settings.setValue(settingOf(*box), box->currentData());
}

void StartPage::setTrouble(const QString& trouble) { news_->setTrouble(trouble); }
void StartPage::setBusy(const QString& says, double share) { news_->setBusy(says, share); }
void StartPage::setCutShort(const QStringList& paths) { news_->setCutShort(paths); }

Way StartPage::portWay() const {
    Way way;
    way.kind = Way::Kind::port;
    way.port = port_->currentData().toString();
    way.meter = meter_->currentData().toString();
    way.sheet = sheet_->currentData().toString();
    way.referencePort = referencePort_->currentData().toString();
    way.referenceMeter = referenceMeter_->currentData().toString();
    return way;
}

Way StartPage::simulatedWay() const {
    Way way;
    way.kind = Way::Kind::simulated;
    way.scenario = scenario_->currentData().toString();
    way.meter = meter_->currentData().toString();
    way.sheet = sheet_->currentData().toString();
    way.speed = speed_->currentData().toDouble();
    return way;
}

Way StartPage::captureWay(const QString& path) const {
    Way way;
    way.kind = Way::Kind::capture;
    way.path = path;
    way.sheet = sheet_->currentData().toString();
    way.speed = replaySpeed_->currentData().toDouble();
    return way;
}

void StartPage::restyle() {
    column_->setContentsMargins(look_.ipx(28), look_.ipx(14), look_.ipx(22), look_.ipx(10));
    column_->setSpacing(look_.ipx(10));
    int widest = 0;
    for (QPushButton* button : {startPort_, startSimulated_, open_, find_}) {
        button->setFont(look_.font(TextSize::text));
        button->setMinimumHeight(look_.ipx(40));
        button->ensurePolished();
        widest = std::max(widest, button->sizeHint().width());
    }
    const bool narrow = window()->width() / look_.unit() < 1100;
    for (StartPanel* panel : panels_) panel->setShape(std::min(widest, look_.ipx(narrow ? 140 : 160)), narrow);
    recentsSays_->setMargin(look_.ipx(24));        // its frame is painted below
    recentList_->setMinimumHeight(look_.ipx(150)); // two rows and a bit of the third: there are more
    update();
}

void StartPage::resizeEvent(QResizeEvent* event) {
    restyle();
    QWidget::resizeEvent(event);
}

void StartPage::showEvent(QShowEvent* event) {
    restyle(); // only now the style sheet tells how wide a button is
    QWidget::showEvent(event);
}

void StartPage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look_(Role::paper));
    painter.fillRect(left_->geometry(), look_(Role::page));
}

} // namespace stillwire
