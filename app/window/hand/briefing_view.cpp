// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/hand/briefing_view.hpp"

#include "app/window/look/paint.hpp"

#include <algorithm>

#include <QFontMetricsF>

namespace stillwire {

BriefingView::BriefingView(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Caution"));
    hide();
    connect(&look, &Look::changed, this, qOverload<>(&QWidget::update));
}

void BriefingView::show(const QStringList& cautions) {
    if (cautions == cautions_) return;
    cautions_ = cautions;
    setAccessibleDescription(cautions.join(QLatin1Char(' ')));
    update();
}

void BriefingView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double stroke = look_.px(2);
    painter.setPen(QPen(look_(Role::caution), stroke));
    painter.setBrush(look_(Role::cautionBack));
    painter.drawRoundedRect(QRectF(rect()).adjusted(stroke / 2, stroke / 2, -stroke / 2, -stroke / 2), look_.px(8),
                            look_.px(8));
    const QRectF in = QRectF(rect()).adjusted(look_.px(24), look_.px(16), -look_.px(24), -look_.px(12));
    FittedText text(painter, *this);
    drawShape(painter, QRectF(in.left(), in.top() + look_.px(2), look_.px(34), look_.px(32)), Shape::caution,
              look_(Role::caution), look_.px(3));
    text.line(QRectF(in.left() + look_.px(50), in.top(), in.width() - look_.px(50), look_.px(36)),
              Qt::AlignLeft | Qt::AlignVCenter, tr("Before a hand touches the machine"),
              look_.font(TextSize::title, true), look_(Role::ink));
    // One to a line, as large as they all fit.
    const double left = in.left() + look_.px(50), width = in.right() - left, top = in.top() + look_.px(48);
    QFont font = look_.font(TextSize::word);
    const double smallest = look_.font(TextSize::small).pixelSize();
    const auto needs = [&] {
        const QFontMetricsF metrics(font);
        double all = 0;
        for (const QString& caution : cautions_)
            all += metrics.boundingRect(QRectF(0, 0, width, 1e4), Qt::TextWordWrap, caution).height();
        return all;
    };
    const double least = look_.px(10) * static_cast<double>(cautions_.size());
    while (needs() + least > in.bottom() - top && font.pixelSize() > smallest)
        font.setPixelSize(font.pixelSize() - 1);
    const double spare = in.bottom() - top - needs();
    const double gap =
        std::clamp(spare / static_cast<double>(std::max<qsizetype>(1, cautions_.size())), 0.0, look_.px(24));
    double y = top;
    for (const QString& caution : cautions_) {
        const double high =
            QFontMetricsF(font).boundingRect(QRectF(0, 0, width, 1e4), Qt::TextWordWrap, caution).height();
        const double line = QFontMetricsF(font).height();
        drawShape(painter, QRectF(in.left() + look_.px(10), y + line / 2 - look_.px(4), look_.px(14), look_.px(8)),
                  Shape::level, look_(Role::caution), look_.px(4));
        text.paragraph(QRectF(left, y, width, high + 1), caution, font, look_(Role::ink));
        y += high + gap;
    }
}

} // namespace stillwire
