// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/start_page.hpp"

#include "app/window/look/text_label.hpp"
#include "app/window/start/find_meter_box.hpp"
#include "app/window/start/start_intro.hpp"
#include "app/window/start/start_news.hpp"

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

QGridLayout* StartPage::panel(const QString& title, const QString& text) {
    auto* box = new QWidget(right_);
    auto* grid = new QGridLayout(box);
    auto* heading = new TextLabel(look_, TextSize::title, true, Role::ink, box);
    heading->say(title);
    auto* says = new TextLabel(look_, TextSize::small, false, Role::quietText, box);
    says->say(text);
    grid->addWidget(heading, 0, 0, 1, 3);
    grid->addWidget(says, 1, 0, 1, 3);
    grid->setColumnStretch(0, 4);
    grid->setColumnStretch(1, 3);
    grid->setColumnStretch(2, 1);
    right_->layout()->addWidget(box);
    panels_.push_back(box);
    return grid;
}

QComboBox* StartPage::box(const char* setting, const QString& name) {
    auto* made = new QComboBox(right_);
    made->setObjectName(QLatin1String(setting));
    made->setAccessibleName(name);
    made->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    made->setMinimumContentsLength(12);
    return made;
}

QComboBox* StartPage::choice(const char* setting, const QString& name, QGridLayout* panel, int column) {
    QComboBox* box = this->box(setting, name);
    auto* label = new TextLabel(look_, TextSize::small, true, Role::ink, right_);
    label->say(name);
    label->setBuddy(box);
    panel->addWidget(label, 2, column);
    panel->addWidget(box, 3, column);
    return box;
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
    connect(news_, &StartNews::openAsked, this, [this](const QString& path) { emit chosen(captureWay(path)); });
    column->addWidget(news_);

    QGridLayout* sensor = panel(tr("The sensor"), tr("Its sheet holds the windows from the maker's literature."));
    sheet_ = choice("sheet", tr("Sensor sheet"), sensor, 0);
    QGridLayout* port =
        panel(tr("A meter on a port"), tr("A meter that sends its readings over a serial line. A second "
                                          "one may watch the reference wire meanwhile."));
    port_ = choice("port", tr("Port"), port, 0);
    meter_ = choice("meter", tr("Meter"), port, 1);
    startPort_ = button(tr("Start"));
    startPort_->setAccessibleName(tr("Start with the meter on this port"));
    port->addWidget(startPort_, 3, 2);
    portSays_ = new TextLabel(look_, TextSize::small, false, Role::quietText, right_);
    port->addWidget(portSays_, 5, 0, 1, 3);
    buildReference(port);
    find_ = button(tr("Find my meter…"));
    port->addWidget(find_, 4, 2);

    QGridLayout* simulated = panel(
        tr("The simulated meter"),
        tr("A sensor and its wiring, computed, on a meter that sends real frames. For learning and for trying out."));
    scenario_ = choice("scenario", tr("Sensor"), simulated, 0);
    speed_ = choice("pace", tr("Pace"), simulated, 1);
    speed_->addItem(tr("as fast as a hand"), 1.0);
    speed_->addItem(tr("four times as fast"), 4.0);
    speed_->addItem(tr("twenty times as fast"), 20.0);
    startSimulated_ = button(tr("Start"));
    startSimulated_->setAccessibleName(tr("Start the simulated meter"));
    simulated->addWidget(startSimulated_, 3, 2);

    buildCaptures();
    connect(startPort_, &QPushButton::clicked, this, [this] { emit chosen(portWay()); });
    connect(startSimulated_, &QPushButton::clicked, this, [this] { emit chosen(simulatedWay()); });
    const QSettings settings;
    for (QComboBox* box : {speed_, replaySpeed_})
        box->setCurrentIndex(
            std::max(0, box->findData(settings.value(settingOf(*box), box->itemData(0)).toDouble())));
}

// A second meter: its own description is asked for once it has a port.
void StartPage::buildReference(QGridLayout* port) {
    referencePort_ = box("reference-port", tr("Port of a second meter, on the reference wire"));
    referenceMeter_ = box("reference-meter", tr("Meter on the reference wire"));
    port->addWidget(referencePort_, 4, 0);
    port->addWidget(referenceMeter_, 4, 1);
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
    QGridLayout* captures = panel(tr("A capture"), tr("Drop a file here, open one, or take a recent one."));
    recentList_ = makeRecentsList(look_, recents_, right_);
    recentList_->setAccessibleName(tr("Recent captures"));
    captures->addWidget(recentList_, 2, 0, 1, 3);
    recentsSays_ = new TextLabel(look_, TextSize::text, false, Role::quietText, right_);
    captures->addWidget(recentsSays_, 2, 0, 1, 3, Qt::AlignTop);
    open_ = button(tr("Open a capture…"));
    captures->addWidget(open_, 0, 2, 2, 1);
    replaySpeed_ = box("replay", tr("Replay"));
    replaySpeed_->addItem(tr("replay at once"), 0.0);
    replaySpeed_->addItem(tr("replay as it was"), 1.0);
    replaySpeed_->addItem(tr("replay ten times as fast"), 10.0);
    captures->addWidget(replaySpeed_, 0, 1, 2, 1);
    for (int row : {0, 1}) captures->addWidget(captures->itemAtPosition(row, 0)->widget(), row, 0); // beside them
    captures->setRowStretch(2, 1);
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
void StartPage::setCutShort(const QString& path) { news_->setCutShort(path); }

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
    column->setContentsMargins(look_.ipx(40), look_.ipx(18), look_.ipx(40), look_.ipx(12));
    column->setSpacing(look_.ipx(5));
    for (QWidget* box : panels_) {
        auto* grid = static_cast<QGridLayout*>(box->layout());
        grid->setContentsMargins(0, look_.ipx(5), 0, 0);
        grid->setHorizontalSpacing(look_.ipx(16));
        grid->setVerticalSpacing(look_.ipx(2));
    }
    for (QWidget* input :
         std::initializer_list<QWidget*>{sheet_, port_, meter_, referencePort_, referenceMeter_, scenario_, speed_,
                                         replaySpeed_, startPort_, startSimulated_, open_, find_})
        input->setFont(look_.font(TextSize::text));
    recentList_->setMinimumHeight(look_.ipx(80)); // a row of pictures and its scroll bar, where there is room
    recentList_->setMaximumHeight(look_.ipx(146));
    recentList_->doItemsLayout();
    update();
}

void StartPage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look_(Role::paper));
    painter.fillRect(left_->geometry(), look_(Role::page));
    painter.setPen(QPen(look_(Role::line), 1));
    for (const QWidget* box : panels_) {
        const QPoint at = box->mapTo(this, QPoint(0, 0));
        painter.drawLine(at.x(), at.y(), at.x() + box->width(), at.y());
    }
}

} // namespace stillwire
