// SPDX-License-Identifier: GPL-3.0-or-later
// What every painted view shares: the small shapes that say what happened without colour, hatching, and text that
// never leaves its place unnoticed.
#pragma once

#include "app/window/look/look.hpp"

#include <QPainter>
#include <QWidget>

namespace stillwire {

enum class Shape {
    none,
    level,
    wedgeDown,
    wedgeUp,
    notch,
    peak,
    slope,
    step,
    hatch,
    tick,
    cross,
    caution,
    stop,
    dots,
    play,
    aside
};

// Drawn to fill `box`; `pen_px` is the stroke.
void drawShape(QPainter& painter, const QRectF& box, Shape shape, QColor colour, double pen_px);
[[nodiscard]] QString keepUnits(QString text); // a figure and its unit stay on one line
void drawHatch(QPainter& painter, const QRectF& area, const Look& look);

// Paints text for `widget`, shrinking it by up to a fifth if it is too wide. Text that still does not fit is
// shortened at its end and noted in the widget's property "cutOff", which tests read.
class FittedText {
public:
    enum class Of { widget, row }; // a row leaves what other rows of a list have noted
    FittedText(QPainter& painter, QWidget& widget, Of of = Of::widget);
    ~FittedText();
    // The rectangle the text covers.
    QRectF line(const QRectF& box, int alignment, const QString& text, QFont font, QColor colour);
    QRectF paragraph(const QRectF& box, const QString& text, QFont font, QColor colour);

private:
    QPainter& painter_;
    QWidget& widget_;
    Of of_;
    QStringList drawn_, cut_;
};

} // namespace stillwire
