// SPDX-License-Identifier: GPL-3.0-or-later
// The number, and the word that says what is happening, for reading at three metres.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/words.hpp"

#include <QMap>
#include <QPixmap>
#include <QWidget>

namespace stillwire {

class ReadoutView : public QWidget {
    Q_OBJECT
public:
    explicit ReadoutView(const Look& look, QWidget* parent = nullptr);

    void show(const Scene& scene);
    void setFar(bool far) { far_ = far; } // as large as its own height, not as a part of the window's
    [[nodiscard]] bool loud() const;      // the whole head is turned: a dropout is on the wire, or was just now
    [[nodiscard]] QString number() const { return number_; }
    [[nodiscard]] const StateWord& word() const { return word_; }
    [[nodiscard]] double digitHeight() const; // a sixth of the window's, less where that has no room beside the word
    [[nodiscard]] double numberWidth(double high) const; // of four digits, the point and the unit, in pixels
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] double leastWord() const; // of the box with the word
    void paintNumber(QPainter& painter, const QRectF& area);
    void paintWord(QPainter& painter, const QRectF& box);
    void paintFarWord(QPainter& painter, const QRectF& box, QColor colour);
    void paintTurned(QPainter& painter, const QRectF& all, double wordLeft);

    // Signs this large are drawn as outlines; each is drawn once and kept.
    const QPixmap& sign(QChar sign, const QFont& font, QColor colour);

    const Look& look_;
    QMap<QString, QPixmap> signs_; // of the look and size in force
    QString number_;
    StateWord word_;
    bool far_ = false;
    QString wire_; // which wire the red lead is on
};

} // namespace stillwire
