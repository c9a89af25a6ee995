// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/row_delegate.hpp"

#include "app/window/look/paint.hpp"

namespace stillwire {

QSize RowDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const {
    return {look_.ipx(160), look_.ipx(46)};
}

void RowDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(option.rect).adjusted(1, 1, -1, -1);
    if (option.state.testFlag(QStyle::State_Selected)) {
        painter->setPen(QPen(look_(Role::trace), look_.px(2)));
        painter->setBrush(look_(Role::plot));
        painter->drawRoundedRect(box, look_.px(5), look_.px(5));
    }
    const auto shape = static_cast<Shape>(index.data(ShapeRole).toInt());
    const auto colour = static_cast<Role>(index.data(ColourRole).toInt());
    const double icon = look_.px(15);
    drawShape(*painter, QRectF(box.left() + look_.px(8), box.center().y() - icon / 2, icon, icon), shape,
              look_(colour), look_.px(2.6));
    const double left = box.left() + look_.px(34), width = box.right() - look_.px(6) - left;
    FittedText fitted(*painter, const_cast<QWidget&>(*option.widget), FittedText::Of::row); // to note on it, no more
    auto line = [&](double top, double height, const QString& text, const QFont& font, Role role) {
        fitted.line(QRectF(left, box.top() + top, width, height), Qt::AlignLeft | Qt::AlignVCenter, text, font,
                    look_(role));
    };
    const QString detail = index.data(DetailRole).toString();
    line(look_.px(detail.isEmpty() ? 11 : 3), look_.px(22), index.data(Qt::DisplayRole).toString(),
         look_.font(TextSize::text, true), Role::ink);
    line(look_.px(23), look_.px(18), detail, look_.font(TextSize::small), Role::quietText);
    painter->restore();
}

} // namespace stillwire
