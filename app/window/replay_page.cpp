// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/replay_page.hpp"

#include "app/window/look/progress_line.hpp"
#include "app/window/look/rows_list.hpp"
#include "app/window/look/text_label.hpp"
#include "app/window/verdict/row_delegate.hpp"
#include "app/window/verdict/verdict_details.hpp"

#include <QFileInfo>
#include <QVBoxLayout>

namespace stillwire {

ReplayPage::ReplayPage(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    title_ = new TextLabel(look, TextSize::title, true, Role::ink, this);
    notes_ = new TextLabel(look, TextSize::small, false, Role::quietText, this);
    summary_ = new TextLabel(look, TextSize::text, false, Role::ink, this);
    details_ = new VerdictDetails(look, this); // Tab goes in the order they are made
    eventsTitle_ = new TextLabel(look, TextSize::text, true, Role::ink, this);
    eventList_ = makeList(&events_, tr("Findings"));
    phasesTitle_ = new TextLabel(look, TextSize::text, true, Role::ink, this);
    phaseList_ = makeList(&phases_, tr("Phases"));
    judged_ = new ProgressLine(look, this);
    judged_->setAccessibleName(tr("How much of the capture is judged"));

    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    for (TextLabel* label : {title_, notes_, summary_}) column->addWidget(label);
    column->addWidget(judged_);
    column->addWidget(details_, 1);
    column->addWidget(eventsTitle_);
    column->addWidget(eventList_);
    column->addWidget(phasesTitle_);
    column->addWidget(phaseList_);
    column->addStretch(0);
    auto restyle = [this, column] {
        column->setSpacing(look_.ipx(8));
        // At one edge with the texts and lists, which leave room for their ring.
        for (TextLabel* label : {title_, notes_, summary_, eventsTitle_, phasesTitle_})
            label->setContentsMargins(look_.ring(), 0, 0, 0);
    };
    connect(&look, &Look::changed, this, restyle);
    restyle();
}

WholeRows* ReplayPage::makeList(QAbstractItemModel* model, const QString& name) {
    auto* list = new WholeRows(this);
    list->setModel(model);
    list->setItemDelegate(new RowDelegate(look_, list));
    list->setAccessibleName(name);
    list->setTabKeyNavigation(false);
    connect(list->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& now) {
        const QVariant at = now.data(TimeRole);
        if (at.isValid()) emit lookAt(at.toDouble());
    });
    for (const auto signal : {&QAbstractItemModel::rowsInserted, &QAbstractItemModel::rowsRemoved})
        connect(model, signal, this, &ReplayPage::fitLists);
    connect(&look_, &Look::changed, list, [this, list] {
        fitLists();
        list->doItemsLayout();
    });
    return list;
}

// Whole rows, and not more height than they take: what is left is the advice's. The phases stand in the ribbon too,
// and go first.
void ReplayPage::fitLists() {
    if (eventList_ == nullptr || phaseList_ == nullptr) return;
    details_->setMinimumHeight(look_.ipx(60)); // it scrolls
    const int row = look_.ipx(46), frame = look_.ipx(8);
    const bool both = height() > look_.px(780);
    // What the advice takes whole, or half the page of it; the lists have the rest.
    // Never by a height that the lists themselves have forced.
    const int page = std::min(height(), window()->height() - look_.ipx(160));
    summary_->setVisible(page > look_.px(470)); // how many readings goes before what to do
    int room = page - std::min(details_->maximumHeight(), page * 2 / 5) - 8 * layout()->spacing() - row;
    for (const TextLabel* label : {title_, notes_, summary_, eventsTitle_, phasesTitle_})
        if (label != phasesTitle_ || both) room -= label->heightForWidth(width());
    const auto fit = [&](WholeRows* list, double share) {
        const int most = std::max(1, static_cast<int>(room * share - frame) / row);
        list->setFixedHeight(row * std::clamp(list->model()->rowCount(), 1, most) + frame);
    };
    // Where not one of them has room, E lists them all. An empty list would take the room of what is said.
    const bool any = events_.rowCount() > 0 && room >= row + frame;
    eventsTitle_->setVisible(any);
    eventList_->setVisible(any);
    fit(eventList_, both ? 0.6 : 1);
    fit(phaseList_, 0.4);
    phasesTitle_->setVisible(both);
    phaseList_->setVisible(both);
}

void ReplayPage::resizeEvent(QResizeEvent* event) {
    fitLists();
    QWidget::resizeEvent(event);
}

void ReplayPage::begin(const QString& name, const QString& notes) {
    title_->say(name);
    notes_->say(notes);
    events_.setRows({});
    phases_.setPhases({});
    summary_->say(tr("Reading…"));
    judged_->hide();
    length_s_ = 0;
}

void ReplayPage::show(const Scene& scene) {
    const Findings& f = *scene.snapshot->findings;
    events_.setRows(eventRows(f));
    phases_.setPhases(f.phases);
    summary_->say(tr("%1 readings in %2")
                      .arg(QLocale().toString(static_cast<qulonglong>(f.readings)),
                           QString::fromStdString(seconds(toSeconds(f.duration)))));
    const bool reading = scene.snapshot->link != LinkState::ended && length_s_ > 0;
    judged_->setVisible(reading);
    if (reading) judged_->show(toSeconds(scene.snapshot->now) / length_s_);
    details_->show(f);
    eventsTitle_->say(tr("Findings: %1").arg(events_.rowCount())); // how many, where not all are seen
    phasesTitle_->say(tr("Phases: %1").arg(phases_.rowCount()));
    fitLists();
    const std::string& path = scene.snapshot->capturePath;
    if (!path.empty()) notes_->say(tr("Recorded as %1").arg(QFileInfo(QString::fromStdString(path)).fileName()));
}

void ReplayPage::hideVerdict(bool hidden) { details_->setVisible(!hidden); }

void ReplayPage::step(int rows) {
    const int count = events_.rowCount();
    if (count == 0) return;
    const QModelIndex now = eventList_->currentIndex();
    const int row = now.isValid() ? std::clamp(now.row() + rows, 0, count - 1) : (rows > 0 ? 0 : count - 1);
    eventList_->setCurrentIndex(events_.index(row));
}

} // namespace stillwire
