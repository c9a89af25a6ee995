// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/start_panel.hpp"

#include "app/window/look/text_label.hpp"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QPainter>

namespace stillwire {

StartPanel::StartPanel(const Look& look, const QString& title, const QString& text, bool whole, QWidget* parent)
    : QWidget(parent), look_(look), grid_(new QGridLayout(this)), top_(new QHBoxLayout) {
    auto* heading = new TextLabel(look, TextSize::title, true, Role::ink, this);
    heading->setWordWrap(false);
    heading->say(title);
    auto* says = new TextLabel(look, TextSize::small, false, Role::quietText, this);
    says->say(text);
    top_->addWidget(heading, 0, Qt::AlignBottom);
    top_->addWidget(says, 1, Qt::AlignBottom);
    grid_->addLayout(top_, 0, 0, 1, whole ? 3 : 1);
    grid_->setColumnStretch(0, 8);
    grid_->setColumnStretch(1, 5);
    auto restyle = [this, says] {
        grid_->setContentsMargins(0, look_.ipx(8), 0, 0);
        grid_->setHorizontalSpacing(look_.ipx(16));
        grid_->setVerticalSpacing(look_.ipx(6));
        top_->setSpacing(look_.ipx(14));
        says->setContentsMargins(0, 0, 0, look_.ipx(3)); // on the heading's base line
        update();
    };
    connect(&look, &Look::changed, this, restyle);
    restyle();
}

void StartPanel::addChoice(QComboBox* box, int column) {
    auto* label = new TextLabel(look_, TextSize::small, true, Role::ink, this);
    label->say(box->accessibleName());
    label->setBuddy(box);
    grid_->addWidget(label, kFirstRow - 1, column);
    grid_->addWidget(box, kFirstRow, column);
}

void StartPanel::setButtonWidth(int width) { grid_->setColumnMinimumWidth(2, width); }

void StartPanel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setPen(QPen(look_(Role::line), 1));
    painter.drawLine(0, 0, width(), 0);
}

} // namespace stillwire
