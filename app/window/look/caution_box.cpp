// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/caution_box.hpp"

#include <algorithm>
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

void CautionBox::show(const QStringList& cautions, const QStringList& fresh, bool stop) {
    setAccessibleDescription(cautions.join(QStringLiteral(" "))); // whole, whatever is folded
    setToolTip(fresh.size() < cautions.size() ? cautions.join(QLatin1Char('\n')) : QString());
    QStringList lines = stop ? cautions : fresh;
    if (lines.size() < cautions.size()) lines << tr("Cautions as before: %1").arg(cautions.size() - lines.size());
    if (lines == cautions_ && stop == stop_) return;
    cautions_ = lines;
    stop_ = stop;
    setVisible(!cautions.isEmpty());
    keepRoom();
    updateGeometry();
    update();
}

void CautionBox::setSize(TextSize size) {
    if (size == size_) return;
    size_ = size;
    keepRoom();
    updateGeometry();
    update();
}

QRectF CautionBox::textArea(int width, int height) const {
    return QRectF(0, 0, width, height).adjusted(look_.px(44), look_.px(8), -look_.px(8), -look_.px(8));
}

// More than one caution may be set smaller: none may be left out, and the drawing keeps its room.
QFont CautionBox::type() const { return look_.font(cautions_.size() > 1 ? size_ : TextSize::text, stop_); }

// One caution to a line, or to lines that hang together.
std::vector<double> CautionBox::heights(double width) const {
    const QFontMetricsF metrics(type());
    std::vector<double> all;
    for (const QString& caution : cautions_)
        all.push_back(std::ceil(
            metrics.boundingRect(QRectF(0, 0, width, 10000), Qt::TextWordWrap, keepUnits(caution)).height()));
    return all;
}

double CautionBox::gap() const { return look_.px(3); }

int CautionBox::heightForWidth(int width) const {
    const QRectF area = textArea(width, 0);
    double need = gap() * static_cast<double>(std::max<qsizetype>(0, cautions_.size() - 1));
    for (const double height : heights(area.width())) need += height;
    return std::max(look_.ipx(44), static_cast<int>(std::ceil(need + look_.px(17))));
}

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
    const QRectF area = textArea(width(), height());
    const std::vector<double> high = heights(area.width());
    const double line = QFontMetricsF(type()).height();
    FittedText fitted(painter, *this);
    double y = area.top();
    for (std::size_t i = 0; i < high.size(); ++i) {
        const double middle = y + line / 2;
        if (i == 0)
            drawShape(painter, QRectF(look_.px(13), middle - look_.px(11), look_.px(22), look_.px(21)),
                      stop_ ? Shape::stop : Shape::caution, look_(edge), look_.px(2.2));
        else
            drawShape(painter, QRectF(look_.px(18), middle - look_.px(4), look_.px(12), look_.px(8)), Shape::level,
                      look_(edge), look_.px(3));
        fitted.paragraph(QRectF(area.left(), y, area.width(), high[i] + 1), cautions_[static_cast<qsizetype>(i)],
                         type(), look_(Role::ink));
        y += high[i] + gap();
    }
}

} // namespace stillwire
