// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/found_delegate.hpp"

#include "app/window/look/paint.hpp"

#include <QAbstractItemView>
#include <QFontDatabase>
#include <QFontMetricsF>

namespace stillwire {

std::vector<FoundDelegate::Line> FoundDelegate::lines(const QString& text, double width) const {
    const double side = look_.px(12), indent = look_.px(16);
    double y = look_.px(8);
    std::vector<Line> all;
    for (const QString& said : text.split(QLatin1Char('\n'))) {
        const bool port = all.empty(), bytes = said.startsWith(QChar(kBytes));
        QFont font = look_.font(TextSize::text, port);
        if (bytes) {
            font = QFontDatabase::systemFont(QFontDatabase::FixedFont);
            font.setPixelSize(look_.font(TextSize::small).pixelSize());
        }
        const double left = side + (port ? 0 : indent);
        const QRectF room(left, y, width - side - left, 1e4);
        const QRectF place = QFontMetricsF(font).boundingRect(room, bytes ? 0 : Qt::TextWordWrap, said.trimmed());
        all.push_back({QRectF(room.topLeft(), QSizeF(room.width(), place.height())), said.trimmed(), font});
        y += place.height() + look_.px(bytes ? 0 : 3);
    }
    return all;
}

QSize FoundDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    const int width = view ? view->viewport()->width() : look_.ipx(600);
    const auto all = lines(index.data().toString(), width);
    return {width, qRound(all.back().place.bottom() + look_.px(9))};
}

void FoundDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    if (option.state.testFlag(QStyle::State_Selected)) {
        painter->setPen(QPen(look_(Role::trace), look_.px(2.5)));
        painter->setBrush(look_(Role::plot));
        painter->drawRoundedRect(QRectF(option.rect).adjusted(1.5, 1.5, -1.5, -1.5), look_.px(7), look_.px(7));
    }
    for (const Line& line : lines(index.data().toString(), option.rect.width())) {
        painter->setFont(line.font);
        painter->setPen(look_(Role::ink));
        painter->drawText(line.place.translated(option.rect.topLeft()),
                          Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, line.text);
    }
    painter->restore();
}

} // namespace stillwire
