// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/recents.hpp"

#include "app/window/look/paint.hpp"
#include "app/window/look/rows_list.hpp"
#include "app/window/verdict/verdict_sign.hpp"

#include <algorithm>

#include <QFileInfo>
#include <QFontMetricsF>
#include <QListView>
#include <QPainter>

namespace stillwire {

void RecentsModel::setPaths(const QStringList& paths) {
    beginResetModel();
    std::vector<Glance> rows;
    for (const QString& path : paths) {
        const auto known = std::find_if(rows_.begin(), rows_.end(), [&](const Glance& g) { return g.path == path; });
        if (known != rows_.end())
            rows.push_back(*known);
        else
            rows.push_back({path, QFileInfo(path).completeBaseName(), {}, {}, {}, 5.25});
    }
    rows_ = std::move(rows);
    endResetModel();
}

void RecentsModel::setGlance(const Glance& glance) {
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (rows_[i].path != glance.path) continue;
        rows_[i] = glance;
        const QModelIndex at = index(static_cast<int>(i));
        emit dataChanged(at, at);
    }
}

int RecentsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant RecentsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Glance& row = rows_[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole) return row.name;
    if (role == Qt::ToolTipRole) return row.path;
    if (role == Qt::AccessibleTextRole)
        return QStringLiteral("%1, %2").arg(row.name, row.trouble.isEmpty() ? row.verdict : row.trouble);
    return {};
}

QSize RecentsDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const {
    return {look_.ipx(196), look_.ipx(116)};
}

void RecentsDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const Glance& row = model_.rows()[static_cast<std::size_t>(index.row())];
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(option.rect).adjusted(1.5, 1.5, -look_.px(8), -1.5);
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    painter->setPen(QPen(look_(selected ? Role::trace : Role::line), look_.px(selected ? 2.5 : 1)));
    painter->setBrush(look_(Role::plot));
    painter->drawRoundedRect(box, look_.px(7), look_.px(7));
    const QRectF picture = box.adjusted(look_.px(8), look_.px(7), -look_.px(8), -look_.px(50));
    // As wide as a slice and never a hair; each reaches to the one before it, or a steep flank would be a hole.
    const auto count = static_cast<double>(row.slices.size());
    const double wide = std::max(look_.px(1.2), picture.width() / std::max(count, 1.0));
    painter->setPen(QPen(look_(Role::trace), wide, Qt::SolidLine, Qt::FlatCap));
    for (std::size_t i = 0; i < row.slices.size(); ++i) {
        if (row.slices[i].count == 0) continue;
        auto y = [&](double v) { return picture.bottom() - std::clamp(v / row.high_V, 0.0, 1.0) * picture.height(); };
        const double x = picture.left() + (static_cast<double>(i) + 0.5) / count * picture.width();
        double top = y(row.slices[i].max_V), foot = y(row.slices[i].min_V);
        if (i > 0 && row.slices[i - 1].count > 0) {
            top = std::min(top, y(row.slices[i - 1].min_V));
            foot = std::max(foot, y(row.slices[i - 1].max_V));
        }
        painter->drawLine(QPointF(x, top - wide / 2), QPointF(x, foot + wide / 2));
    }
    if (row.slices.empty()) { // no picture, or none yet: a place for it, not a hole
        painter->setPen(QPen(look_(Role::strongLine), look_.px(1.2), Qt::DashLine));
        painter->drawLine(QPointF(picture.left(), picture.center().y()),
                          QPointF(picture.right(), picture.center().y()));
    }
    const auto place = [&](double below) {
        return QRectF(box.left() + look_.px(8), box.bottom() - below, box.width() - look_.px(16), look_.px(20));
    };
    // A file may be named as long as it likes.
    const QFont bold = look_.font(TextSize::small, true);
    painter->setFont(bold);
    painter->setPen(look_(Role::ink));
    painter->drawText(place(look_.px(46)), Qt::AlignLeft | Qt::AlignVCenter,
                      QFontMetricsF(bold).elidedText(row.name, Qt::ElideMiddle, place(0).width()));
    FittedText fitted(*painter, const_cast<QWidget&>(*option.widget), FittedText::Of::row); // to note on it, no more
    // The sign of the verdict before its words; trouble has the caution's.
    const auto [shape, colour] = row.decision            ? signOf(*row.decision)
                                 : row.trouble.isEmpty() ? std::pair{Shape::none, Role::quietText}
                                                         : std::pair{Shape::caution, Role::fault};
    QRectF says = place(look_.px(25));
    if (shape != Shape::none) {
        const double icon = look_.px(13);
        drawShape(*painter, QRectF(says.left() + 1, says.center().y() - icon / 2, icon, icon), shape, look_(colour),
                  look_.px(shape == Shape::caution ? 1.6 : 2.4));
        says.setLeft(says.left() + icon + look_.px(7));
    }
    fitted.line(says, Qt::AlignLeft | Qt::AlignVCenter, row.trouble.isEmpty() ? row.verdict : row.trouble,
                look_.font(TextSize::small), look_(row.trouble.isEmpty() ? Role::quietText : Role::fault));
    painter->restore();
}

QListView* makeRecentsList(const Look& look, RecentsModel& model, QWidget* parent) {
    auto* list = new RowsList(parent);
    list->setModel(&model);
    list->setItemDelegate(new RecentsDelegate(look, model, list));
    list->setViewMode(QListView::IconMode);
    list->setFlow(QListView::LeftToRight);
    list->setWrapping(false);
    list->setMovement(QListView::Static);
    list->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    return list;
}

} // namespace stillwire
