// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/start_page.hpp"

#include "app/window/look/text_label.hpp"
#include "app/window/start/find_meter_box.hpp"
#include "app/window/start/start_intro.hpp"
#include "app/window/start/start_news.hpp"
#include "app/window/start/start_panel.hpp"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QListView>
#include <QPainter>
#include <QPushButton>
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
    right_ = new QWidget(this);
    auto* both = new QHBoxLayout(this);
    both->setContentsMargins(0, 0, 0, 0);
    both->setSpacing(0);
    both->addWidget(left_);
    both->addWidget(right_, 1);
    buildRight();
    connect(&look, &Look::changed, this, &StartPage::restyle);
    restyle();
}

StartPanel* StartPage::panel(const QString& title, const QString& text, bool whole) {
    auto* made = new StartPanel(look_, title, text, whole, right_);
    auto* column = static_cast<QVBoxLayout*>(right_->layout());
    column->addSpacerItem(gaps_.emplace_back(new QSpacerItem(0, 0)));
    column->addWidget(made);
    panels_.push_back(made);
    return made;
}

QComboBox* StartPage::box(const char* setting, const QString& name) {
    auto* made = new QComboBox(right_);
    made->setObjectName(QLatin1String(setting));
    made->setAccessibleName(name);
    made->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    made->setMinimumContentsLength(12);
    return made;
}

QComboBox* StartPage::choice(const char* setting, const QString& name, StartPanel* panel, int column) {
    QComboBox* made = box(setting, name);
    panel->addChoice(made, column);
    return made;
}

QPushButton* StartPage::button(const QString& words) {
    auto* made = new QPushButton(words, right_);
    made->setAccessibleName(words);
    made->setAutoDefault(true);
    return made;
}

void StartPage::buildRight() {
    auto* column = new QVBoxLayout(right_);
    auto* title = new TextLabel(look_, TextSize::word, true, Role::ink, right_);
    title->say(tr("What is on the bench?"));
    column->addWidget(title);
    news_ = new StartNews(look_, right_);
    connect(news_, &StartNews::givenUp, this, &StartPage::givenUp);
    connect(news_, &StartNews::putAside, this, &StartPage::putAside);
    connect(news_, &StartNews::openAsked, this, [this](const QString& path) { emit chosen(captureWay(path)); });
    column->addWidget(news_);

    StartPanel* sensor = panel(tr("The sensor"), tr("Its sheet holds the windows from the maker's literature."));
    sheet_ = choice("sheet", tr("Sensor sheet"), sensor, 0);
    StartPanel* port =
        panel(tr("A meter on a port"),
              tr("It sends its readings over a serial line. A second one may watch the reference wire."));
    port_ = choice("port", tr("Port"), port, 0);
    meter_ = choice("meter", tr("Meter"), port, 1);
    startPort_ = button(tr("Start"));
    startPort_->setAccessibleName(tr("Start with the meter on this port"));
    port->grid().addWidget(startPort_, StartPanel::kFirstRow, 2);
    portSays_ = new TextLabel(look_, TextSize::small, false, Role::quietText, right_);
    port->grid().addWidget(portSays_, StartPanel::kNoteRow, 0, 1, 3);
    buildReference(port);
    find_ = button(tr("Find my meter…"));
    port->grid().addWidget(find_, StartPanel::kSecondRow, 2);

    StartPanel* simulated =
        panel(tr("The simulated meter"), tr("A sensor and its wiring, computed. For learning and for trying out."));
    scenario_ = choice("scenario", tr("Sensor"), simulated, 0);
    speed_ = choice("pace", tr("Pace"), simulated, 1);
    speed_->addItem(tr("as fast as a hand"), 1.0);
    speed_->addItem(tr("four times as fast"), 4.0);
    speed_->addItem(tr("twenty times as fast"), 20.0);
    startSimulated_ = button(tr("Start"));
    startSimulated_->setAccessibleName(tr("Start the simulated meter"));
    simulated->grid().addWidget(startSimulated_, StartPanel::kFirstRow, 2);

    buildCaptures();
    connect(startPort_, &QPushButton::clicked, this, [this] { emit chosen(portWay()); });
    connect(startSimulated_, &QPushButton::clicked, this, [this] { emit chosen(simulatedWay()); });
    const QSettings settings;
    for (QComboBox* box : {speed_, replaySpeed_})
        box->setCurrentIndex(
            std::max(0, box->findData(settings.value(settingOf(*box), box->itemData(0)).toDouble())));
}

// A second meter: its own description is asked for once it has a port.
void StartPage::buildReference(StartPanel* port) {
    referencePort_ = box("reference-port", tr("Port of a second meter, on the reference wire"));
    referenceMeter_ = box("reference-meter", tr("Meter on the reference wire"));
    port->grid().addWidget(referencePort_, StartPanel::kSecondRow, 0);
    port->grid().addWidget(referenceMeter_, StartPanel::kSecondRow, 1);
    connect(referencePort_, &QComboBox::currentIndexChanged, this,
            [this](int at) { referenceMeter_->setVisible(at > 0); });
}

void StartPage::fillReference(const std::vector<Listed>& ports, const std::vector<Listed>& meters) {
    std::vector<Listed> items{{QString(), tr("Reference wire: none"), {}}};
    for (const Listed& port : ports)
        items.push_back({port.id, tr("Reference wire: %1").arg(port.title), port.detail});
    fill(referencePort_, items, {});
    fill(referenceMeter_, meters, tr("no meter found"));
    referencePort_->setEnabled(!ports.empty());
    referenceMeter_->setVisible(referencePort_->currentIndex() > 0);
}

void StartPage::buildCaptures() {
    QGridLayout& captures = panel(tr("A capture"), tr("Drop a file, or take a recent one."), false)->grid();
    // Made in the order that Tab goes.
    replaySpeed_ = box("replay", tr("Replay"));
    replaySpeed_->addItem(tr("replay at once"), 0.0);
    replaySpeed_->addItem(tr("replay as it was"), 1.0);
    replaySpeed_->addItem(tr("replay ten times as fast"), 10.0);
    captures.addWidget(replaySpeed_, 0, 1, Qt::AlignBottom);
    open_ = button(tr("Open a file…"));
    captures.addWidget(open_, 0, 2, Qt::AlignBottom);
    recentList_ = makeRecentsList(look_, recents_, right_);
    recentList_->setAccessibleName(tr("Recent captures"));
    recentsPlace_ = new QVBoxLayout;
    recentsPlace_->addWidget(recentList_);
    captures.addLayout(recentsPlace_, 1, 0, 1, 3);
    recentsSays_ = new TextLabel(look_, TextSize::text, false, Role::quietText, right_);
    recentsPlace_->addWidget(recentsSays_);
    captures.setRowStretch(2, 1);
    static_cast<QVBoxLayout*>(right_->layout())->setStretchFactor(panels_.back(), 1);
    connect(find_, &QPushButton::clicked, this, &StartPage::findMeter);
    connect(open_, &QPushButton::clicked, this, &StartPage::openAsked);
    connect(recentList_, &QListView::activated, this, [this](const QModelIndex& at) {
        emit chosen(captureWay(recents_.rows()[static_cast<std::size_t>(at.row())].path));
    });
    auto sayRecents = [this] {
        recentList_->setVisible(recents_.rowCount() > 0);
        recentsSays_->say(recents_.rowCount() == 0
                              ? tr("No capture yet. The first run you make will stand here, with its verdict.")
                              : QString());
    };
    connect(&recents_, &QAbstractItemModel::modelReset, this, sayRecents);
    sayRecents();
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
        (startPort_->isEnabled() ? startPort_ : startSimulated_)->setFocus();
    }
    portSays_->say(
        ports ? QString()
              : tr("Plug the meter's lead in; the port shows here by itself. Until then, try the simulated meter."));
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
    auto* column = static_cast<QVBoxLayout*>(right_->layout());
    column->setContentsMargins(look_.ipx(28), look_.ipx(18), look_.ipx(26), look_.ipx(12));
    column->setSpacing(look_.ipx(2));
    for (QSpacerItem* gap : gaps_) // gives way first where room is short
        gap->changeSize(0, look_.ipx(24), QSizePolicy::Minimum, QSizePolicy::Maximum);
    for (QWidget* input :
         std::initializer_list<QWidget*>{sheet_, port_, meter_, referencePort_, referenceMeter_, scenario_, speed_,
                                         replaySpeed_, startPort_, startSimulated_, open_, find_})
        input->setFont(look_.font(TextSize::text));
    int widest = 0;
    for (const QPushButton* button : {startPort_, startSimulated_, open_, find_}) {
        button->ensurePolished();
        widest = std::max(widest, button->sizeHint().width());
    }
    widest = std::min(widest, look_.ipx(152)); // of long words only their own row pays for
    for (StartPanel* panel : panels_) panel->setButtonWidth(widest);
    recentsPlace_->setContentsMargins(0, look_.ipx(6), 0, 0); // clear of the choices above, its ring too
    recentsSays_->setMargin(look_.ipx(24));                   // its frame is painted below
    recentList_->setMinimumHeight(look_.ipx(80)); // a row of pictures and its scroll bar, where there is room
    recentList_->setMaximumHeight(look_.ipx(146));
    recentList_->doItemsLayout();
    update();
}

void StartPage::showEvent(QShowEvent* event) {
    restyle(); // only now the style sheet tells how wide a button is
    QWidget::showEvent(event);
}

void StartPage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look_(Role::paper));
    painter.fillRect(left_->geometry(), look_(Role::page));
    if (recentsSays_->isHidden()) return;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(look_(Role::strongLine), look_.px(1.5), Qt::DashLine));
    const QRectF place(recentsSays_->mapTo(this, QPoint(0, 0)), QSizeF(recentsSays_->size()));
    painter.drawRoundedRect(place.adjusted(1, 1, -1, -1), look_.px(8), look_.px(8));
}

} // namespace stillwire
