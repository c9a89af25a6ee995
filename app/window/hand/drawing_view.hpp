// SPDX-License-Identifier: GPL-3.0-or-later
// A step's drawing in the palette's colours, with its labels in the person's language. The side being pushed is lit.
#pragma once

#include "app/window/look/look.hpp"

#include <QMap>
#include <QPixmap>
#include <QSvgRenderer>
#include <QWidget>

namespace stillwire {

class DrawingView : public QWidget {
    Q_OBJECT
public:
    explicit DrawingView(const Look& look, QWidget* parent = nullptr);
    // `name`: a file in resources/drawings without .svg. `side`: "left", "right" or empty, the side to light.
    void show(const QString& name, const QString& side, const QString& described);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

    void setLeast(double height); // of the design, below which it is not squeezed

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    const QPixmap& picture(QSize size);

    const Look& look_;
    double least_ = 112;
    QString name_, side_;
    QSvgRenderer renderer_;
    QMap<QString, QPixmap> kept_; // by name and side, of the look in force
};

// The drawing's bytes with labels and colours put in; empty if there is none of this name.
[[nodiscard]] QByteArray drawingSvg(const QString& name, const QString& side, const Palette& palette);

} // namespace stillwire
