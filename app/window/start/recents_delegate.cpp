// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/recents_delegate.hpp"

#include "app/window/look/paint.hpp"
#include "app/window/start/recents.hpp"
#include "app/window/verdict/verdict_sign.hpp"

#include <algorithm>

#include <QFontMetricsF>
#include <QPainter>

namespace stillwire {
namespace {

constexpr double kPicture = 132, kMore = 44, kVerdict = 210;

void paintPicture(QPainter& painter, const Look& look, const Glance& row, const QRectF& picture) {
    // As wide as a slice and never a hair; each reaches to the one before it, or a steep flank would be a hole.
    const auto count = static_cast<double>(row.slices.size());
    const double wide = std::max(look.px(1.2), picture.width() / std::max(count, 1.0));
    painter.setPen(QPen(look(Role::trace), wide, Qt::SolidLine, Qt::FlatCap));
    for (std::size_t i = 0; i < row.slices.size(); ++i) {
        if (row.slices[i].count == 0) continue;
        auto y = [&](double v) { return picture.bottom() - std::clamp(v / row.high_V, 0.0, 1.0) * picture.height(); };
        const double x = picture.left() + (static_cast<double>(i) + 0.5) / count * picture.width();
        double top = y(row.slices[i].max_V), foot = y(row.slices[i].min_V);
        if (i > 0 && row.slices[i - 1].count > 0) {
            top = std::min(top, y(row.slices[i - 1].min_V));
            foot = std::max(foot, y(row.slices[i - 1].max_V));
        }
        painter.drawLine(QPointF(x, top - wide / 2), QPointF(x, foot + wide / 2));
    }
    if (!row.slices.empty()) return;
    // No picture, or none yet: a place for it, not a hole.
    painter.setPen(QPen(look(Role::strongLine), look.px(1.2), Qt::DashLine));
    painter.drawLine(QPointF(picture.left(), picture.center().y()), QPointF(picture.right(), picture.center().y()));
}

} // namespace

QSize RecentsDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const {
    return {look_.ipx(300), look_.ipx(62)};
}

QRect RecentsDelegate::moreArea(const Look& look, const QRect& row) {
    return QRect(row.right() - look.ipx(kMore), row.top(), look.ipx(kMore), row.height());
}

void RecentsDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const Glance& row = model_.rows()[static_cast<std::size_t>(index.row())];
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(option.rect).adjusted(1.5, 1.5, -1.5, -look_.px(5));
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    const bool under = option.state.testFlag(QStyle::State_MouseOver);
    painter->setPen(QPen(look_(selected || under ? Role::trace : Role::line), look_.px(selected ? 2.5 : 1)));
    painter->setBrush(look_(Role::plot));
    painter->drawRoundedRect(box, look_.px(7), look_.px(7));
    paintPicture(*painter, look_, row,
                 QRectF(box.left() + look_.px(8), box.top() + look_.px(7), look_.px(kPicture - 16),
                        box.height() - look_.px(14)));

    const QRectF more(box.right() - look_.px(kMore), box.top(), look_.px(kMore), box.height());
    drawShape(*painter,
              QRectF(more.center().x() - look_.px(9), more.center().y() - look_.px(9), look_.px(18), look_.px(18)),
              Shape::dots, look_(Role::ink), look_.px(3.5));
    // The sign of the verdict before its words; trouble has the caution's.
    const auto [shape, colour] = row.decision            ? signOf(*row.decision)
                                 : row.trouble.isEmpty() ? std::pair{Shape::none, Role::quietText}
                                                         : std::pair{Shape::caution, Role::fault};
    FittedText fitted(*painter, const_cast<QWidget&>(*option.widget), FittedText::Of::row); // to note on it, no more
    QRectF says(more.left() - look_.px(kVerdict), box.top(), look_.px(kVerdict), box.height());
    const QString words = row.trouble.isEmpty() ? row.verdict : row.trouble;
    if (shape != Shape::none) {
        const double icon = look_.px(16);
        drawShape(*painter, QRectF(says.left(), says.center().y() - icon / 2, icon, icon), shape, look_(colour),
                  look_.px(shape == Shape::caution ? 1.8 : 3));
    }
    fitted.paragraph(QRectF(says.left() + look_.px(25), box.center().y() - look_.px(words.size() > 24 ? 20 : 11),
                            says.width() - look_.px(29), look_.px(44)),
                     words, look_.font(TextSize::text), look_(row.trouble.isEmpty() ? Role::ink : Role::fault));

    // A file may be called what it likes, and a note be as long.
    const auto line = [&](double top, const QString& text, const QFont& font, Role ink) {
        const QRectF place(box.left() + look_.px(kPicture), box.top() + top,
                           says.left() - box.left() - look_.px(kPicture + 12), look_.px(22));
        painter->setFont(font);
        painter->setPen(look_(ink));
        painter->drawText(place, Qt::AlignLeft | Qt::AlignVCenter,
                          QFontMetricsF(font).elidedText(text, Qt::ElideRight, place.width()));
    };
    QStringList about;
    for (const QString& part : {row.note, row.when, row.machine})
        if (!part.isEmpty()) about << part;
    line(look_.px(6), row.name, look_.font(TextSize::text, true), Role::ink);
    line(look_.px(29), about.join(QStringLiteral(" · ")), look_.font(TextSize::small), Role::quietText);
    painter->restore();
}

} // namespace stillwire
