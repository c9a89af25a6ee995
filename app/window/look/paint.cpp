// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/paint.hpp"

#include <algorithm>

#include <QFontMetricsF>
#include <QPainterPath>
#include <QRegularExpression>
#include <QVariant>

namespace stillwire {
namespace {

QPolygonF scaled(const QRectF& box, std::initializer_list<QPointF> unit) {
    QPolygonF points;
    for (const QPointF& p : unit)
        points << QPointF(box.left() + p.x() * box.width(), box.top() + p.y() * box.height());
    return points;
}

void fillPolygon(QPainter& painter, const QPolygonF& points, QColor colour) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    painter.drawPolygon(points);
}

} // namespace

void drawShape(QPainter& painter, const QRectF& box, Shape shape, QColor colour, double pen_px) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, pen_px, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    switch (shape) {
    case Shape::none: break;
    case Shape::level: painter.drawPolyline(scaled(box, {{0, 0.5}, {1, 0.5}})); break;
    case Shape::wedgeDown: fillPolygon(painter, scaled(box, {{0, 0.1}, {1, 0.1}, {0.5, 0.95}}), colour); break;
    case Shape::wedgeUp: fillPolygon(painter, scaled(box, {{0, 0.9}, {1, 0.9}, {0.5, 0.05}}), colour); break;
    case Shape::notch:
        painter.drawPolyline(scaled(box, {{0, 0.1}, {0.28, 0.1}, {0.28, 0.9}, {0.72, 0.9}, {0.72, 0.1}, {1, 0.1}}));
        break;
    case Shape::peak:
        painter.drawPolyline(scaled(box, {{0, 0.9}, {0.28, 0.9}, {0.28, 0.1}, {0.72, 0.1}, {0.72, 0.9}, {1, 0.9}}));
        break;
    case Shape::slope: painter.drawPolyline(scaled(box, {{0, 0.9}, {0.2, 0.9}, {0.8, 0.1}, {1, 0.1}})); break;
    case Shape::step: painter.drawPolyline(scaled(box, {{0, 0.85}, {0.5, 0.85}, {0.5, 0.15}, {1, 0.15}})); break;
    case Shape::play:
        painter.drawPolyline(scaled(box, {{0, 0.4}, {0.3, 0.4}, {0.3, 0.65}, {0.7, 0.65}, {0.7, 0.4}, {1, 0.4}}));
        break;
    case Shape::aside:
        painter.drawPolyline(scaled(box, {{0.3, 0.1}, {0.05, 0.1}, {0.05, 0.9}, {0.3, 0.9}}));
        painter.drawPolyline(scaled(box, {{0.7, 0.1}, {0.95, 0.1}, {0.95, 0.9}, {0.7, 0.9}}));
        painter.drawPoint(scaled(box, {{0.5, 0.5}}).front());
        break;
    case Shape::hatch:
        painter.setPen(QPen(colour, pen_px * 0.55));
        painter.drawRect(box);
        for (double at : {0.0, 0.4, 0.8}) {
            painter.drawPolyline(scaled(box, {{0, 1 - at}, {1 - at, 0}}));
            if (at > 0) painter.drawPolyline(scaled(box, {{at, 1}, {1, at}}));
        }
        break;
    case Shape::tick: painter.drawPolyline(scaled(box, {{0.05, 0.55}, {0.38, 0.88}, {0.95, 0.12}})); break;
    case Shape::cross:
        painter.drawPolyline(scaled(box, {{0.1, 0.1}, {0.9, 0.9}}));
        painter.drawPolyline(scaled(box, {{0.9, 0.1}, {0.1, 0.9}}));
        break;
    case Shape::caution:
        painter.drawPolygon(scaled(box, {{0.5, 0.06}, {0.98, 0.92}, {0.02, 0.92}}));
        painter.drawPolyline(scaled(box, {{0.5, 0.38}, {0.5, 0.62}}));
        painter.drawPoint(scaled(box, {{0.5, 0.78}}).front());
        break;
    case Shape::stop:
        painter.drawPolygon(
            scaled(box, {{0.3, 0}, {0.7, 0}, {1, 0.3}, {1, 0.7}, {0.7, 1}, {0.3, 1}, {0, 0.7}, {0, 0.3}}));
        painter.drawPolyline(scaled(box, {{0.28, 0.5}, {0.72, 0.5}}));
        break;
    case Shape::dots:
        for (double at : {0.1, 0.5, 0.9}) painter.drawPoint(scaled(box, {{at, 0.5}}).front());
        break;
    }
    painter.restore();
}

void drawHatch(QPainter& painter, const QRectF& area, const Look& look) {
    painter.save();
    painter.setClipRect(area, Qt::IntersectClip);
    painter.fillRect(area, look(Role::hatchBack));
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(look(Role::quietText), look.px(1.5))); // still lines in pure black and white
    // Lines are tied to the page and not to the area, so that neighbours run on.
    const double pitch = look.px(9), rise = area.height();
    const double first = std::floor((area.left() - rise) / pitch) * pitch;
    for (double x = first; x < area.right(); x += pitch)
        painter.drawLine(QPointF(x, area.bottom()), QPointF(x + rise, area.top()));
    painter.restore();
}

FittedText::FittedText(QPainter& painter, QWidget& widget, Of of) : painter_(painter), widget_(widget), of_(of) {}

FittedText::~FittedText() {
    const QStringList noted = widget_.property("cutOff").toStringList();
    if (of_ == Of::row)
        for (const QString& text : noted)
            if (!drawn_.contains(text)) cut_ << text;
    if (noted != cut_) widget_.setProperty("cutOff", cut_);
}

QRectF FittedText::line(const QRectF& box, int alignment, const QString& text, QFont font, QColor colour) {
    if (text.isEmpty()) return QRectF(box.topLeft(), QSizeF(0, 0));
    drawn_ << text;
    const int full = font.pixelSize();
    double width = QFontMetricsF(font).horizontalAdvance(text);
    while (width > box.width() && font.pixelSize() > full * 4 / 5 && font.pixelSize() > 9) {
        font.setPixelSize(font.pixelSize() - 1);
        width = QFontMetricsF(font).horizontalAdvance(text);
    }
    const QFontMetricsF metrics(font);
    QString shown = text;
    if (width > box.width() + 0.5 || metrics.height() > box.height() * 1.35) {
        cut_ << text;
        shown = metrics.elidedText(text, Qt::ElideRight, box.width());
    }
    painter_.setFont(font);
    painter_.setPen(colour);
    QRectF covered;
    painter_.drawText(box, alignment | Qt::TextSingleLine | Qt::TextDontClip, shown, &covered);
    return covered;
}

QString keepUnits(QString text) {
    static const QRegularExpression figure(QStringLiteral("(?<=\\d) (?=(V|s|%)(\\W|$))"));
    return text.replace(figure, QString(QChar::Nbsp));
}

QRectF FittedText::paragraph(const QRectF& box, const QString& said, QFont font, QColor colour) {
    if (said.isEmpty()) return QRectF(box.topLeft(), QSizeF(0, 0));
    drawn_ << said;
    const QString text = keepUnits(said);
    const int flags = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap;
    const int full = font.pixelSize();
    QRectF need = QFontMetricsF(font).boundingRect(box, flags, text);
    while ((need.height() > box.height() || need.width() > box.width()) && font.pixelSize() > full * 4 / 5 &&
           font.pixelSize() > 9) {
        font.setPixelSize(font.pixelSize() - 1);
        need = QFontMetricsF(font).boundingRect(box, flags, text);
    }
    if (need.height() > box.height() + 0.5 || need.width() > box.width() + 0.5) cut_ << said;
    painter_.setFont(font);
    painter_.setPen(colour);
    painter_.drawText(box, flags, text, &need);
    return need;
}

} // namespace stillwire
