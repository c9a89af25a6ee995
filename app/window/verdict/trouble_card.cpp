// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/trouble_card.hpp"

#include "app/window/look/paint.hpp"
#include "app/window/look/text_label.hpp"

#include <QFontMetrics>
#include <QHBoxLayout>
#include <QPushButton>

namespace stillwire {

TroubleCard::TroubleCard(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    says_ = new TextLabel(look, TextSize::title, true, Role::ink, this);
    elsewhere_ = new QPushButton(tr("Save elsewhere…  Ctrl+S"), this);
    elsewhere_->setAccessibleName(tr("Save the capture elsewhere"));
    elsewhere_->setAutoDefault(true);
    connect(elsewhere_, &QPushButton::clicked, this, &TroubleCard::saveElsewhereAsked);
    auto* row = new QHBoxLayout(this);
    row->addWidget(says_, 1);
    row->addWidget(elsewhere_);
    connect(&look, &Look::changed, this, &TroubleCard::restyle);
    restyle();
    say({}, false);
}

void TroubleCard::say(const QString& trouble, bool saveElsewhere) {
    says_->say(trouble);
    elsewhere_->setVisible(saveElsewhere);
    setVisible(!trouble.isEmpty());
    fitType();
}

QString TroubleCard::says() const { return says_->text(); }

// Large enough for the other end of the shop as long as it goes on two lines.
void TroubleCard::fitType() {
    const int width = this->width() - look_.ipx(62) - look_.ipx(14) -
                      (elsewhere_->isHidden() ? 0 : elsewhere_->sizeHint().width() + look_.ipx(16));
    const QFontMetrics metrics(look_.font(TextSize::title, true));
    const int high = metrics.boundingRect(QRect(0, 0, width, 10000), Qt::TextWordWrap, says_->text()).height();
    says_->setSize(2 * high < 5 * metrics.lineSpacing() ? TextSize::title : TextSize::text);
}

void TroubleCard::restyle() {
    setMinimumHeight(look_.ipx(74)); // as the cards
    layout()->setContentsMargins(look_.ipx(62), look_.ipx(4), look_.ipx(14), look_.ipx(4));
    layout()->setSpacing(look_.ipx(16));
    elsewhere_->setFont(look_.font(TextSize::text));
    fitType();
}

void TroubleCard::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fitType();
}

void TroubleCard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double stroke = look_.px(2), icon = look_.px(28);
    painter.setPen(QPen(look_(Role::caution), stroke));
    painter.setBrush(look_(Role::cautionBack));
    painter.drawRoundedRect(QRectF(rect()).adjusted(stroke / 2, stroke / 2, -stroke / 2, -stroke / 2), look_.px(8),
                            look_.px(8));
    drawShape(painter, QRectF(look_.px(18), (height() - icon) / 2, icon, icon), Shape::caution, look_(Role::caution),
              look_.px(2.8));
}

} // namespace stillwire
