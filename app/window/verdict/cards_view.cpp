// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/cards_view.hpp"

#include <algorithm>

#include <QFontMetricsF>
#include <QMouseEvent>

namespace stillwire {

CardsView::CardsView(const Look& look, const FindingsModel& model, QWidget* parent)
    : QWidget(parent), look_(look), model_(model) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Findings"));
    auto refresh = [this] {
        QStringList all;
        for (const FindingRow& row : model_.rows()) all << row.title + QStringLiteral(", ") + row.detail;
        setAccessibleDescription(all.join(QStringLiteral(". ")));
        update();
    };
    connect(&model, &QAbstractItemModel::dataChanged, this, refresh);
    connect(&model, &QAbstractItemModel::rowsInserted, this, refresh);
    connect(&model, &QAbstractItemModel::rowsRemoved, this, refresh);
    connect(&look, &Look::changed, this, [this] {
        updateGeometry();
        update();
    });
}

QSize CardsView::sizeHint() const { return {look_.ipx(600), look_.ipx(74)}; }

void CardsView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const auto& rows = model_.rows();
    if (rows.empty()) {
        FittedText text(painter, *this);
        text.line(QRectF(rect()), Qt::AlignLeft | Qt::AlignVCenter,
                  tr("Nothing found yet. What the wire shows will stand here."), look_.font(TextSize::text),
                  look_(Role::quietText));
        return;
    }
    const int cards = this->cards();
    for (int i = 0; i < std::min<int>(cards, static_cast<int>(rows.size())); ++i)
        paintCard(painter, place(i, cards), rows[static_cast<std::size_t>(i)]);
}

int CardsView::cards() const {
    int cards = 3;
    while (cards > 1 && !haveRoom(cards, place(0, cards).width())) --cards; // fewer, rather than cut off
    return cards;
}

QRectF CardsView::place(int card, int cards) const {
    const double gap = look_.px(12), wide = (width() - (cards - 1) * gap) / cards;
    return {card * (wide + gap) + 0.5, 0.5, wide - 1, height() - 1.0};
}

int CardsView::leavesOut() const { return std::max(0, static_cast<int>(model_.rows().size()) - cards()); }

void CardsView::mousePressEvent(QMouseEvent* event) {
    const int cards = this->cards();
    for (int i = 0; i < std::min<int>(cards, static_cast<int>(model_.rows().size())); ++i) {
        const FindingRow& row = model_.rows()[static_cast<std::size_t>(i)];
        if (place(i, cards).contains(event->position()) && row.at_s) emit lookAt(*row.at_s);
    }
}

bool CardsView::haveRoom(int cards, double width) const {
    // What FittedText can still take in by making it smaller.
    constexpr double kShrinks = 1.2;
    const QFontMetricsF title(look_.font(TextSize::text, true)), detail(look_.font(TextSize::small));
    const auto& rows = model_.rows();
    for (int i = 0; i < std::min<int>(cards, static_cast<int>(rows.size())); ++i) {
        const FindingRow& row = rows[static_cast<std::size_t>(i)];
        const double room = (width - look_.px(56)) * kShrinks;
        if (title.horizontalAdvance(row.title) > room || detail.horizontalAdvance(row.detail) > room) return false;
    }
    return true;
}

void CardsView::paintCard(QPainter& painter, const QRectF& box, const FindingRow& row) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(look_(Role::plot));
    // A fault's card has a heavy side, so that it is told apart in grey too.
    painter.setPen(QPen(look_(Role::line), 1));
    painter.drawRoundedRect(box, look_.px(8), look_.px(8));
    if (row.colour == Role::fault)
        painter.fillRect(QRectF(box.left(), box.top() + look_.px(8), look_.px(5), box.height() - look_.px(16)),
                         look_(Role::fault));
    const double icon = look_.px(18);
    drawShape(painter, QRectF(box.left() + look_.px(15), box.top() + look_.px(17), icon, icon), row.shape,
              look_(row.colour), look_.px(3.2));
    const double left = box.left() + look_.px(42), right = box.right() - look_.px(12);
    FittedText text(painter, *this);
    text.line(QRectF(left, box.top() + look_.px(12), right - left, look_.px(26)), Qt::AlignLeft | Qt::AlignVCenter,
              row.title, look_.font(TextSize::text, true), look_(Role::ink));
    text.line(QRectF(left, box.top() + look_.px(40), right - left, look_.px(22)), Qt::AlignLeft | Qt::AlignVCenter,
              row.detail, look_.font(TextSize::small), look_(Role::quietText));
}

} // namespace stillwire
