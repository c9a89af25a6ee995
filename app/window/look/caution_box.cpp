// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/caution_box.hpp"

#include <cmath>

#include <QFontMetricsF>

namespace stillwire {

CautionBox::CautionBox(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAccessibleName(tr("Caution"));
    hide();
    connect(&look, &Look::changed, this, [this] {
        keepRoom();
        updateGeometry();
        update();
    });
}

void CautionBox::show(const QStringList& cautions, bool stop) {
    if (cautions == cautions_ && stop == stop_) return;
    cautions_ = cautions;
    stop_ = stop;
    setAccessibleDescription(cautions.join(QStringLiteral(" ")));
    setVisible(!cautions.isEmpty());
    keepRoom();
    updateGeometry();
    update();
}

QRectF CautionBox::textArea(int width, int height) const {
    return QRectF(0, 0, width, height).adjusted(look_.px(46), look_.px(9), -look_.px(10), -look_.px(9));
}

// More than one caution is set smaller: none may be left out, and the drawing keeps its room.
QFont CautionBox::type() const { return look_.font(cautions_.size() > 1 ? TextSize::small : TextSize::text, stop_); }

int CautionBox::heightForWidth(int width) const {
    const QRectF area = textArea(width, 10000);
    const double need = QFontMetricsF(type()).boundingRect(area, Qt::TextWordWrap, text()).height();
    return std::max(look_.ipx(44), static_cast<int>(std::ceil(need + look_.px(19))));
}

// One flowing paragraph: a line each would leave the drawing no room.
QString CautionBox::text() const { return cautions_.join(QLatin1Char(' ')); }

// A column that runs short takes the room from others.
void CautionBox::keepRoom() { keepRoomAt(width() > 0 ? width() : look_.ipx(316)); }
void CautionBox::keepRoomAt(int width) { setMinimumHeight(heightForWidth(width)); }

void CautionBox::resizeEvent(QResizeEvent* event) {
    keepRoom();
    QWidget::resizeEvent(event);
}

QSize CautionBox::sizeHint() const {
    return {look_.ipx(200), heightForWidth(width() > 0 ? width() : look_.ipx(316))};
}

void CautionBox::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Role edge = stop_ ? Role::fault : Role::caution;
    const double stroke = look_.px(stop_ ? 4 : 1.5);
    painter.setPen(QPen(look_(edge), stroke));
    painter.setBrush(look_(stop_ ? Role::faultBack : Role::cautionBack));
    painter.drawRoundedRect(QRectF(rect()).adjusted(stroke / 2, stroke / 2, -stroke / 2, -stroke / 2), look_.px(6),
                            look_.px(6));
    drawShape(painter, QRectF(look_.px(14), look_.px(11), look_.px(22), look_.px(21)),
              stop_ ? Shape::stop : Shape::caution, look_(edge), look_.px(2.2));
    FittedText fitted(painter, *this);
    fitted.paragraph(textArea(width(), height()), text(), type(), look_(Role::ink));
}

} // namespace stillwire
