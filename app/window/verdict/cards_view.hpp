// SPDX-License-Identifier: GPL-3.0-or-later
// The findings that weigh most, as cards in a row; how many more there are stands on the last.
#pragma once

#include "app/window/verdict/models.hpp"

#include <QWidget>

namespace stillwire {

class CardsView : public QWidget {
    Q_OBJECT
public:
    CardsView(const Look& look, const FindingsModel& model, QWidget* parent = nullptr);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] int leavesOut() const; // findings that have no card

signals:
    void lookAt(double time_s); // a card was pressed

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    [[nodiscard]] bool haveRoom(int cards, double width) const;
    void paintCard(QPainter& painter, const QRectF& box, const FindingRow& row);
    [[nodiscard]] int cards() const; // as many as have room for their words
    [[nodiscard]] QRectF place(int card, int cards) const;

    const Look& look_;
    const FindingsModel& model_;
};

} // namespace stillwire
