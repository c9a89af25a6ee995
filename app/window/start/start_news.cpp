// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/start_news.hpp"

#include "app/window/look/progress_line.hpp"
#include "app/window/look/text_label.hpp"

#include <QFileInfo>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace stillwire {

StartNews::StartNews(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    trouble_ = new TextLabel(look_, TextSize::text, true, Role::fault, this);
    column->addWidget(trouble_);
    busy_ = new TextLabel(look_, TextSize::text, true, Role::ink, this);
    giveUp_ = row(column, busy_, tr("Give up"));
    connect(giveUp_, &QPushButton::clicked, this, &StartNews::givenUp);
    read_ = new ProgressLine(look_, this);
    read_->setAccessibleName(tr("How much of the capture is read"));
    column->addWidget(read_);
    cutShort_ = new TextLabel(look_, TextSize::text, true, Role::ink, this);
    openCutShort_ = row(column, cutShort_, tr("Open it"), tr("Put it aside"));
    connect(putAside_, &QPushButton::clicked, this, [this] { emit putAside(cutShortPath_); });
    connect(openCutShort_, &QPushButton::clicked, this, [this] { emit openAsked(cutShortPath_); });
    setTrouble({});
    setBusy({}, 0);
    setCutShort({});
    connect(&look, &Look::changed, this, &StartNews::restyle);
    restyle();
}

QPushButton* StartNews::row(QVBoxLayout* column, TextLabel* says, const QString& deed, const QString& other) {
    auto* line = new QHBoxLayout;
    const auto button = [&](const QString& words) {
        auto* made = new QPushButton(words, this);
        made->setAccessibleName(words);
        made->setAutoDefault(true);
        line->addWidget(made);
        return made;
    };
    line->addWidget(says, 1);
    QPushButton* made = button(deed);
    if (!other.isEmpty()) putAside_ = button(other);
    column->addLayout(line);
    return made;
}

void StartNews::setTrouble(const QString& trouble) {
    trouble_->say(trouble);
    hideIfEmpty();
}

void StartNews::setBusy(const QString& says, double share) {
    busy_->say(says);
    read_->show(share);
    read_->setVisible(!says.isEmpty());
    giveUp_->setVisible(!says.isEmpty());
    hideIfEmpty();
}

void StartNews::setCutShort(const QStringList& paths) {
    cutShortPath_ = paths.isEmpty() ? QString() : paths.back();
    const QString name = QFileInfo(cutShortPath_).completeBaseName();
    cutShort_->say(
        paths.isEmpty() ? QString()
        : paths.size() == 1
            ? tr("The last run was cut short. What it recorded is kept: %1").arg(name)
            : tr("%1 runs were cut short. What they recorded is kept; the newest: %2").arg(paths.size()).arg(name));
    for (QPushButton* button : {openCutShort_, putAside_}) button->setVisible(!paths.isEmpty());
    hideIfEmpty();
}

// An empty row would leave its spacing behind.
void StartNews::hideIfEmpty() {
    setVisible(!trouble_->text().isEmpty() || !busy_->text().isEmpty() || !cutShort_->text().isEmpty());
}

void StartNews::restyle() {
    layout()->setSpacing(look_.ipx(8));
    for (QPushButton* button : {giveUp_, openCutShort_, putAside_}) button->setFont(look_.font(TextSize::text));
}

} // namespace stillwire
